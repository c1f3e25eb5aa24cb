import { describe, expect, it } from 'vitest';
import { billShares } from '../../../src/analysis/energy/bill-shares.ts';
import { binFan } from '../../../src/analysis/energy/bin-fan.ts';
import { HEATER_OFF, HEATER_ON, HEATER_UNTOLD } from '../../../src/analysis/energy/heater-use.ts';
import { staggeredDemand } from '../../../src/analysis/energy/staggered-demand.ts';
import { tariffMonths } from '../../../src/analysis/energy/tariff-months.ts';
import { withDoubts } from '../../../src/analysis/fan/doubted-fans.ts';
import { fanSeason } from '../../../src/analysis/fan/fan-season.ts';
import { FAN_OFF, FAN_ON, type FanSeason } from '../../../src/analysis/types.ts';
import type { Fan } from '../../../src/bin/fan.ts';
import { billSection } from '../../../src/notebook/energy-bills.ts';
import { Units } from '../../../src/report/units.ts';
import { fanTable, H } from '../fan/known-fan.ts';
import { billTable } from './bill-table.ts';
import { bin, FAN_T, powerRows, rest, seasonOf, start } from './by-hand-season.ts';

/**
 * By hand: a fan of 15 kW runs 100 h in October, and beside its meter an electric heater of 20 kW, at 0.10 a kWh and 10 a kW.
 * The tariff's meter sees 35 kW and 3,500 kWh; 1,500 kWh of that are the fan's own.
 */
const FAN: Fan = { ...FAN_T, heater: { fuel: 'electric', outputW: 20_000, efficiency: 1, pricePerJ: null } };
const SEASON = seasonOf([FAN], [bin('B1', ['F1'])]);
const LOGGED = fanSeason(FAN, fanTable(powerRows([rest(10), [100, 15_000], rest(100)])));
const OCTOBER = { from: Date.UTC(2024, 9, 1, 5), to: Date.UTC(2024, 10, 1, 5), tariff: 'T' };
const shareOf = (kwh: number, fan: FanSeason = LOGGED) =>
  billShares(SEASON, billTable([{ ...OCTOBER, kwh, amount: 1000 }]), [fan])[0];
const low = (of: { interval: [number, number] | null }) => of.interval?.[0] ?? Number.NaN;
const high = (of: { interval: [number, number] | null }) => of.interval?.[1] ?? Number.NaN;
/** 5 % of a normal error lie beyond so many standard errors to either side. */
const Z = 1.6448536;

