import { describe, expect, it } from 'vitest';
import { tariffSummary } from '../../../src/analysis/energy/money-summary.ts';
import { tariffMonths } from '../../../src/analysis/energy/tariff-months.ts';
import { fanSeason } from '../../../src/analysis/fan/fan-season.ts';
import type { BinFan } from '../../../src/analysis/types.ts';
import type { Fan } from '../../../src/bin/fan.ts';
import { FAN, fanTable, H, type Row } from '../fan/known-fan.ts';
import { bin, FAN_T, powerRows, rest, review, seasonOf, start } from './by-hand-season.ts';

describe('a bin’s fan cost by hand', () => {
  // 100 h at 15 kW in October, then rest until 10 December (61 days = 1,464 h from 10 October)
  const parts = [rest(10), [100, 15_000], rest(1464 - 110)] as const;
  const season = seasonOf([FAN_T], [bin('B1', ['F1'])]);

  it('100 h at 15 kW: 1,500 kWh, 150 energy, demand 150 + ratchet 75 + 75, connected 15 hp x 12 = 180', () => {
    const got = review(powerRows(parts), season);
    expect(got.hours.value).toBe(100);
    expect(got.energyKwh.value).toBeCloseTo(1500, 6);
    expect(got.energyCost.value).toBeCloseTo(150, 6);
    expect(got.demandCost.value).toBeCloseTo(300, 6);
    expect(got.connectedCost.value).toBeCloseTo(180, 3);
    expect(got.heatCost.value).toBe(0);
    expect(got.cost.value).toBeCloseTo(630, 3);
    expect(got.kwhPerBushel.value).toBeCloseTo(0.15, 9);
    expect(got.costPerBushel.value).toBeCloseTo(0.063, 6);
    expect(got.starts).toBe(1);
    expect(got.why).toBeNull();
    expect(got.months.map((m) => [m.month, m.hours, m.demandCost])).toEqual([
      ['2024-10', 100, 150],
      ['2024-11', 0, 75],
      ['2024-12', 0, 75],
    ]);
  });
  it('the tariff’s months: 150 + 150 + 20 + 15 = 335; then 75 + 20 + 15 = 110, which the minimum lifts by 40 to 150', () => {
    const table = fanTable(powerRows(parts));
    const months = tariffMonths(season, [fanSeason(FAN_T, table)]);
    const shown = months.map((m) =>
      [m.month, m.energyCost, m.demand[0].billedKw, m.minimumTopUp, m.total].map((x) =>
        typeof x === 'number' ? Math.round(x * 100) / 100 : x,
      ),
    );
    expect(shown).toEqual([
      ['2024-10', 150, 15, 0, 335],
      ['2024-11', 0, 7.5, 40, 150],
      ['2024-12', 0, 7.5, 40, 150],
    ]);
    const [october, november] = tariffSummary({ bins: [], fans: [], tariffMonths: months });
    expect(october).toMatchObject({ tariff: 'T', month: '2024-10', energyKwh: 1500, demandCost: 150, total: 335 });
    expect(october).toMatchObject({ fixed: 20, connected: 15, minimumTopUp: 0 });
    // The fan first ran at 10:00 local, 15:00 UTC.
    expect(october.demand).toMatchObject([{ rule: 1, began: '2024-10-10T15:00:00.000Z', peakKw: 15, cost: 150 }]);
    expect(november).toMatchObject({ demandCost: 75, minimumTopUp: 40, total: 150, totalInterval: [150, 150] });
    expect(november.demand).toMatchObject([{ began: null, peakKw: 0, billedKw: 7.5 }]);
  });
  it('months carry intervals: October 1,500 kWh by a power sensor of 1 % and hours to a sample; demand to 1 and 2 %', () => {
    const Z90 = 1.6448536;
    const [october, november] = review(powerRows(parts), season).months;
    const table = fanTable(powerRows(parts));
    const fan = fanSeason(FAN_T, table);
    const relSd = Math.hypot(0.01, (fan.onHoursSd ?? Number.NaN) / 100);
    expect(october.told?.energyKwh.interval?.[1]).toBeCloseTo(1500 * (1 + Z90 * relSd), 6);
    expect(october.told?.energyCost.interval?.[0]).toBeCloseTo(150 * (1 - Z90 * relSd), 6);
    expect(october.told?.hours.interval?.[1]).toBeCloseTo(100 + Z90 * (fan.onHoursSd ?? Number.NaN), 6);
    const demand = Z90 * Math.hypot(0.01, 0.02);
    expect(october.told?.demandCost.interval?.[1]).toBeCloseTo(150 * (1 + demand), 6);
    expect(november.told?.hours).toEqual({ value: 0, interval: [0, 0], why: null });
    const [first, second] = tariffMonths(season, [fan]);
    expect(first.told?.demandCost.interval?.[0]).toBeCloseTo(150 * (1 - demand), 6);
    // Energy and demand of the one fan are wrong together; fixed 20 and connected 15 are stated.
    expect(first.told?.total.interval?.[1]).toBeCloseTo(335 + 150 * Z90 * relSd + 150 * demand, 6);
    // The minimum of 150 holds whatever the demand is.
    expect(second.told?.total.interval).toEqual([150, 150]);
  });
  it('in months that a log leaves unknown the upper ends have what the fan could have used then', () => {
    const rows = powerRows(parts).filter((row) => row.time <= start + 200 * H || row.time >= start + 230 * H);
    const [sure] = review(powerRows(parts), season).months;
    const [october] = review(rows, season).months;
    const more = (pick: (told: NonNullable<typeof sure.told>) => BinFan['hours']) =>
      (october.told ? (pick(october.told).interval?.[1] ?? NaN) : NaN) -
      (sure.told ? (pick(sure.told).interval?.[1] ?? NaN) : NaN);
    // 30 h at 15 kW and 0.10: 450 kWh, 45 USD; the peak of 15 kW was reached as it is.
    expect(more((told) => told.hours)).toBeCloseTo(30, 6);
    expect(more((told) => told.energyKwh)).toBeCloseTo(450, 6);
    expect(more((told) => told.energyCost)).toBeCloseTo(45, 6);
    expect(more((told) => told.demandCost)).toBeCloseTo(0, 6);
  });
  it('unknown time raises a peak to all fans together at most, and a bill under the ratchet by what exceeds it', () => {
    // 30 h of October silent. One fan of 15 kW: its peak was reached as it is. Beside it another of 10 kW that rests: up to 25.
    const silent = (rows: Row[], from: number) =>
      rows.filter(({ time }) => time <= start + from * H || time >= start + (from + 30) * H);
    const tops = (rows: Row[], fans: Fan[]) => {
      const table = fanTable(rows);
      const found = fans.map((fan) => fanSeason(fan, table));
      return tariffMonths(
        seasonOf(fans, [
          bin(
            'B1',
            fans.map(({ id }) => id),
          ),
        ]),
        found,
      ).map(({ demand: [{ told, peakKw, billedKw }] }) => {
        const top = (of: 'peak' | 'billed') =>
          (told?.[of].interval?.[1] ?? Number.NaN) - (told?.[of].value ?? Number.NaN);
        return { peakKw, billedKw, peak: top('peak'), billed: top('billed') };
      });
    };
    const sure = tops(powerRows(parts), [FAN_T]);
    expect(tops(silent(powerRows(parts), 200), [FAN_T])[0].peak).toBeCloseTo(sure[0].peak, 9);
    const other = powerRows([rest(150), [20, 10_000], rest(1464 - 170)], 'F2');
    const both = [FAN_T, { ...FAN_T, id: 'F2' }];
    const known = tops([...powerRows(parts), ...other], both);
    const october = tops([...powerRows(parts), ...silent(other, 200)], both);
    expect(october[0].peakKw).toBe(15);
    expect(october[0].peak - known[0].peak).toBeCloseTo(10, 9);
    // 700 h on it is November: nothing runs, 7.5 kW are billed; 10 kW then would be billed 2.5 more.
    const november = tops([...powerRows(parts), ...silent(other, 700)], both);
    expect([november[1].peakKw, november[1].billedKw]).toEqual([0, 7.5]);
    expect(november[1].peak - known[1].peak).toBeCloseTo(10, 9);
    expect(november[1].billed - known[1].billed).toBeCloseTo(2.5, 9);
  });
  it('two fans of a bin that overlap by 20 of 50 h each: 80 bin hours, 100 fan-run hours of energy', () => {
    const two = seasonOf([FAN_T, { ...FAN_T, id: 'F2' }], [bin('B1', ['F1', 'F2'])]);
    const got = review(
      [...powerRows([rest(10), [50, 10_000], rest(60)]), ...powerRows([rest(40), [50, 10_000], rest(30)], 'F2')],
      two,
    );
    expect(got.hours.value).toBe(80);
    expect(got.energyKwh.value).toBeCloseTo(1000, 6);
    expect(got.demandCost.value).toBeCloseTo(200, 6); // 20 kW together
    expect(got.starts).toBe(1);
  });
  it('a fan under two bins: full hours, half of the cost each, and it says so', () => {
    const shared = seasonOf([FAN_T], [bin('B1', ['F1']), bin('B2', ['F1'])]);
    const got = review(powerRows(parts), shared, 1);
    expect(got.hours.value).toBe(100);
    expect(got.energyKwh.value).toBeCloseTo(750, 6);
    expect(got.cost.value).toBeCloseTo(315, 3);
    expect(got.why).toContain('serves 2 bins');
  });
  it('without a tariff: energy stands, cost is withheld with the reason', () => {
    const none = seasonOf([FAN], [bin('B1', ['F1'])], []);
    const got = review(powerRows(parts), none);
    expect(got.energyKwh.value).toBeCloseTo(1500, 6);
    expect(got.kwhPerBushel.value).toBeCloseTo(0.15, 9);
    expect(got.cost).toMatchObject({ value: null, interval: null });
    expect(got.cost.why).toContain('has no tariff');
    expect(got.months[0].energyCost).toBeNull();
  });
  it('without a log, without a fan, without bushels', () => {
    const two = seasonOf([FAN_T, { ...FAN_T, id: 'F2' }], [bin('B1', ['F1', 'F2']), bin('B2', [])]);
    const got = review(powerRows(parts), two);
    expect(got.hours.value).toBeNull();
    expect(got.why).toContain('F2');
    expect(review(powerRows(parts), two, 1).why).toContain('no fan');
    const one = review(powerRows(parts), season, 0, null);
    expect(one.cost.value).toBeCloseTo(630, 3);
    expect(one.costPerBushel.why).toContain('bushels');
  });
  it('unknown time widens the upper ends only: 30 h silent add 30 h, 450 kWh, 45 of energy', () => {
    const rows = powerRows(parts).filter((row) => row.time <= start + 200 * H || row.time >= start + 230 * H);
    const got = review(rows, season);
    const sure = review(powerRows(parts), season);
    expect(got.unknownHours).toBe(30);
    expect(got.hours.value).toBe(100);
    const top = (pick: (b: BinFan) => BinFan['hours']) =>
      (pick(got).interval?.[1] ?? NaN) - (pick(sure).interval?.[1] ?? NaN);
    expect(top((b) => b.hours)).toBeCloseTo(30, 6);
    expect(top((b) => b.energyKwh)).toBeCloseTo(450, 6);
    expect(top((b) => b.energyCost)).toBeCloseTo(45, 6);
    expect(got.energyCost.interval?.[0]).toBeCloseTo(sure.energyCost.interval?.[0] ?? NaN, 9);
    expect(got.why).toContain('silent for 30 h');
  });
  it('a log that begins five days after filling says so', () => {
    const late = seasonOf([FAN_T], [bin('B1', ['F1'], start - 5 * 24 * H)]);
    expect(review(powerRows(parts), late).why).toContain('begins 5 days after');
  });
});

