import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { missing } from '../../../src/analysis/airflow/bin-airflow.ts';
import type { FillTimes } from '../../../src/analysis/grain/fill-times.ts';
import type { Ticket } from '../../../src/analysis/moisture/tickets.ts';
import type { BinGrainAmount, BinMoisture } from '../../../src/analysis/types.ts';
import { airPieces } from '../../../src/analysis/water/air-pieces.ts';
import { likelyWater, orderOf, PATTERNS } from '../../../src/analysis/water/disagreement.ts';
import { heatBalance } from '../../../src/analysis/water/heat-balance.ts';
import { humidityBalance } from '../../../src/analysis/water/humidity-balance.ts';
import { humidityLog, temperatureLog } from '../../../src/analysis/water/humidity-log.ts';
import { joinedCauses } from '../../../src/analysis/water/joined-causes.ts';
import { leavingAir } from '../../../src/analysis/water/leaving-air.ts';
import { untoldHeat } from '../../../src/analysis/water/untold-heat.ts';
import { waterBySensors } from '../../../src/analysis/water/water-by-sensors.ts';
import { waterByTickets } from '../../../src/analysis/water/water-by-tickets.ts';
import { estimate, withheld } from '../../../src/base/estimate.ts';
import { equilibriumHumidity } from '../../../src/grain/equilibrium.ts';
import { heatOfVaporisationJKg } from '../../../src/grain/heat-of-vaporisation.ts';
import { isothermOf } from '../../../src/grain/isotherm.ts';
import { inventedBin, START_MS, seriesOf, spansOf } from '../fronts/invented-bin.ts';

const psychrolib = createRequire(import.meta.url)('psychrolib');
psychrolib.SetUnitSystem(psychrolib.SI);
const PRESSURE_PA = 98000;
const DAY_MS = 86_400_000;

describe('water by sensors', () => {
  const grain = { dryMatterKg: 100_000, dryMatterKgInterval: [97_000, 103_000] } as unknown as BinGrainAmount;
  type From = 'sensors' | 'tickets' | 'stated';
  const moisture = (points: number, from: From = 'sensors', end = from) =>
    ({
      start: { value: 0.2, from },
      end: { value: 0.2 - points / 100, from: end },
      pointsRemoved: estimate(points, points - 0.5, points + 0.5),
    }) as unknown as BinMoisture;

  // By hand: 20 % wet basis is 20/80 = 0.25 of dry matter, 15 % is 15/85 = 0.176471; 100 t of dry matter lose 7352.9 kg.
  it('is dry matter times the change on a dry basis', () => {
    const water = waterBySensors(grain, moisture(5));
    expect(water.value).toBeCloseTo(7352.94, 1);
    // half a point is 100,000 x 0.005 / 0.825^2 = 735 kg; 3 % of dry matter 221 kg; together 767 kg
    expect(water.interval![0]).toBeCloseTo(7352.94 - 767, -1);
    expect(water.interval![1]).toBeCloseTo(7352.94 + 767, -1);
  });
  it('is below zero where the grain took water up', () => {
    expect(waterBySensors(grain, moisture(-2)).value).toBeLessThan(-3000);
  });
  it('is not told by tickets twice, nor without moistures', () => {
    expect(waterBySensors(grain, moisture(5, 'tickets')).why).toContain('scale tickets');
    const none = { ...moisture(5), pointsRemoved: withheld('No sensor.') } as BinMoisture;
    expect(waterBySensors(grain, none).why).toBe('No sensor.');
  });
  it('is not told by moistures of which no sensor tells either: a number on paper is no account of the sensors', () => {
    expect(waterBySensors(grain, moisture(5, 'stated'))).toMatchObject({
      value: null,
      why: 'Both moistures are only stated in season.yaml, so the sensors tell no water of their own.',
    });
    const mixed = waterBySensors(grain, moisture(5, 'tickets', 'stated'));
    expect(mixed.value).toBeNull();
    expect(mixed.why).toMatch(/^One moisture comes from scale tickets, the other is only stated/);
    // One that sensors tell is enough.
    for (const [start, end] of [
      ['stated', 'sensors'],
      ['sensors', 'tickets'],
    ] as const)
      expect(waterBySensors(grain, moisture(5, start, end)).value).toBeCloseTo(7352.94, 1);
  });
});

