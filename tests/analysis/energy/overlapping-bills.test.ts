import { describe, expect, it } from 'vitest';
import { billShares } from '../../../src/analysis/energy/bill-shares.ts';
import { overlappingBills } from '../../../src/analysis/energy/overlapping-bills.ts';
import { fanSeason } from '../../../src/analysis/fan/fan-season.ts';
import { billSection } from '../../../src/notebook/energy-bills.ts';
import { Units } from '../../../src/report/units.ts';
import type { Season } from '../../../src/season/season.ts';
import { FAN, fanTable, H, SEASON } from '../fan/known-fan.ts';
import { billTable } from './bill-table.ts';

const day = (date: number) => Date.UTC(2024, 9, date, 5);
const bill = (from: number, to: number, tariffId = 'T') => ({ tariffId, fromMs: day(from), toMs: day(to) });

describe('bills of one tariff that lie over each other', () => {
  it('count their days once: a shared day of reading is the earlier bill’s, a longer overlap leaves the later bill out', () => {
    const told = overlappingBills([bill(1, 11), bill(10, 21), bill(15, 25), bill(21, 31), bill(5, 20, 'U')]);
    expect(told.map((one) => [one.ownFromMs, one.over?.fromMs ?? null])).toEqual([
      [day(1), null],
      [day(11), null],
      [day(15), day(10)],
      [day(21), null],
      [day(5), null],
    ]);
    // The same bill twice, written in any order: the first in the file counts.
    expect(overlappingBills([bill(11, 21), bill(1, 11), bill(11, 21)]).map((one) => one.over !== null)).toEqual([
      false,
      false,
      true,
    ]);
  });

  it('in the sums of the page: 10 kW through 20 days of 1,000 kWh each ten are 4,800 of 6,000 kWh, whatever stands twice', () => {
    // 10 kW on the first ten of each 24 hours: 100 kWh a day.
    const rows = Array.from({ length: 20 * 24 + 1 }, (_, h) => ({
      time: day(1) + h * H,
      power: h % 24 < 10 && h < 480 ? 10_000 : 0,
    }));
    const season = { ...SEASON, fans: [{ ...FAN, tariffId: 'T' }], tariffs: [], bins: [] } as unknown as Season;
    const fan = fanSeason(season.fans[0], fanTable(rows));
    const of = (from: number, to: number, kwh: number) => ({ from: day(from), to: day(to), kwh });
    const section = (bills: ReturnType<typeof of>[]) =>
      billSection(
        { bills: billShares(season, billTable(bills), [fan]) } as unknown as Parameters<typeof billSection>[0],
        new Units('us', 'USD', 'America/Chicago'),
      );
    const clean = section([of(1, 11, 1250), of(11, 21, 1250)]);
    expect(clean.lead).toMatch(/^The fans explain 80\.0? %.* of the 2,500 kWh billed/);
    const twice = section([of(1, 11, 1250), of(11, 21, 1250), of(8, 18, 1250), of(11, 21, 1250)]);
    expect(twice.lead).toBe(clean.lead);
    expect(twice.notes?.filter((note) => note.includes('is in no sum'))).toHaveLength(2);
    expect(twice.notes?.join(' ')).toContain('It lies over the bill of T from 2024-10-01; those days are counted once');
    // A day of reading in both bills: 100 kWh of it are the earlier bill's alone.
    const shared = billShares(season, billTable([of(1, 11, 1250), of(10, 21, 1250)]), [fan]);
    expect(shared.map((one) => one.fansKwh.value)).toEqual([1000, 1000].map((kwh) => expect.closeTo(kwh, 6)));
    expect(shared[1].fromMs).toBe(day(10));
  });
});
