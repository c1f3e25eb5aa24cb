import { expect, it } from 'vitest';
import { linesOverTime } from '../../../src/report/figures/lines-over-time.ts';
import { Units } from '../../../src/report/units.ts';

const DAY = 86_400_000;

it('draws the interval at the end of a dashed line dashed, so that each is known by its line', () => {
  const figure = linesOverTime(
    {
      id: 'used',
      title: 'Used',
      subtitle: 'Used, %',
      alt: 'It rose.',
      quantity: 'storage time used',
      dayMs: Array.from({ length: 30 }, (_, d) => Date.UTC(2024, 9, 1) + d * DAY),
      lines: [
        {
          label: 'mean',
          style: 'line',
          values: Array.from({ length: 30 }, (_, d) => d / 100),
          end: { low: 0.2, high: 0.4 },
        },
        {
          label: 'worst',
          style: 'dash',
          values: Array.from({ length: 30 }, (_, d) => d / 60),
          end: { low: 0.3, high: 0.8 },
        },
      ],
      fanDays: [],
    },
    new Units('si', 'EUR', 'Europe/Berlin'),
  );
  for (const size of [
    { width: 900, narrow: false, idPrefix: 'a' },
    { width: 340, narrow: true, idPrefix: 'b' },
  ]) {
    const svg = figure.draw(size);
    // The line and its whisker.
    expect(svg.match(/stroke-dasharray="5 3"/g)).toHaveLength(2);
    expect(svg).not.toContain('NaN');
  }
});
