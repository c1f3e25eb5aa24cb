import { describe, expect, it } from 'vitest';
import { billShares } from '../../../src/analysis/energy/bill-shares.ts';
import { binFan } from '../../../src/analysis/energy/bin-fan.ts';
import { energyFrom, energyFromText } from '../../../src/analysis/energy/energy-from.ts';
import { fanSeason } from '../../../src/analysis/fan/fan-season.ts';
import type { Tariff } from '../../../src/money/tariff.ts';
import type { Bin, Season } from '../../../src/season/season.ts';
import { FAN, fanTable, H, type Row, SEASON } from '../fan/known-fan.ts';
import { billTable } from './bill-table.ts';

const TARIFF: Tariff = {
  id: 'T',
  energy: [{ pricePerKwh: 0.1, when: null }],
  demand: [],
  fixedPerMonth: null,
  connectedPerHpYear: null,
  minimumPerMonth: null,
};
const fans = ['F1', 'F2', 'F3'].map((id) => ({ ...FAN, id, tariffId: id === 'F3' ? null : 'T' }));
const binOf = (grain: Partial<Bin['grain']>): Bin =>
  ({
    id: 'B1',
    fanIds: ['F1'],
    grain: { filledMs: null, unloadedMs: null, depthSteps: [], ...grain },
  }) as unknown as Bin;
const season = { ...SEASON, currency: 'USD', tariffs: [TARIFF], fans, bins: [] } as unknown as Season;
const start = Date.UTC(2024, 9, 10, 5); // 10 October 2024, local midnight, CDT
/** 10 kW hour by hour, on where `on` says; the last row closes the log. */
const hourly = (hours: number, on: (hour: number) => boolean, fan = 'F1'): Row[] =>
  Array.from({ length: hours + 1 }, (_, h) => ({ time: start + h * H, fan, power: h < hours && on(h) ? 10_000 : 0 }));

describe('where the energy comes from, by hand', () => {
  const part = (fanId: string, from: 'meter' | 'current' | 'nameplate' | null, energyKwh: number) => ({
    fanId,
    from,
    energyKwh,
  });
  it('the least sure way with more than a tenth of it: 100 of 1,000 kWh is no more than a tenth', () => {
    expect(energyFrom([part('F1', 'meter', 900), part('F2', 'nameplate', 100)])).toBe('meter');
    expect(energyFrom([part('F1', 'meter', 899), part('F2', 'nameplate', 101)])).toBe('nameplate');
    // 60 and 60 of the nameplate are 120 of 1,000
    expect(energyFrom([part('F1', 'current', 880), part('F2', 'nameplate', 60), part('F3', 'nameplate', 60)])).toBe(
      'nameplate',
    );
  });
  it('fans that never ran: the surest there is; none at all: null', () => {
    expect(energyFrom([part('F1', 'current', 0), part('F2', 'nameplate', 0)])).toBe('current');
    expect(energyFrom([part('F1', null, 0)])).toBeNull();
    expect(energyFrom([])).toBeNull();
  });
  it('says which fan comes from what', () => {
    expect(energyFromText([part('F1', 'meter', 750), part('F2', 'nameplate', 250)])).toBe(
      'Its energy is of fan F1 (75 %) from a meter and of fan F2 (25 %) from the nameplate alone.',
    );
    expect(energyFromText([part('F1', 'meter', 750), part('F2', 'meter', 250)])).toBe('Its energy is from a meter.');
    expect(energyFromText([part('F1', null, 0)])).toBe('Where its energy comes from is not known.');
  });
});