describe('water by tickets', () => {
  const fill = { begunMs: START_MS, fullMs: START_MS + DAY_MS } as FillTimes;
  const load = (direction: 'in' | 'out', day: number, netKg: number, moistureWb: number): Ticket => ({
    timeMs: START_MS + day * DAY_MS,
    direction,
    netKg,
    moistureWb,
  });
  const filled = [load('in', 0, 20_000, 0.2), load('in', 1, 20_000, 0.18)];

  // By hand: 40 t at a mean of 19 % hold 32,400 kg of dry matter; at 15 % that is 38,117.6 kg. In 0.234568, out 0.176471 of dry matter:
  // 32,400 x 0.058097 = 1882.4 kg, which is also what the weights differ by.
  it('is the dry matter over the scale times the change of its moisture', () => {
    const water = waterByTickets([...filled, load('out', 120, 38_117.65, 0.15)], fill, null);
    expect(water.value).toBeCloseTo(1882.4, 0);
    expect(water.interval![0]).toBeLessThan(1882);
    expect(water.interval![1]).toBeGreaterThan(1883);
  });
  // 40 t over the scale in a bin of 42 t; the same numbers taken as pounds are 40 t x 0.4536 / 1000 of grain: 18 kg.
  it('is withheld where the loads weigh out of all proportion to the bin: their unit is another', () => {
    const volume = { volumeM3: 56, weightKg: 42_000, levelRelSd: 0.02, packingMost: 0.05 };
    const loads = [...filled, load('out', 120, 38_117.65, 0.15)];
    const taken = (times: number) => loads.map((one) => ({ ...one, netKg: times * one.netKg }));
    expect(waterByTickets(loads, fill, volume).value).toBeCloseTo(1882.4, 0);
    expect(waterByTickets(taken(0.4536 / 1000), fill, volume)).toMatchObject({
      value: null,
      why: expect.stringMatching(/^The loads in weigh 0\.043 % of what depth and test weight tell, so the unit/),
    });
    expect(waterByTickets(taken(1000 / 453.6), fill, volume).why).toMatch(/^The loads in weigh 2\.1 times what depth/);
    // A tenth more or less may be the depth's: the loads tell of the grain that they are.
    expect(waterByTickets(taken(0.9), fill, volume).value).toBeCloseTo(0.9 * 1882.4, 0);
  });
  it('is withheld where the loads are not the whole bin', () => {
    expect(waterByTickets([], fill, null).why).toContain('no scale tickets');
    expect(waterByTickets(filled, fill, null).why).toContain('no tickets of the loads out');
    expect(waterByTickets([...filled, load('out', 120, 19_000, 0.15)], fill, null).why).toContain(
      '50 % of the dry matter',
    );
    expect(waterByTickets([...filled, load('out', 120, Number.NaN, 0.15)], fill, null).why).toContain('no weight');
  });
});