describe('heat by hand', () => {
  const parts = [rest(10), [100, 15_000], rest(100)] as const;
  it('propane 60,000 BTU/h at 95 % and 1.80 a gallon of 91,500 BTU: 100 h x 63,158 BTU / 91,500 x 1.80 = 124.25', () => {
    const btu = 1055.056;
    const heater = {
      fuel: 'propane',
      outputW: (60_000 * btu) / 3600,
      efficiency: 0.95,
      pricePerJ: 1.8 / (91_500 * btu),
    } as const;
    const got = review(powerRows(parts), seasonOf([{ ...FAN_T, heater }], [bin('B1', ['F1'])]));
    expect(got.heatCost.value).toBeCloseTo(124.25, 1);
    expect(got.heatCost.interval?.[0]).toBe(0);
    expect(got.cost.interval?.[0]).toBeLessThan(Number(got.cost.value) - 124.25);
    expect(got.cost.value).toBeCloseTo(
      (got.energyCost.value ?? 0) + (got.demandCost.value ?? 0) + (got.connectedCost.value ?? 0) + 124.25,
      1,
    );
    expect(got.why).toContain('taken to run whenever the fan does');
  });
  it('and in fuel: 100 h x 63,158 BTU / 91,500 = 69.03 gal, which times its price is the money at both ends', () => {
    const btu = 1055.056;
    const gallon = 91_500 * btu;
    const heater = {
      fuel: 'propane',
      outputW: (60_000 * btu) / 3600,
      efficiency: 0.95,
      pricePerJ: 1.8 / gallon,
      sold: { unit: 'gal', unitJ: gallon },
    } as const;
    const fans = [{ ...FAN_T, heater }];
    const { heaters, heatCost } = review(powerRows(parts), seasonOf(fans, [bin('B1', ['F1'])]));
    expect(heaters).toHaveLength(1);
    const [{ used, hours, ...told }] = heaters ?? [];
    expect(told).toEqual({ fanId: 'F1', fuel: 'propane', unit: 'gal', hoursFrom: 'fan' });
    expect(used.value).toBeCloseTo(69.03, 1);
    // Nothing tells that it burned at all; its output is good to 10 % (standard error).
    expect(used.interval).toEqual([0, expect.closeTo(69.03 * (1 + 1.6448536 * 0.1), 1)]);
    expect(used.interval?.map((end) => end * 1.8)).toEqual(heatCost.interval?.map((end) => expect.closeTo(end, 6)));
    expect(hours.value).toBeCloseTo(100, 6);
    expect(hours.interval?.[0]).toBe(0);
    // Shared by two bins each carries half of the fuel, and its full hours.
    const shared = review(powerRows(parts), seasonOf(fans, [bin('B1', ['F1']), bin('B2', ['F1'])])).heaters ?? [];
    expect(shared[0].used.value).toBeCloseTo(34.51, 1);
    expect(shared[0].hours.value).toBeCloseTo(100, 6);
  });
  it('in the kWh that it draws beside the meter; within it no part can be told; without a price in kWh of heat', () => {
    const electric = { fuel: 'electric', outputW: 20_000, efficiency: 1, pricePerJ: null } as const;
    const season = seasonOf([{ ...FAN_T, heater: electric }], [bin('B1', ['F1'])]);
    const beside = review(powerRows(parts), season).heaters ?? [];
    expect(beside[0]).toMatchObject({ fuel: 'electric', unit: 'kWh', used: { value: expect.closeTo(2000, 6) } });
    const [within] = review(powerRows([rest(10), [100, 35_000], rest(100)]), season).heaters ?? [];
    expect([within.used.value, within.hours.value]).toEqual([null, null]);
    expect(within.used.why).toContain('includes its electric heater');
    const gas = { fuel: 'natural gas', outputW: 20_000, efficiency: 0.8, pricePerJ: null } as const;
    const [unpriced] =
      review(powerRows(parts), seasonOf([{ ...FAN_T, heater: gas }], [bin('B1', ['F1'])])).heaters ?? [];
    expect(unpriced).toMatchObject({ unit: 'kWh', used: { value: expect.closeTo(2500, 6) } });
    expect(review(powerRows(parts), seasonOf([FAN_T], [bin('B1', ['F1'])])).heaters).toEqual([]);
  });
  it('an electric heater of 20 kW beside the meter: 100 h x 20 kW x 0.10 = 200; on the meter (35 kW seen): 0 more', () => {
    const heater = { fuel: 'electric', outputW: 20_000, efficiency: 1, pricePerJ: null } as const;
    const season = seasonOf([{ ...FAN_T, heater }], [bin('B1', ['F1'])]);
    expect(review(powerRows(parts), season).heatCost.value).toBeCloseTo(200, 6);
    // FAN_T's tariff has a demand charge, to which the heater adds.
    expect(review(powerRows(parts), season).why).toContain('what it adds to the demand charge is counted there');
    const on = review(powerRows([rest(10), [100, 35_000], rest(100)]), season);
    expect(on.heatCost.value).toBe(0);
    expect(on.why).toContain('includes its electric heater');
  });
  it('fuel without a price withholds the heat and the whole cost', () => {
    const heater = { fuel: 'natural gas', outputW: 20_000, efficiency: 0.9, pricePerJ: null } as const;
    const got = review(powerRows(parts), seasonOf([{ ...FAN_T, heater }], [bin('B1', ['F1'])]));
    expect(got.heatCost.value).toBeNull();
    expect(got.cost.value).toBeNull();
    expect(got.energyCost.value).toBeCloseTo(150, 6);
    expect(got.cost.why).toContain('no price');
  });
});
