import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { estimate } from '../../../src/base/estimate.ts';
import { amount } from '../../../src/notebook/form/amount.ts';
import { type FigureSpec, formFigure } from '../../../src/notebook/form/form-figure.ts';
import { Units } from '../../../src/report/units.ts';

const us = new Units('us', 'USD', 'America/Chicago');
const SIZES = [
  { width: 900, narrow: false, idPrefix: 'wide' },
  { width: 360, narrow: true, idPrefix: 'narrow' },
];

/** Drawn at both widths, the wide one as a document; a warning of the library throws. */
function drawn(spec: FigureSpec) {
  const figure = formFigure(spec, us);
  const [wide, narrow] = SIZES.map((size) => parseHTML(`<body>${figure.draw(size)}</body>`).document);
  return { figure, wide, narrow };
}
const words = (document: Document) => [...document.querySelectorAll('text')].map(({ textContent }) => textContent);
/** Five days of so many cables; the third day of the first has no number. */
const days = (cables: number) =>
  Array.from({ length: 5 * cables }, (_, i) => ({
    day: `2024-10-0${(i % 5) + 1}`,
    cable: `C${Math.floor(i / 5) + 1}`,
    temp_f: i === 2 ? null : 40 + i,
  }));

describe('a figure by short orders', () => {
  it('names each line at its end, tells its range in words and what it leaves out', () => {
    const { figure, wide, narrow } = drawn({ title: 'Cooling', rows: days(3), x: 'day', y: 'temp_f', by: 'cable' });
    expect(figure.subtitle).toBe('Temperature, °F, by day, for each cable');
    expect(figure.alt).toBe('Cooling. From 40 °F (C1, 2024-10-01) to 54 °F (C3, 2024-10-05); 14 values.');
    expect(figure.notShown).toBe('1 of 15 rows not shown: no number.');
    for (const document of [wide, narrow]) {
      expect(words(document)).toEqual(expect.arrayContaining(['C1', 'C2', 'C3']));
      // Told apart in black and white too.
      const dashes = [...document.querySelectorAll('[stroke-dasharray]')].map((one) =>
        one.getAttribute('stroke-dasharray'),
      );
      expect(dashes).toEqual(expect.arrayContaining(['7 3', '2 3']));
    }
  });

  it('puts more lines than one frame holds into panels under each other', () => {
    const { wide, narrow } = drawn({ title: 'Many', rows: days(7), x: 'day', y: 'temp_f', by: 'cable' });
    for (const document of [wide, narrow]) expect(words(document)).toEqual(expect.arrayContaining(['C1', 'C7']));
    const height = (cables: number) =>
      Number(
        drawn({ title: 'T', rows: days(cables), x: 'day', y: 'temp_f', by: 'cable' })
          .wide.querySelector('svg')
          ?.getAttribute('height'),
      );
    expect(height(9) - height(7)).toBe(2 * 120);
  });

  it('says each bar’s number beside it, months in their order, intervals as whiskers', () => {
    const rows = [
      { month: '2024-12', cost: amount('money', estimate(120, 100, 150)) },
      { month: '2024-11', cost: amount('money', 80) },
      { month: '2025-01', cost: amount('money', { value: null, interval: null, why: 'No price.' }) },
    ];
    const { figure, wide } = drawn({ title: 'Cost', rows, x: 'month', y: 'cost' });
    const said = words(wide);
    expect(said).toEqual(expect.arrayContaining(['120 USD', '80 USD']));
    expect(said.indexOf('Nov 2024')).toBeLessThan(said.indexOf('Dec 2024'));
    expect(figure.legend).toEqual([{ label: '90 % interval', swatch: 'whisker' }]);
    expect(figure.notShown).toBe('1 of 3 rows not shown: no number.');
  });

  it('calls a range what it is', () => {
    const legend = (spec: Partial<FigureSpec>) =>
      formFigure({ title: 'T', rows: [], x: 'name', y: 'cost', ...spec }, us).legend.map(({ label }) => label);
    const cost = { ...amount('money', estimate(120, 100, 150)), known: 'by the model' as const };
    expect(legend({ rows: [{ name: 'a', cost }] })).toEqual(['range by the model, no 90 % interval']);
    const days = [{ day: '2024-10-01', cost_money: 2, least_money: 1, most_money: 3 }];
    const ends = { x: 'day', y: 'cost_money', low: 'least_money', high: 'most_money' };
    expect(legend({ rows: days, ...ends })).toEqual(['least to most']);
  });

  it('holds values against a level, in its own unit', () => {
    const level = { at: amount('temperature', 50, 'degF'), label: 'target' };
    const { figure } = drawn({ title: 'T', rows: days(1), x: 'day', y: 'temp_f', level });
    expect(figure.legend).toEqual([{ label: 'target, 50 °F', swatch: 'dash' }]);
  });

  it('draws every form at both widths without a warning', () => {
    const numbers = Array.from({ length: 12 }, (_, i) => ({
      depth_ft: i,
      moisture_pct: 14 + (i % 4),
      by: `b${i % 3}`,
      low: 13,
      high: 19,
    }));
    for (const form of ['line', 'dots', 'bars'] as const) {
      for (const by of [undefined, 'by']) {
        drawn({ title: 'T', rows: numbers, x: 'depth_ft', y: 'moisture_pct', form, by });
        drawn({
          title: 'T',
          rows: numbers,
          x: 'depth_ft',
          y: 'moisture_pct',
          form,
          by,
          low: 'low',
          high: 'high',
          of: 'moisture',
          unit: '%',
        });
        drawn({ title: 'T', rows: days(2), x: 'day', y: 'temp_f', form, by: by === undefined ? undefined : 'cable' });
        drawn({
          title: 'T',
          rows: numbers.slice(0, 6),
          x: 'by',
          y: 'depth_ft',
          form,
          by: by === undefined ? undefined : 'moisture_pct',
        });
      }
    }
  });

  it('refuses what no axis can show', () => {
    const draw = (spec: Partial<FigureSpec>) => () =>
      formFigure({ title: 'T', rows: days(1), x: 'day', y: 'temp_f', ...spec }, us);
    expect(draw({ y: 'temp' })).toThrow('there is no column temp; the rows have day, cable, temp_f');
    expect(draw({ y: 'cable' })).toThrow('"C1" is no number to draw');
    expect(draw({ rows: [{ day: '2024-10-01', temp_f: null }] })).toThrow('temp_f has no number in 1 row');
    expect(draw({ rows: [{ day: '2024-10-01', temp_f: estimate(1, 0, 2) }], y: 'temp_f' })).not.toThrow();
    expect(draw({ rows: [{ day: '2024-10-01', cost: estimate(1, 0, 2) }], y: 'cost' })).toThrow(
      "cost holds estimates; say of what, e.g. of: 'money'",
    );
  });
});
