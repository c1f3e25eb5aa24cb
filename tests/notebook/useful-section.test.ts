import { describe, expect, it } from 'vitest';
import type { BinReview } from '../../src/analysis/types.ts';
import { usefulHours } from '../../src/analysis/useful/useful-hours.ts';
import { withheld } from '../../src/base/estimate.ts';
import { againstTotal, usefulSection } from '../../src/notebook/useful-section.ts';
import { Units } from '../../src/report/units.ts';
import { knownInput, type Made } from '../analysis/useful/known-input.ts';

const units = new Units('us', 'USD', 'America/Chicago');
const si = new Units('si', 'EUR', 'America/Chicago');

const reviewOf = (made: Made, name: string): BinReview => {
  const input = knownInput(made);
  return {
    bin: { ...input.bin, name, fanIds: [`F ${name}`] },
    failure: null,
    fan: { hours: { value: 120, interval: [119, 121], why: null }, spans: input.spans },
    useful: usefulHours(input),
  } as unknown as BinReview;
};
const night = { on: (hour: number) => hour >= 22 || hour < 4 };
const damp = reviewOf(night, 'North');
const none = {
  bin: { ...damp.bin, fanIds: ['F2'] },
  failure: null,
  fan: { hours: withheld('No log tells what fan F1 did.') },
  useful: null,
} as unknown as BinReview;

describe('what each fan hour could do, on the page', () => {
  it('leads with the hours against the goal and their cost', () => {
    // 120 h of damp night air at 10 kW and 0.1 a kWh (tests/analysis/useful/known-season.test.ts)
    const section = usefulSection([damp], units);
    expect(section.lead).toMatch(/^120 h .*worked against the bin’s goal; their energy cost 120 USD/);
    expect(section.figures?.[0].title).toMatch(/^North: 100 % of the fan hours worked against the goal$/);
    expect(againstTotal([damp, none])).toMatchObject({ of: '1 of 2 bins', total: { value: 120 } });
  });

  it('counts an hour of a fan that two bins share once: at least the most of one bin, at most what the fan ran', () => {
    const of = (name: string, against: [number, number, number]) =>
      ({
        ...damp,
        bin: { ...damp.bin, name, fanIds: ['FS'] },
        fan: { hours: { value: 120, interval: [119, 121], why: null }, fans: [{ fanId: 'FS', spans: damp.fan.spans }] },
        useful: { ...damp.useful, against: { value: against[0], interval: [against[1], against[2]], why: null } },
      }) as unknown as BinReview;
    const two = againstTotal([of('North', [50, 40, 60]), of('South', [20, 10, 30])]);
    expect(two.total).toEqual({ value: 50, interval: [40, 90], why: null });
    // 90 and 100 h of two bins cannot be 190 h of a fan that ran 120.
    const most = againstTotal([of('North', [90, 80, 100]), of('South', [100, 90, 110])]).total;
    expect(most.value).toBe(100);
    expect(most.interval?.[1]).toBeLessThan(130);
  });

  it('states the thresholds, in one system of units, and where others may be set', () => {
    expect(usefulSection([damp], units).notes?.[0]).toMatch(
      /0.5 points or more.*2.0 °F or more.*useful_hours in season.yaml/,
    );
    expect(usefulSection([damp], si).notes?.[0]).toMatch(/1.1 K or more/);
    const stated = reviewOf({ ...night, usefulHours: { moistureWb: 0.01, temperatureK: null } }, 'North');
    expect(usefulSection([stated], units).notes?.[0]).toMatch(
      /1.0 points or more.*as useful_hours in season.yaml states/,
    );
  });

  it('draws each class by a pattern of its own, a legend for those that are there, and the hours that would have paid', () => {
    const both = usefulSection([damp, reviewOf({}, 'South')], units).figures?.[0];
    expect(both?.legend.map((one) => one.swatch)).toEqual(expect.arrayContaining(['dry', 'rewet', 'missed']));
    expect(both?.legend.map((one) => one.swatch)).not.toContain('warm');
    for (const narrow of [false, true]) {
      const svg = both?.draw({ width: narrow ? 360 : 900, narrow, idPrefix: 'x' }) ?? '';
      expect(svg).toContain('url(#x-rewet)');
      expect(svg).toContain('url(#x-missed)');
      expect(svg).toContain('North');
      expect(svg).not.toMatch(/NaN|undefined/);
      expect(both?.draw({ width: narrow ? 360 : 900, narrow, idPrefix: 'x' })).toBe(svg);
    }
    expect(both?.alt).toMatch(/120 h.* rewetting/);
  });

  it('tells the weather of the hours in bands, in one system of units', () => {
    const rowsOf = (of: Units) =>
      usefulSection([damp], of)
        .tables?.find((table) => table.id === 'hours-by-weather')
        ?.rows.map((row) => row.part);
    // Air of 10 degC and 95 % at night
    expect(rowsOf(units)).toContain('50 to 68 °F; humidity 80 % and more');
    expect(rowsOf(si)).toContain('10 to 20 °C; humidity 80 % and more');
  });

  it('a bin without a log keeps its row, with the reason', () => {
    const section = usefulSection([damp, none], units);
    expect(section.table?.rows[1]).toMatchObject({ against: { value: null, why: 'No log tells what fan F1 did.' } });
    const bare = usefulSection([none], units);
    expect(bare.lead).toMatch(/^Can’t tell what the fan hours could do to the grain: No log tells/);
    expect(bare.figures).toEqual([]);
    expect(usefulSection([], units).lead).toMatch(/^Can’t tell/);
  });
});