describe('energy of a tariff’s fans in the time of a bill, by hand', () => {
  // Fan F1 runs from 22:00 to 04:00 local every night of 40 nights, F2 one long run; F3 is on no tariff.
  const night = (h: number) => h % 24 >= 22 || h % 24 < 4;
  const rows = [
    ...hourly(40 * 24, night),
    ...hourly(40 * 24, (h) => h >= 240 && h < 300, 'F2'),
    ...hourly(40 * 24, () => true, 'F3'),
  ];
  const seasons = fans.map((fan) => fanSeason(fan, fanTable(rows)));
  const of = (from: number, to: number, told = seasons, tariff = 'T') => {
    const [{ fansKwh, untoldHours }] = billShares(season, billTable([{ from, to, tariff }]), told);
    return { energyKwh: fansKwh.value, untoldHours };
  };
  const day = 24 * H;

  it('cuts runs at local midnight: 12 to 14 October is 2 days of 2 + 4 h, 2 x 6 x 10 = 120 kWh', () => {
    expect(of(start + 2 * day, start + 4 * day).energyKwh).toBeCloseTo(120, 9);
    expect(of(start + 2 * day, start + 4 * day).untoldHours).toBe(0);
    // One day from noon to noon is 6 h, and half a night to midnight is 2 h.
    expect(of(start + 2.5 * day, start + 3 * day).energyKwh).toBeCloseTo(20, 9);
  });
  it('across a month’s end: 19 October noon to 5 November noon is 17 nights of 6 h and 60 h of F2: 1,020 + 600', () => {
    expect(of(start + 9.5 * day, start + 26.5 * day).energyKwh).toBeCloseTo(1620, 9);
  });
  it('tells how much of the time no log covers: the bill ends 10 days after both logs', () => {
    expect(of(start + 39 * day, start + 50 * day).untoldHours).toBeCloseTo(2 * 240, 9);
    expect(of(start, start + day, [])).toEqual({ energyKwh: 0, untoldHours: 48 });
    expect(of(start, start + day, seasons, 'other')).toEqual({ energyKwh: 0, untoldHours: 0 });
  });
});

describe('fan hours while the bin is empty, by hand', () => {
  // 10 h on the first day, 90 h from day 10 on, 5 h on day 30: 105 h at 10 kW
  const on = (h: number) => (h >= 2 && h < 12) || (h >= 240 && h < 330) || (h >= 720 && h < 725);
  const review = (grain: Partial<Bin['grain']>) => {
    const table = fanTable([...hourly(800, on), ...hourly(800, () => false, 'F2'), ...hourly(800, () => false, 'F3')]);
    return binFan(
      binOf(grain),
      season,
      fans.map((fan) => fanSeason(fan, table)),
      null,
    );
  };
  it('stay in hours and cost, and are told: 10 h before and 5 after, 150 kWh, 15 USD', () => {
    const got = review({ filledMs: start + 120 * H, unloadedMs: start + 500 * H });
    expect(got.hours.value).toBe(105);
    expect(got.cost.value).toBeCloseTo(105, 9);
    expect(got.outside?.hoursBefore).toBe(10);
    expect(got.outside?.hoursAfter).toBe(5);
    expect(got.outside?.energyKwh).toBeCloseTo(150, 9);
    expect(got.outside?.energyCost).toBeCloseTo(15, 9);
    expect(got.why).toContain(
      'ran 10 h before any grain was in and 5 h after it was unloaded (150 kWh, 15 USD of energy); the hours and the cost, also those per bushel and per point, include them; points per fan hour do not.',
    );
  });
  it('grain that came in steps was there from the first step on, whatever `filled` says', () => {
    const depthSteps = [
      { fromMs: start - 24 * H, depthM: 2 },
      { fromMs: start + 120 * H, depthM: 6 },
    ];
    expect(review({ filledMs: start + 120 * H, depthSteps }).outside).toBeNull();
  });
  it('no more than a hundredth of the hours is not worth a word; without dates nothing is outside', () => {
    // Filled half an hour into the first run leaves 0.5 of 105 h before; 1.05 h would be a hundredth.
    expect(review({ filledMs: start + 2.5 * H }).outside).toBeNull();
    expect(review({ filledMs: start + 4 * H }).outside?.hoursBefore).toBe(2);
    expect(review({}).outside).toBeNull();
  });
});
