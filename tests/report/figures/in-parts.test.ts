import { describe, expect, it } from 'vitest';
import { estimate } from '../../../src/base/estimate.ts';
import { inParts, partsOf } from '../../../src/report/figures/in-parts.ts';
import { monthsByBin } from '../../../src/report/figures/months-by-bin.ts';
import { waysByBin } from '../../../src/report/figures/ways-by-bin.ts';
import type { Figure } from '../../../src/report/page.ts';
import { Units } from '../../../src/report/units.ts';

const units = new Units('us', 'USD', 'America/Chicago');
const wide = { width: 900, narrow: false, idPrefix: 't' };
const bins = (count: number) => Array.from({ length: count }, (_, i) => ({ name: `Bin ${i + 1}` }));
const plain = (items: readonly { name: string }[]): Figure => ({
  id: 'f',
  title: 'A finding',
  subtitle: 'unit',
  alt: items.map(({ name }) => name).join(),
  legend: [],
  notShown: 'Two bins not shown.',
  draw: () => '',
});

describe('a figure of many panels', () => {
  it('stays one while a page takes it', () => {
    expect(partsOf(inParts(bins(10), 10, plain))).toHaveLength(1);
  });
  it('becomes several of about a size: each bears the title and says which part it is, the last says what is left out', () => {
    const parts = partsOf(inParts(bins(25), 10, plain));
    expect(parts.map(({ title }) => title)).toEqual([
      'A finding (part 1 of 3: Bin 1 to Bin 9)',
      'A finding (part 2 of 3: Bin 10 to Bin 18)',
      'A finding (part 3 of 3: Bin 19 to Bin 25)',
    ]);
    expect(parts.map(({ id }) => id)).toEqual(['f', 'f-2', 'f-3']);
    expect(parts.map(({ notShown }) => notShown)).toEqual([null, null, 'Two bins not shown.']);
    expect(parts.map(({ alt }) => alt.split(',').length)).toEqual([9, 9, 7]);
  });
  // A sheet of Letter is 703 px wide and 920 high within its margins, at 96 px an inch; caption and legend take some 110 of it.
  const MOST = (920 - 110) * (900 / 703);
  const heightOf = (svg: string) => Number(/viewBox="0 0 900 (\d+)/.exec(svg)?.[1]);
  it('of fifty bins has no part too tall for a sheet, and all are to one scale', () => {
    const months = monthsByBin(
      {
        id: 'm',
        title: 'Months',
        quantity: 'hours',
        parts: ['fan hours'],
        bins: bins(50).map(({ name }, i) => ({ name, months: [{ month: '2024-10', values: [i === 49 ? 700 : 10] }] })),
      },
      units,
    );
    const ways = waysByBin(
      {
        id: 'w',
        title: 'Ways',
        quantity: 'water',
        bins: bins(50).map(({ name }, i) => ({
          name,
          ways: ['sensors', 'air', 'tickets'].map((way) => ({ name: way, of: estimate(1000 + 1000 * i, 900, 60_000) })),
        })),
        notShown: null,
      },
      units,
    );
    for (const figure of [months, ways]) {
      const drawn = partsOf(figure).map((part) => part.draw(wide));
      expect(drawn.length).toBeGreaterThan(4);
      for (const svg of drawn) expect(heightOf(svg)).toBeLessThan(MOST);
    }
    const first = partsOf(months)[0].draw(wide);
    expect(first).toContain('>600<');
  });
});
