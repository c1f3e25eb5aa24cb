import * as Plot from '@observablehq/plot';
import { describe, expect, it } from 'vitest';
import { estimate, withheld } from '../../../src/base/estimate.ts';
import { binSection } from '../../../src/report/figures/bin-section.ts';
import { costByBin } from '../../../src/report/figures/cost-by-bin.ts';
import { draw } from '../../../src/report/figures/draw.ts';
import { fanClock } from '../../../src/report/figures/fan-clock.ts';
import { SCHEMES } from '../../../src/report/figures/schemes.ts';
import { luminance } from '../../../src/report/html/palette.ts';
import { Units } from '../../../src/report/units.ts';

const units = new Units('us', 'USD', 'America/Chicago');
const wide = { width: 900, narrow: false, idPrefix: 't' };
const DAY = 86_400_000;

describe('draw', () => {
  it('turns a warning of the library into a failure and gives the console back', () => {
    const before = console.warn;
    // Text in place of numbers on a number scale is what the library warns of.
    const marks = [Plot.dot([{ a: '2020-01-01' }, { a: '2021-01-01' }], { x: 'a' })];
    expect(() => draw(wide, { marks })).toThrow(/warns/);
    expect(console.warn).toBe(before);
  });
  it('rounds positions but never words', () => {
    const svg = draw(wide, { marks: [Plot.text(['0.0235'], { frameAnchor: 'middle' })] });
    expect(svg).toContain('0.0235');
    expect(svg).not.toMatch(/ d="[^"]*\d\.\d\d/);
  });
});

describe('colour maps', () => {
  // Cividis and a sequential blue-green map must order by lightness, or a black and white print would lie.
  it('order by lightness', () => {
    const ramp = (name: keyof typeof SCHEMES) =>
      [0, 0.2, 0.4, 0.6, 0.8, 1].map((share) => luminance(SCHEMES[name](share)));
    const cividis = ramp('cividis');
    const moisture = ramp('yellow-green-blue');
    for (let i = 1; i < 6; i++) {
      expect(cividis[i]).toBeGreaterThan(cividis[i - 1]);
      expect(moisture[i]).toBeLessThan(moisture[i - 1]);
    }
  });
});

describe('the section of a bin', () => {
  const data = {
    id: 's',
    title: 'A section',
    quantity: 'temperature' as const,
    columnMs: [0, 1, 2, 3].map((day) => day * DAY),
    columnWidthMs: DAY,
    rows: [
      { lowM: 0, highM: 2 },
      { lowM: 2, highM: 4 },
    ],
    // two rows of four days: 0 °C, a gap, 20 °C twice; the upper all 0 °C
    values: Float64Array.from([0, Number.NaN, 20, 20, 0, 0, 0, 0]),
    surface: [{ fromMs: Number.NEGATIVE_INFINITY, depthM: 4 }],
    fanDays: [{ dayMs: 0, hours: 12, unknownHours: 12 }],
    readings: { shown: 7, of: 8, empty: 0 },
  };
  const figure = binSection(data, units);
  const svg = figure.draw(wide);
  it('tells what it leaves out, and hatches it', () => {
    expect(figure.notShown).toMatch(/^1 of 8 readings not shown/);
    const hatched = /d="([^"]+)" fill="url\(#t-none\)"/.exec(svg) ?? /fill="url\(#t-none\)" d="([^"]+)"/.exec(svg);
    expect(hatched?.[1].match(/M/g)?.length).toBe(1);
  });
  it('puts the floor at the bottom: the lower row lies lower on the page', () => {
    const boxes = (colour: string) =>
      [...svg.matchAll(/<path [^>]*>/g)].map(([tag]) => tag).filter((tag) => tag.includes(`fill="${colour}"`));
    const warm = boxes(SCHEMES.cividis(1))[0];
    const top = Number(/d="M[\d.]+ ([\d.]+)/.exec(warm)?.[1]);
    // Only the lower row is warm; its upper edge is the middle of the drawing, not its top.
    expect(top).toBeGreaterThan(100);
  });
  it('joins like neighbours to one box', () => {
    const warm = [...svg.matchAll(/<path [^>]*>/g)]
      .map(([tag]) => tag)
      .find((tag) => tag.includes(`fill="${SCHEMES.cividis(1)}"`));
    expect(warm?.match(/M/g)?.length).toBe(1);
  });
  it('says its range in the shown unit', () => {
    expect(figure.alt).toContain('32 and 68 °F');
    expect(figure.legend[0].label).toMatch(/^30 to \d+ °F$/);
  });
  it('says why readings are not shown: after the grain was out they are neither missing nor doubted', () => {
    const notShown = (shown: number, empty: number) =>
      binSection({ ...data, readings: { shown, of: 80, empty } }, units).notShown;
    expect(notShown(80, 0)).toBeNull();
    expect(notShown(78, 0)).toBe('2 of 80 readings not shown: missing, or not believed.');
    expect(notShown(68, 12)).toBe('12 of 80 readings not shown: the bin held no grain.');
    expect(notShown(66, 12)).toBe(
      '14 of 80 readings not shown: 12 while the bin held no grain, the others missing, or not believed.',
    );
  });
  it('refuses to draw nothing', () => {
    expect(() => binSection({ ...data, values: new Float64Array(8).fill(Number.NaN) }, units)).toThrow(
      /no temperature reading/,
    );
  });
});

describe('cost by bin', () => {
  const figure = costByBin(
    {
      id: 'c',
      title: 'Costs',
      quantity: 'money per grain point',
      bins: [
        { name: 'A', cost: estimate(0.05, 0.04, 0.06) },
        { name: 'A', cost: estimate(0.02, 0.01, 0.03) },
        { name: 'B', cost: withheld('No log.') },
      ],
    },
    units,
  );
  it('keeps two bins of one name, cheapest first, and names the one it leaves out with why', () => {
    expect(figure.draw(wide).match(/<circle/g)?.length).toBe(2);
    expect(figure.alt).toContain('from A at 0.020 (0.010 to 0.030) to A at 0.050 (0.040 to 0.060)');
    expect(figure.notShown).toBe('1 of 3 bins not shown. B: No log.');
  });
  it('draws with no bin at all', () => {
    const none = costByBin({ id: 'c', title: 'None', quantity: 'money', bins: [] }, units);
    expect(none.draw(wide)).toContain('<svg');
  });
});

describe('the clock of a fan', () => {
  it('cuts a run at midnight and joins days alike', () => {
    const hour = DAY / 24;
    const figure = fanClock({
      id: 'f',
      title: 'Clock',
      alt: 'Clock',
      span: { fromMs: 0, toMs: 4 * DAY },
      // 22:00 to 2:00 on three nights: three evenings alike are one box, three mornings another
      on: [0, 1, 2].map((day) => ({ fromMs: day * DAY + 22 * hour, toMs: day * DAY + 26 * hour })),
      unknown: [],
      notShown: null,
    });
    const path = [...figure.draw(wide).matchAll(/<path [^>]*>/g)]
      .map(([tag]) => tag)
      .find((tag) => tag.includes('fill="var(--ink)"'));
    expect(path?.match(/M/g)?.length).toBe(2);
  });
});
