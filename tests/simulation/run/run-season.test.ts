import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { equilibriumMoistureWb } from '../../../src/grain/equilibrium.ts';
import { isothermOf } from '../../../src/grain/isotherm.ts';
import { runSeason } from '../../../src/simulation/run/run-season.ts';
import type { View } from '../../../src/simulation/run/view.ts';
import { alwaysOn } from '../../../src/simulation/strategies/always-on.ts';
import { daytimeHours } from '../../../src/simulation/strategies/daytime-hours.ts';
import { nightHours } from '../../../src/simulation/strategies/night-hours.ts';
import { scheduled } from '../../../src/simulation/strategies/scheduled.ts';
import type { Strategy } from '../../../src/simulation/strategies/strategy.ts';
import { inventedBin, inventedHours, PRESSURE_PA } from './invented-bin.ts';

const psychrolib = createRequire(import.meta.url)('psychrolib');

const clock = (hour: number) => Math.sin((2 * Math.PI * ((hour % 24) - 9)) / 24);
const weather = {
  count: 24 * 20,
  tempC: (hour: number) => 10 + 5 * Math.sin(hour / 50) + 5 * clock(hour),
  rh: (hour: number) => 0.68 - 0.18 * clock(hour),
};
const never = scheduled('as-logged', 'As logged', []);

/** What a strategy saw in each hour. */
function seen(bin: Parameters<typeof runSeason>[0]): View[] {
  const views: View[] = [];
  const looks: Strategy = {
    id: 'looks',
    title: 'Looks',
    words: 'Keeps what it sees.',
    parameters: [],
    sourceKey: null,
    fan: (view) => {
      views.push({ ...view });
      return view.hourOfRun % 2;
    },
  };
  runSeason(bin, looks);
  return views;
}