describe('water by the air', () => {
  const corn = isothermOf('corn');
  const bin = inventedBin([1, 5.5], 1, 'up', 6);

  // The humidity ratios by psychrolib, from the humidity that the isotherm gives.
  it('takes the air that leaves from the sensor nearest to the surface, by the cable’s isotherm', () => {
    const times = [START_MS, START_MS + 3_600_000];
    const low = { ...seriesOf('C1', 1, 1, times, [20, 20]), moistureWb: Float64Array.of(0.12, 0.12) };
    const top = { ...seriesOf('C1', 2, 5.5, times, [10, 10]), moistureWb: Float64Array.of(0.18, 0.18) };
    const air = leavingAir(bin, [low, top], corn, [], PRESSURE_PA, () => 1)(START_MS + 1_800_000)!;
    const rh = equilibriumHumidity(corn, 10, 0.18);
    const expected = psychrolib.GetHumRatioFromRelHum(10, rh, PRESSURE_PA);
    expect(Math.abs(air.ratio / expected - 1)).toBeLessThan(1e-3);
    expect(air.wetter).toBeGreaterThan(air.ratio);
    const down = leavingAir({ ...bin, air: 'down' }, [low, top], corn, [], PRESSURE_PA, () => 1)(START_MS)!;
    const below = psychrolib.GetHumRatioFromRelHum(20, equilibriumHumidity(corn, 20, 0.12), PRESSURE_PA);
    expect(Math.abs(down.ratio / below - 1)).toBeLessThan(1e-3);
  });

  it('reads the entering air from humidity, else from the dew point, and leaves flagged rows out', () => {
    const log = humidityLog(
      {
        time: Float64Array.of(0, 1, 2, 3),
        temp_c: Float64Array.of(15, 15, 15, 15),
        rh: Float64Array.of(0.6, Number.NaN, 0.6, Number.NaN),
        dew_point_c: Float64Array.of(Number.NaN, 7, Number.NaN, Number.NaN),
        flags: Float64Array.of(0, 0, 1, 0),
      },
      PRESSURE_PA,
    );
    expect([...log.timeMs]).toEqual([0, 1]);
    expect(log.ratio[0] / psychrolib.GetHumRatioFromRelHum(15, 0.6, PRESSURE_PA)).toBeCloseTo(1, 3);
    expect(log.ratio[1] / psychrolib.GetHumRatioFromTDewPoint(7, PRESSURE_PA)).toBeCloseTo(1, 3);
  });

  // A thermometer behind an electric heater, at 60 % and 10 C outdoors: the water of the air is the outdoor air's, by psychrolib.
  it('behind a thermometer alone: warm as the plenum, humid as the outdoor air', () => {
    const spans = spansOf(Uint8Array.of(1, 1, 1, 1), 1);
    const times = Float64Array.of(0, 1, 2, 3, 4).map((hour) => START_MS + hour * 3_600_000);
    const rows = (tempC: number, rh: number) => ({
      time: times,
      temp_c: new Float64Array(5).fill(tempC),
      rh: new Float64Array(5).fill(rh),
      flags: new Float64Array(5),
    });
    const always = () => true;
    const of = (air: 'up' | 'down', plenum: ReturnType<typeof rows>) =>
      airPieces({
        bin: inventedBin([1, 5.5], 1, air, 6),
        spans,
        flowM3S: 2,
        relativeAt: () => 1,
        plenum: humidityLog(plenum, PRESSURE_PA),
        plenumWarmth: temperatureLog(plenum, always),
        outdoor: humidityLog(rows(10, 0.6), PRESSURE_PA),
        leaving: () => null,
        warmth: { leavingC: () => 12, meanC: () => 12 },
        stationPa: PRESSURE_PA,
        fullDepthM: 6,
      });
    const expected = psychrolib.GetHumRatioFromRelHum(10, 0.6, PRESSURE_PA);
    const told = of('up', rows(22, Number.NaN));
    expect(told).toHaveLength(4);
    for (const { entering } of told) {
      expect(entering).toMatchObject({ tempC: 22, plenum: false, tempLogged: true });
      expect(entering!.ratio / expected).toBeCloseTo(1, 3);
    }
    // Drawn down the air comes from outdoors, whatever the plenum says; without a thermometer it is outdoor air, warmed as usual.
    expect(of('down', rows(22, Number.NaN))[0].entering).toMatchObject({ tempC: 10, tempLogged: false });
    const bare = of('up', rows(Number.NaN, Number.NaN))[0].entering!;
    expect(bare).toMatchObject({ plenum: false, tempLogged: false });
    expect(bare.tempC).toBeGreaterThan(10);
    expect(bare.tempC).toBeLessThan(14);
    // A humidity in the plenum wins.
    expect(of('up', rows(22, 0.3))[0].entering).toMatchObject({ tempC: 22, plenum: true });
  });

  it('behind heaters: a thermometer is enough for an electric one, a burner needs the humidity too', () => {
    const electric = [{ fuel: 'electric' as const }];
    const propane = [{ fuel: 'propane' as const }];
    const thermometer = { plenumShare: 0, warmthShare: 1 };
    expect(untoldHeat('up', electric, thermometer)).toBeNull();
    expect(untoldHeat('up', propane, thermometer)).toMatch(/^A burner warms the entering air and may add water/);
    expect(untoldHeat('up', [...electric, ...propane], thermometer)).toMatch(/^A burner/);
    expect(untoldHeat('up', propane, { plenumShare: 0.9, warmthShare: 0.9 })).toBeNull();
    expect(untoldHeat('up', electric, { plenumShare: 0, warmthShare: 0.5 })).toMatch(/no plenum log tells by how much/);
    expect(untoldHeat('down', propane, { plenumShare: 0, warmthShare: 0 })).toBeNull();
    expect(untoldHeat('up', [], { plenumShare: 0, warmthShare: 0 })).toBeNull();
  });

  // By hand: 1000 kg of dry air that gain 1.5 g/kg carry 1.5 kg; of two editions one says 0.4 g/kg more, the middle is 1.7 kg.
  it('sums air times gain; the value lies between the editions', () => {
    const piece = {
      ms: 0,
      hours: 1,
      airKg: 1000,
      entering: { ratio: 0.005, perRh: 0.01, perK: 0.0003, tempC: 15, plenum: true, tempLogged: true },
      leaving: { ratio: 0.0065, wetter: 0.0068, warmer: 0.0067, others: [0.0069] },
      leavingC: 10,
      outdoorC: 12,
      grainWarmedK: 0,
    };
    const found = humidityBalance([piece, { ...piece, entering: null }], 0.0025, 0.25);
    expect(found.waterKg).toBeCloseTo(1.7, 9);
    expect(found.hours).toBe(1);
    const sd = (cause: string) => found.parts.find((part) => part.cause.startsWith(cause))!.sdKg;
    // 0.3 kg for half a point; 0.2 kg for half a kelvin; 10 g/kg for all of the humidity at 1.5 %
    expect(sd('moisture')).toBeCloseTo(0.15, 9);
    expect(sd('temperature of the leaving')).toBeCloseTo(0.1, 9);
    // 0.3 g/kg for a kelvin of the plenum's thermometer, 0.5 K that 95 % keep: more water in means less taken out
    expect(sd('temperature of the entering')).toBeCloseTo((-0.3 * 0.5) / 1.96, 4);
    expect(sd('humidity')).toBeCloseTo(0.15, 9);
  });

  it('a thermometer that both ways lean on is one error, which moves them opposite ways', () => {
    // By hand: half of 0.4 kg less half of 0.6 kg; 0.5 kg of one way alone counts half. Apart they part by 0.4 + 0.6 = 1 kg.
    const humidity = [
      { cause: 'thermometer', sdKg: 0.4 },
      { cause: 'moisture', sdKg: 0.5 },
    ];
    const heat = [{ cause: 'thermometer', sdKg: -0.6 }];
    const of = (a: number, b: number) =>
      joinedCauses([
        { factor: a, parts: humidity },
        { factor: b, parts: heat },
      ]);
    expect(of(0.5, 0.5)[0].sdKg).toBeCloseTo(0.1, 12);
    expect(of(0.5, 0.5)[1]).toEqual({ cause: 'moisture', sdKg: 0.25 });
    expect(of(1, -1)[0].sdKg).toBeCloseTo(1, 12);
  });

  // By hand: dry air that cools by 10 K gives up 10,060 J a kilogram; 1000 kg of it 10.06 MJ. Grain of 850 kg dry matter and 15 % holds
  // 1000 kg x (1465 + 35.6 x 15 = 1999 J/(kg K)); cooled by 2 K it gives up 3.998 MJ more.
  it('balances the heat: what air and grain give up goes into vapour', () => {
    const piece = {
      hours: 1,
      airKg: 1000,
      enteringC: 20,
      enteringRatio: 0,
      logged: true,
      leavingC: 10,
      outdoorC: 15,
      grainWarmedK: -2,
    };
    const found = heatBalance([piece], corn, 'corn', { dryMatterKg: 850, moistureWb: 0.15 }, 100, 0.3);
    const vaporisation = heatOfVaporisationJKg(corn, 10, 0.15);
    // free water takes 2.477 MJ/kg at 10 degC, and grain at 15 % holds its own firmer
    expect(vaporisation / 2.477e6).toBeGreaterThan(1);
    expect(vaporisation / 2.477e6).toBeLessThan(1.2);
    expect(found.waterKg).toBeCloseTo((10.06e6 + 3.998e6) / vaporisation, 3);
    expect(found.ofAirKg).toBeCloseTo(10.06e6 / vaporisation, 3);
  });
});

describe('do the ways agree', () => {
  const none = withheld('No.');
  it('tells below, above and overlap, and nothing where one is missing', () => {
    expect(orderOf(estimate(5, 4, 6), estimate(9, 7, 11))).toBe('below');
    expect(orderOf(estimate(9, 7, 11), estimate(5, 4, 6))).toBe('above');
    expect(orderOf(estimate(5, 4, 7.5), estimate(9, 7, 11))).toBe('overlap');
    expect(orderOf(estimate(5, 4, 6), none)).toBeNull();
  });
  it('has a likely meaning for each pair and each order, said as likely', () => {
    expect(new Set(PATTERNS.map(({ when }) => `${when.pair} ${when.order}`)).size).toBe(6);
    for (const { says } of PATTERNS) expect(says).toContain('most likely');
    const said = likelyWater(estimate(5, 4, 6), estimate(9, 7, 11), none, { ...missing('x'), from: 'pressure' });
    expect(said).toHaveLength(2);
    expect(said[0]).toContain('read too wet');
    expect(said[1]).toContain('static pressure alone');
    expect(likelyWater(estimate(5, 4, 8), estimate(9, 7, 11), none, missing('x'))).toEqual([]);
  });
});