describe('an electric heater on the tariff, beside its fan’s meter', () => {
  it('adds its 20 kW to the peak: 350 of demand, of which 200 are not sure', () => {
    const { demandCost, heatCost, energyCost, cost, months } = binFan(SEASON.bins[0], SEASON, [LOGGED], null);
    expect(demandCost.value).toBeCloseTo(350, 6);
    // Where the heater never burned what its output is off by bears on nothing: 1 % of the fan's 150 (power), 2 % of that peak.
    expect(low(demandCost)).toBeCloseTo(150 - Z * Math.hypot(1.5, 3), 4);
    // Where it did: 10 % of the heater's 200 as well, and 2 % of the whole.
    expect(high(demandCost)).toBeCloseTo(350 + Z * Math.hypot(20, 1.5, 7), 4);
    expect(energyCost.value).toBeCloseTo(150, 6);
    expect(heatCost.value).toBeCloseTo(200, 6);
    expect(low(heatCost)).toBe(0);
    // With 15 hp at 12 a year connected.
    expect(cost.value).toBeCloseTo(150 + 350 + 180 + 200, 6);
    expect(low(cost)).toBeLessThan(150 + 150 + 180);
    expect(months[0].demandCost).toBeCloseTo(350, 6);
  });

  it('is in the month of the tariff: 3,500 kWh and 35 kW, down to the fan’s own', () => {
    const [{ energyKwh, demand, told }] = tariffMonths(SEASON, [LOGGED]);
    expect(energyKwh).toBeCloseTo(3500, 6);
    expect(demand[0].peakKw).toBeCloseTo(35, 6);
    expect(told && low(told.energyKwh)).toBeLessThan(1500);
    expect(told && low(told.energyKwh)).toBeGreaterThan(1400);
    expect(told && low(told.demandCost)).toBeLessThan(150);
  });

  it('parts its peak among two bins so that their shares make the tariff’s, at the middle and at both ends', () => {
    const other: Fan = { ...FAN_T, id: 'F2' };
    const table = fanTable([
      ...powerRows([rest(10), [100, 15_000], rest(100)]),
      ...powerRows([rest(10), [100, 10_000], rest(100)], 'F2'),
    ]);
    const season = seasonOf([FAN, other], [bin('B1', ['F1']), bin('B2', ['F2'])]);
    const fans = [FAN, other].map((fan) => fanSeason(fan, table));
    const [one, two] = season.bins.map((of) => binFan(of, season, fans, null).demandCost);
    const [{ told }] = tariffMonths(season, fans);
    const whole = told?.demandCost ?? { value: null, interval: null };
    // 45 kW with the heater, of them 10 of the other fan; 25 without.
    expect([one.value, two.value, whole.value]).toEqual([350, 100, 450].map((of) => expect.closeTo(of, 6)));
    // The fans' own errors (1 %, and 10 % of heat) are independent and join as squares in the whole; the 2 % of the peak are one error, that adds up.
    expect(low(whole)).toBeCloseTo(250 - Z * Math.hypot(1.5, 1, 5), 4);
    expect(low(one)).toBeCloseTo(150 - Z * Math.hypot(1.5, 3), 4);
    expect(low(two)).toBeCloseTo(100 - Z * Math.hypot(1, 2), 4);
    expect(high(whole)).toBeCloseTo(450 + Z * Math.hypot(20, 1.5, 1, 9), 4);
    expect(high(one)).toBeCloseTo(350 + Z * Math.hypot(20, 1.5, 7), 4);
    expect(high(two)).toBeCloseTo(100 + Z * Math.hypot(1, 2), 4);
    // So the shares' ends lie no nearer than the whole's, and by no more than squares may be less than a sum.
    expect(low(one) + low(two)).toBeLessThan(low(whole));
    expect(low(one) + low(two)).toBeGreaterThan(low(whole) - 1);
    // With powers known exactly nothing is joined as squares: then the lower ends make the whole's to the cent.
    const exact = fans.map((fan): FanSeason => ({ ...fan, energyRelSd: 0 }));
    const lows = season.bins.map((of) => low(binFan(of, season, exact, null).demandCost));
    const [month] = tariffMonths(season, exact);
    expect(lows[0] + lows[1]).toBeCloseTo(month.told ? low(month.told.demandCost) : Number.NaN, 6);
    expect(lows[0] + lows[1]).toBeCloseTo(250 * (1 - Z * 0.02), 6);
  });

  it('passes a peak on to the fan that has it without the heat, in the bins as in the tariff', () => {
    // F1 with its heater 35 kW in the first hours, F2 alone 30 kW in later ones: without heat the month's peak is F2's.
    const other: Fan = { ...FAN_T, id: 'F2' };
    const table = fanTable([
      ...powerRows([rest(10), [5, 15_000], rest(100)]),
      ...powerRows([rest(50), [5, 30_000], rest(60)], 'F2'),
    ]);
    const season = seasonOf([FAN, other], [bin('B1', ['F1']), bin('B2', ['F2'])]);
    const fans = [FAN, other].map((fan) => fanSeason(fan, table));
    const [one, two] = season.bins.map((of) => binFan(of, season, fans, null).demandCost);
    const [{ told }] = tariffMonths(season, fans);
    expect([one.value, two.value, told?.demandCost.value]).toEqual([350, 0, 350].map((of) => expect.closeTo(of, 6)));
    expect(low(one)).toBe(0);
    expect(high(two)).toBeCloseTo(300 + Z * Math.hypot(3, 6), 4);
    // A bin's own ends hold all that it may have to carry; the two can't both be at them, so here the whole is narrower.
    expect(told && low(told.demandCost)).toBeCloseTo(300 - Z * Math.hypot(3, 6), 4);
    expect(told && high(told.demandCost)).toBeCloseTo(350 + Z * Math.hypot(20, 1.5, 7), 4);
  });

  it('is in what explains a bill, with the doubt whether it burned', () => {
    const told = shareOf(5000);
    expect(told.fansKwh.value).toBeCloseTo(3500, 6);
    expect(told.heaterKwh?.value).toBeCloseTo(2000, 6);
    expect(told.heaterKwh && low(told.heaterKwh)).toBe(0);
    expect(told.share.value).toBeCloseTo(0.7, 9);
    expect(low(told.share)).toBeLessThan(0.3);
    expect(told.restKwh.interval?.[1]).toBeGreaterThan(3500);
    // 350 of energy, 350 of demand, a twelfth of 180 connected; 20 are fixed.
    expect(told.fansMoney.value).toBeCloseTo(715, 6);
    expect(told.restMoney.value).toBeCloseTo(1000 - 20 - 715, 6);
    expect(told.restMoney.interval?.[1]).toBeGreaterThan(1000 - 20 - 315);
    const page = billSection(
      { bills: [told] } as unknown as Parameters<typeof billSection>[0],
      new Units('us', 'USD', 'America/Chicago'),
    );
    expect(page.lead).toMatch(/^The fans and their electric heaters explain 70\.0 %/);
    expect(page.notes?.join(' ')).toContain('drew beside them: 2,000 kWh (0 to ');
  });

  it('is the likely cause where a bill holds the fan and not the heater, and no cause where it could not be', () => {
    expect(shareOf(1600).cause).toMatch(/^Most likely the electric heater of fan F1 burned in fewer/);
    expect(shareOf(700).cause).not.toContain('heater');
  });

  it('counts where it burned, leaves out where it did not, and is unsure where nothing tells', () => {
    const at = (hours: number) => start + hours * H;
    const spans = {
      startMs: Float64Array.of(at(0), at(10), at(50), at(90), at(110)),
      endMs: Float64Array.of(at(10), at(50), at(90), at(110), at(210)),
      state: Uint8Array.of(FAN_OFF, FAN_ON, FAN_ON, FAN_ON, FAN_OFF),
      powerW: Float64Array.of(0, 15_000, 15_000, 15_000, 0),
    };
    const burned = Uint8Array.of(HEATER_OFF, HEATER_ON, HEATER_OFF, HEATER_UNTOLD, HEATER_OFF);
    const fan = { ...LOGGED, heater: { spans, burned, hours: 40, untoldHours: 20 } };
    // 40 h x 20 kW sure, 20 h x 20 kW perhaps.
    const { heaterKwh, fansKwh } = shareOf(5000, fan);
    expect(heaterKwh?.value).toBeCloseTo(1200, 6);
    expect(fansKwh.value).toBeCloseTo(2700, 6);
    expect(heaterKwh && low(heaterKwh)).toBeCloseTo(800 * (1 - Z * 0.1), 3);
    const { heatCost, demandCost } = binFan(SEASON.bins[0], SEASON, [fan], null);
    expect(heatCost.value).toBeCloseTo(120, 6);
    // Of the 80 that are sure 10 %, as in the bill's kWh: heat that was not burned has no error.
    expect(low(heatCost)).toBeCloseTo(80 - Z * 8, 3);
    // It burned for sure at a peak of 35 kW.
    expect(demandCost.value).toBeCloseTo(350, 6);
    expect(low(demandCost)).toBeGreaterThan(300);
    // Hours that a log tells are not what a bill of less energy puts in doubt.
    const sure = { spans, burned: burned.with(3, HEATER_OFF), hours: 40, untoldHours: 0 };
    expect(shareOf(1600, { ...LOGGED, heater: sure }).cause).toBe(
      'Most likely the electric heater of fan F1 draws less than is stated, or is on another meter.',
    );
  });

  it('is not told of a bill where the log of a fan is left out, and two are named as two', () => {
    const other: Fan = { ...FAN, id: 'F2' };
    const both = fanTable([
      ...powerRows([rest(10), [100, 15_000], rest(100)]),
      ...powerRows([rest(10), [100, 15_000], rest(100)], 'F2'),
    ]);
    const season = seasonOf([FAN, other], [bin('B1', ['F1']), bin('B2', ['F2'])]);
    const fans = [FAN, other].map((fan) => fanSeason(fan, both));
    const of = (some: readonly FanSeason[]) =>
      billShares(season, billTable([{ ...OCTOBER, kwh: 4000, amount: 1000 }]), some)[0];
    expect(of(fans).cause).toMatch(/^Most likely the electric heaters of fans F1 and F2 burned in fewer of the fans’/);
    const left = of(withDoubts(fans, new Map([['F2', 'Its plenum shows more.']])));
    expect(left.fansKwh.why).toBe('Its plenum shows more.');
    expect(left.heaterKwh).toEqual({ value: null, interval: null, why: 'Its plenum shows more.' });
    const page = billSection(
      { bills: [left] } as unknown as Parameters<typeof billSection>[0],
      new Units('us', 'USD', 'America/Chicago'),
    );
    expect(page.notes?.join(' ')).not.toContain('drew beside them');
  });

  it('is in the peaks of two fans as run and in turns', () => {
    const other: Fan = { ...FAN_T, id: 'F2' };
    const table = fanTable([
      ...powerRows([rest(10), [5, 15_000], rest(100)]),
      ...powerRows([rest(10), [5, 10_000], rest(100)], 'F2'),
    ]);
    const season = seasonOf([FAN, other], [bin('B1', ['F1']), bin('B2', ['F2'])]);
    const fans = [FAN, other].map((fan) => fanSeason(fan, table));
    const [{ asRun, inTurns, saving }] = staggeredDemand(season, fans);
    // Together 45 kW, in turns the larger: 35. Without the heater 25 and 15: 100 are saved either way.
    expect(asRun.peakKw).toBeCloseTo(45, 6);
    expect(low(asRun.peak)).toBeLessThan(25);
    expect(inTurns.cost.value).toBeCloseTo(350, 6);
    expect(low(inTurns.cost)).toBeLessThan(150);
    expect(saving.value).toBeCloseTo(100, 6);
  });
});
