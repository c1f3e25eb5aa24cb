import { describe, expect, it } from 'vitest';
import { billShares } from '../../../src/analysis/energy/bill-shares.ts';
import { binFan } from '../../../src/analysis/energy/bin-fan.ts';
import { tariffMonths } from '../../../src/analysis/energy/tariff-months.ts';
import { fanSeason } from '../../../src/analysis/fan/fan-season.ts';
import type { Fan } from '../../../src/bin/fan.ts';
import type { DemandRule, Tariff } from '../../../src/money/tariff.ts';
import type { Season } from '../../../src/season/season.ts';
import { FAN, fanTable, H, type Row, SEASON } from '../fan/known-fan.ts';
import { billTable } from './bill-table.ts';

const Z90 = 1.6448536;
const RATCHET: DemandRule = { pricePerKw: 10, when: null, ratchet: 0.5 };
const fans: Fan[] = ['F1', 'F2'].map((id) => ({ ...FAN, id, tariffId: 'T' }));
const seasonOf = (rule: DemandRule): Season => {
  const tariff: Tariff = {
    id: 'T',
    energy: [{ pricePerKwh: 0.1, when: null }],
    demand: [rule],
    fixedPerMonth: null,
    connectedPerHpYear: null,
    minimumPerMonth: null,
  };
  const bins = fans.map(({ id }) => ({
    id: `B${id}`,
    fanIds: [id],
    grain: { filledMs: null, unloadedMs: null, depthSteps: [] },
  }));
  return { ...SEASON, currency: 'USD', fans, tariffs: [tariff], bins } as unknown as Season;
};
/** Midnight in Chicago; daylight time from 10 March to 2 November 2024 and from 9 March 2025 on. */
const local = (year: number, month: number, day: number, hour = 0) => {
  const winter = (year === 2024 && month > 10) || (year === 2025 && month < 3);
  return Date.UTC(year, month - 1, day, hour + (winter ? 6 : 5));
};
type Stretch = readonly [fromMs: number, hours: number];
const within = (ms: number, some: readonly Stretch[]) => some.some(([from, h]) => ms >= from && ms < from + h * H);
/** Hourly samples from 1 October 2024 on: `kw` in the runs, nothing at all inside the silences. */
const log = (fan: string, kw: number, toMs: number, runs: readonly Stretch[], silences: readonly Stretch[]): Row[] => {
  const rows: Row[] = [];
  for (let ms = local(2024, 10, 1); ms <= toMs; ms += H) {
    if (within(ms - H, silences) && within(ms, silences)) continue;
    rows.push({ time: ms, fan, power: within(ms, runs) ? 1000 * kw : 0 });
  }
  return rows;
};
const read = (rows: Row[]) => fans.map((fan) => fanSeason(fan, fanTable(rows)));

/** By how much the upper end of what is billed exceeds what errors of the powers alone would make it, kW by month. */
function opened(season: Season, rows: Row[], sure: Row[]) {
  const top = (of: Row[]) =>
    tariffMonths(season, read(of)).map(({ month, demand: [{ billedKw, told }] }) => ({
      month,
      billedKw,
      top: told?.billed.interval?.[1] ?? Number.NaN,
    }));
  const without = top(sure);
  return top(rows).map((one, m) => [one.month, one.billedKw, Number((one.top - without[m].top).toFixed(6))]);
}