describe('runSeason', () => {
  it('takes a strategy of a few lines that a user writes down', () => {
    const dryAfternoons: Strategy = {
      id: 'dry-afternoons',
      title: 'Dry afternoons',
      words: 'Afternoons below a humidity.',
      parameters: [{ name: 'rh', words: 'limit', unit: '1', usual: 0.6, range: [0, 1] }],
      sourceKey: null,
      fan: ({ localHour, outdoorRh }, { rh }) => (localHour >= 12 && localHour < 18 && outdoorRh < rh ? 1 : 0),
    };
    const hours = inventedHours({ count: 72, rh: (hour) => (hour < 24 ? 0.5 : hour < 48 ? 0.7 : 0.55) });
    // Afternoons of 6 h: the first and third day at 0.6, the first alone at 0.52.
    expect(runSeason(inventedBin(hours), dryAfternoons).outcome.fanHours).toBe(12);
    expect(runSeason(inventedBin(hours), dryAfternoons, { rh: 0.52 }).outcome.fanHours).toBe(6);
    expect(() => runSeason(inventedBin(hours), dryAfternoons, { rh: 1.2 })).toThrow(/dry-afternoons\.rh/);
    expect(() => runSeason(inventedBin(hours), dryAfternoons, { humidity: 0.5 })).toThrow(/"humidity"; it has rh/);
  });

  it('refuses a share of an hour that is none, with the hour', () => {
    const bin = inventedBin(inventedHours({ count: 24 }));
    const broken = (share: number) => ({
      ...alwaysOn,
      id: 'broken',
      fan: (view: View) => (view.hourOfRun < 5 ? 0 : share),
    });
    for (const share of [Number.NaN, -0.1, 1.1]) {
      expect(() => runSeason(bin, broken(share))).toThrow(`strategy broken: fan gave ${share} in hour 5;`);
    }
  });

  it('shows a strategy the air that would enter the grain', () => {
    psychrolib.SetUnitSystem(psychrolib.SI);
    const views = seen(inventedBin(inventedHours(weather)));
    const isotherm = isothermOf('corn');
    for (const { outdoorC, outdoorRh, plenumC, plenumRh, heatedC, heatedRh, plenumEmcWb } of views) {
      // Fan 2 K, heater 4 K on top, no water given or taken (psychrolib; its vapour pressure differs in the fifth digit).
      const ratio = psychrolib.GetHumRatioFromRelHum(outdoorC, outdoorRh, PRESSURE_PA);
      expect(plenumC).toBeCloseTo(outdoorC + 2, 12);
      expect(heatedC).toBeCloseTo(outdoorC + 6, 12);
      expect(plenumRh).toBeCloseTo(psychrolib.GetRelHumFromHumRatio(outdoorC + 2, ratio, PRESSURE_PA), 3);
      expect(heatedRh).toBeCloseTo(psychrolib.GetRelHumFromHumRatio(outdoorC + 6, ratio, PRESSURE_PA), 3);
      expect(plenumEmcWb).toBeCloseTo(equilibriumMoistureWb(isotherm, plenumC, plenumRh), 12);
    }
    expect(views).toHaveLength(weather.count);
  });

  it('shows the clock, the prices of the day ahead, the day before and how long the fan ran', () => {
    const price = (hour: number) => (hour % 24 < 6 ? 0.05 : hour < 48 ? 0.1 : 0.3);
    const views = seen(inventedBin(inventedHours({ count: 96, tempC: (hour) => hour / 4, price })));
    expect([views[30].localHour, views[30].localDay, views[30].localMonth]).toEqual([6, 1, 10]);
    // From 06:00 of the second day on, the next 24 h end at 06:00 of the third.
    expect([views[30].pricePerKwh, views[30].cheapestPerKwh, views[30].dearestPerKwh]).toEqual([0.1, 0.05, 0.1]);
    expect([views[31].cheapestPerKwh, views[31].dearestPerKwh]).toEqual([0.05, 0.3]);
    // Hours 6 to 29 at a quarter of a degree each: the mean is that of 17.5.
    expect(views[30].dayMeanC).toBeCloseTo(17.5 / 4, 12);
    // It ran in odd hours.
    expect([views[30].ranBefore, views[31].ranBefore, views[31].fanHours]).toEqual([1, 0, 15]);
  });

  it('sends air up from the plenum with the fan’s warming, and down from the headspace without it', () => {
    // Ten days at 10 degC and 65 % on grain near balance with it: the layer where the air enters takes the air's temperature.
    const hours = inventedHours({ count: 240 });
    const up = inventedBin(hours, { moistureWb: 0.14, headspaceK: 3 });
    const down = { ...up, bed: { ...up.bed, air: 'down' as const } };
    const layers = up.bed.layers;
    const last = 239 * layers;
    const pushed = runSeason(up, alwaysOn, {}, { trace: true }).trace;
    const drawn = runSeason(down, alwaysOn, {}, { trace: true }).trace;
    expect(pushed?.plenumC[239]).toBeCloseTo(12, 12);
    expect(drawn?.plenumC[239]).toBeCloseTo(13, 12);
    expect(Math.abs((pushed?.layerC[last] ?? 0) - 12)).toBeLessThan(0.2);
    expect(Math.abs((drawn?.layerC[last + layers - 1] ?? 0) - 13)).toBeLessThan(0.2);
  });

  it('takes from the grain the water that the air carries off, and its books close', () => {
    const bin = inventedBin(inventedHours(weather));
    const { outcome } = runSeason(bin, alwaysOn);
    const dryKg = 610 * 4 * 80;
    const lostKg = dryKg * (0.17 / 0.83 - outcome.endMoistureWb / (1 - outcome.endMoistureWb));
    expect(lostKg).toBeGreaterThan(1000);
    // Respiration adds 0.6 kg for each kg of dry matter lost.
    expect(outcome.waterByAirKg).toBeCloseTo(lostKg + 0.6 * outcome.lossMean * dryKg, 2);
    expect(Math.abs(outcome.imbalance.water)).toBeLessThan(1e-12);
    expect(Math.abs(outcome.imbalance.heat)).toBeLessThan(1e-12);
    expect(outcome.bottomMoistureWb).toBeLessThan(outcome.topMoistureWb);
  });

  it('fills by levels, leaves the fan off until the bin is filled, and tells each hour', () => {
    const bin = inventedBin(inventedHours(weather));
    const [full] = bin.levels;
    const levels = [
      { ...full, depthM: 1 },
      { ...full, hour: 10, depthM: 4, tempC: 20 },
    ];
    const { outcome, trace } = runSeason({ ...bin, levels, fromHour: 12 }, alwaysOn, {}, { trace: true });
    if (trace === null) throw new Error('no trace');
    expect(Array.from(trace.fan.subarray(9, 14))).toEqual([0, 0, 0, 1, 1]);
    expect(outcome.fanHours).toBe(weather.count - 12);
    // Five layers of 0.2 m hold the first metre.
    expect(trace.layerWb[9 * 20 + 4]).toBeGreaterThan(0.16);
    expect(trace.layerWb[9 * 20 + 5]).toBeNaN();
    expect(trace.layerC[10 * 20 + 12]).toBeCloseTo(20, 6);
    expect(trace.meanWb[weather.count - 1]).toBe(outcome.endMoistureWb);
    expect(trace.meanC[weather.count - 1]).toBe(outcome.endTempC);
  });

  it('gives the same numbers each time, with a trace or without', () => {
    const bin = inventedBin(inventedHours(weather));
    const bare = JSON.stringify(runSeason(bin, nightHours).outcome);
    expect(JSON.stringify(runSeason(bin, nightHours).outcome)).toBe(bare);
    expect(JSON.stringify(runSeason(bin, nightHours, {}, { trace: true }).outcome)).toBe(bare);
  });

  it('runs a clock by local time on the days of 23 and 25 hours', () => {
    // Spring has no hour 2, autumn has hour 1 twice.
    const day = Array.from({ length: 24 }, (_, hour) => hour);
    const spring = day.filter((hour) => hour !== 2);
    const autumn = [0, 1, 1, ...day.slice(2)];
    const ran = (localHours: number[], strategy: Strategy) => {
      const localHour = Uint8Array.from([...day, ...localHours, ...day]);
      const localDay = Uint16Array.from([...day.map(() => 0), ...localHours.map(() => 1), ...day.map(() => 2)]);
      const hours = inventedHours({ count: localHour.length }, { localHour, localDay });
      return runSeason(inventedBin(hours), strategy).outcome.fanHours;
    };
    // 12 h a day by 9 to 21 whatever the night; the night loses or gains its hour.
    expect([ran(spring, daytimeHours), ran(day, daytimeHours), ran(autumn, daytimeHours)]).toEqual([36, 36, 36]);
    expect([ran(spring, nightHours), ran(day, nightHours), ran(autumn, nightHours)]).toEqual([35, 36, 37]);
    expect([ran(spring, alwaysOn), ran(autumn, alwaysOn)]).toEqual([71, 73]);
  });

  it('rests when nobody runs the fan: no money, no water moved', () => {
    const { outcome } = runSeason(inventedBin(inventedHours(weather)), never);
    expect([outcome.fanHours, outcome.energyKwh, outcome.cost, outcome.waterByAirKg]).toEqual([0, 0, 0, 0]);
  });
});