describe('unknown time under a ratchet, by hand', () => {
  /**
   * 10 USD/kW, ratchet 50 %, F1 of 15 kW and F2 of 10 kW. Billed and, with the unknown time run, billed at most:
   * October: F1 runs, F2 runs by itself: 15 kW; 15.
   * November: nothing runs, F2 is silent for 30 h: 50 % of 15 = 7.5; F2 alone would be 10, so 2.5 more.
   * December: both silent: 7.5; both together 25, so 17.5 more.
   * January, over the year's end, nothing unknown: 7.5; 50 % of December's 25 = 12.5, so 5 more.
   * February: F1 runs 15, more than 12.5: nothing more.
   */
  const end = local(2025, 2, 28);
  const runs1: Stretch[] = [
    [local(2024, 10, 5), 48],
    [local(2025, 2, 5), 24],
  ];
  const runs2: Stretch[] = [[local(2024, 10, 20), 24]];
  const december: Stretch = [local(2024, 12, 10), 30];
  const sure = [...log('F1', 15, end, runs1, []), ...log('F2', 10, end, runs2, [])];
  const silent = [
    ...log('F1', 15, end, runs1, [december]),
    ...log('F2', 10, end, runs2, [[local(2024, 11, 10), 30], december]),
  ];

  it('a month’s open peak raises the upper ends of the months after it, over the year’s end too', () => {
    expect(opened(seasonOf(RATCHET), silent, sure)).toEqual([
      ['2024-10', 15, 0],
      ['2024-11', 7.5, 2.5],
      ['2024-12', 7.5, 17.5],
      ['2025-01', 7.5, 5],
      ['2025-02', 15, 0],
    ]);
  });
  it('without a ratchet it stays with its month', () => {
    expect(opened(seasonOf({ ...RATCHET, ratchet: null }), silent, sure).map(([, , more]) => more)).toEqual([
      0, 10, 25, 0, 0,
    ]);
  });
  it('a rule by day asks for unknown time by day; one of other months for none', () => {
    // 30 h from midnight on 10 December hold a day; 6 h from 22:00 on hold none of 07:00 to 22:00.
    const byDay = { months: null, days: null, hours: [[7 * 60, 22 * 60]] as const };
    const night = [...log('F1', 15, end, runs1, [[local(2024, 12, 10, 22), 6]]), ...log('F2', 10, end, runs2, [])];
    const more = (rule: DemandRule, rows: Row[]) => opened(seasonOf(rule), rows, sure).map(([, , kw]) => kw);
    expect(more({ ...RATCHET, when: byDay }, night)).toEqual([0, 0, 0, 0, 0]);
    expect(more({ ...RATCHET, when: byDay }, silent)).toEqual([0, 2.5, 17.5, 5, 0]);
    const summer = { months: new Set([6, 7, 8, 9, 10]), days: null, hours: null };
    expect(more({ ...RATCHET, when: summer }, silent)).toEqual([0, 0, 0, 0, 0]);
  });
  it('a bin’s fan carries its own: F2 10 kW x 10 = 100 in November and December, 50 in January and February', () => {
    const months = (rows: Row[], bin: number) => {
      const season = seasonOf(RATCHET);
      return binFan(season.bins[bin], season, read(rows), null).months.map(
        ({ told }) => told?.demandCost.interval?.[1] ?? Number.NaN,
      );
    };
    const more = (bin: number) =>
      months(silent, bin).map((top, m) => Math.round(1e6 * (top - months(sure, bin)[m])) / 1e6);
    expect(more(1)).toEqual([0, 100, 100, 50, 50]);
    // F1 carries 75 as the ratchet's in December and January, so December 150 - 75; January no more than 50 % of 15 kW, as it is.
    expect(more(0)).toEqual([0, 0, 75, 0, 0]);
  });
  it('January’s bill: 75 USD of demand, up to 50 more by December; one before the silence has none', () => {
    const season = seasonOf(RATCHET);
    const bills = [
      { from: local(2025, 1, 1), to: local(2025, 2, 1) },
      { from: local(2024, 10, 1), to: local(2024, 11, 1) },
    ];
    const [january, october] = billShares(season, billTable(bills), read(silent)).map((one) => one.fansMoney);
    expect(january.value).toBeCloseTo(75, 6);
    // Powers to 1 %, peaks to 2 % (sd).
    expect(january.interval?.[1]).toBeCloseTo(75 + 75 * Z90 * Math.hypot(0.01, 0.02) + 50, 3);
    expect(october.interval).toEqual(billShares(season, billTable(bills), read(sure))[1].fansMoney.interval);
  });
});

describe('how long a ratchet remembers', () => {
  /**
   * F2 is silent in October 2024 while F1 runs 15 kW: up to 25. F2 runs 10 kW in November: billed 10, at most 50 % of 25 = 12.5.
   * December to September: 7.5, at most 12.5. In October 2025 the highest of the eleven months before is November's 10: 5, no more.
   */
  it('eleven months', () => {
    const end = local(2025, 10, 20);
    const runs1: Stretch[] = [[local(2024, 10, 5), 48]];
    const runs2: Stretch[] = [[local(2024, 11, 10), 24]];
    const f1 = log('F1', 15, end, runs1, []);
    const sure = [...f1, ...log('F2', 10, end, runs2, [])];
    const silent = [...f1, ...log('F2', 10, end, runs2, [[local(2024, 10, 5), 30]])];
    const got = opened(seasonOf(RATCHET), silent, sure);
    expect(got.slice(0, 3)).toEqual([
      ['2024-10', 15, 10],
      ['2024-11', 10, 2.5],
      ['2024-12', 7.5, 5],
    ]);
    expect(got.slice(-2)).toEqual([
      ['2025-09', 7.5, 5],
      ['2025-10', 5, 0],
    ]);
  });
});
