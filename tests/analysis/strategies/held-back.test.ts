import { describe, expect, it } from 'vitest';
import { humidityRatio } from '../../../src/air/humidity-ratio.ts';
import { against, FACTORS, heldBack } from '../../../src/analysis/strategies/held-back.ts';
import { airCanTake } from '../../../src/analysis/strategies/held-back-air.ts';
import { runAir, type YearAir } from '../../../src/analysis/strategies/held-back-run.ts';
import { yearsHeldBack } from '../../../src/analysis/strategies/held-back-years.ts';
import { equilibriumMoistureWb } from '../../../src/grain/equilibrium.ts';
import { isothermOf } from '../../../src/grain/isotherm.ts';
import { bareBin, PRESSURE_PA } from './ohare-bin.ts';

const CORN = isothermOf('corn');

describe('airCanTake', () => {
  // ASHRAE psychrometric chart no. 1 and table 2 of chapter 1 (from memory): air of 20 degC and 50 % holds 7.26 g/kg, its wet bulb
  // is 13.8 degC, and saturated air of 13.8 degC holds 9.88 g/kg. Grain that drips binds nothing.
  it('from dripping wet grain is what brings air to its wet bulb', () => {
    expect(airCanTake(CORN, 20, 0.00726, 0.6, 101_325)).toBeCloseTo(0.00988 - 0.00726, 4);
  });

  it('is nothing in balance, above 0 from wetter grain, below 0 from drier', () => {
    for (const tempC of [0, 10, 25]) {
      const ratio = humidityRatio(tempC, 0.65, PRESSURE_PA);
      const balance = equilibriumMoistureWb(CORN, tempC, 0.65);
      const take = (wb: number) => airCanTake(CORN, tempC, ratio, wb / (1 - wb), PRESSURE_PA);
      expect(take(balance)).toBeCloseTo(0, 8);
      expect(take(balance + 0.02)).toBeGreaterThan(1e-4);
      expect(take(balance - 0.02)).toBeLessThan(-1e-4);
    }
  });

  // Saturated air holds 5.05 g/kg at 4 degC and 8.76 at 12 (ASHRAE, table 2 of chapter 1, from memory): 1.7 times.
  it('is much less of cold air', () => {
    const take = (tempC: number) => airCanTake(CORN, tempC, humidityRatio(tempC, 0.5, PRESSURE_PA), 0.25, PRESSURE_PA);
    expect(take(12) / take(4)).toBeGreaterThan(1.3);
    expect(take(12) / take(4)).toBeLessThan(8.76 / 5.05);
  });
});

const year = (weather: string, more: Partial<YearAir>): YearAir => ({
  weather,
  reached: true,
  reachedMs: 0,
  days: 30,
  fanHours: 360,
  hoursPerDay: 12,
  plenumC: 15,
  plenumRh: 0.5,
  plenumEmcWb: 0.12,
  canTake: 0.0015,
  asWarm: 0.0015,
  airKgM3: 1.2,
  took: 0.0012,
  water: 0.06,
  ...more,
});

describe('against', () => {
  const best = year('2017', {});

  // By hand: half the hours a day and the same air take twice the days; the logarithm has nothing else to be shared by.
  it('gives all to the hours where only they are short', () => {
    const told = against(year('2016', { days: 60, hoursPerDay: 6 }), best);
    expect(told.slower).toBeCloseTo(2, 12);
    expect(told.times).toEqual({ hours: 2, warmth: 1, dryness: 1, use: 1 });
    expect(told.shares).toEqual({ hours: 1, warmth: 0, dryness: 0, use: 0 });
  });

  // By hand: air that could take half if as dry, and two thirds of that by its own humidity, at 9/8 the hours and the same use:
  // 2 x 3/2 x 8/9 = 8/3 times the days for as much water; with 3/4 of the water 2 times the days.
  it('parts cold from damp, hours that help pulling the other way, and less water', () => {
    const cold = year('2018', {
      days: 60,
      hoursPerDay: 13.5,
      asWarm: 0.00075,
      canTake: 0.0005,
      took: 0.0004,
      water: 0.045,
    });
    const told = against(cold, best);
    expect(told.slower).toBeCloseTo(8 / 3, 12);
    expect(told.times.warmth).toBeCloseTo(2, 12);
    expect(told.times.dryness).toBeCloseTo(3 / 2, 12);
    expect(told.times.hours).toBeCloseTo(8 / 9, 12);
    expect(told.times.use).toBeCloseTo(1, 12);
    expect(told.slower * told.water).toBeCloseTo(2, 12);
    expect(told.shares?.warmth).toBeCloseTo(Math.log(2) / Math.log(8 / 3), 12);
    expect(FACTORS.reduce((sum, factor) => sum + (told.shares?.[factor] ?? 0), 0)).toBeCloseTo(1, 12);
  });

  // By hand: as much water of a kilogram, a tenth more kilograms of a cubic metre: 1 / 1.1 of the days.
  it('counts that colder air is the denser, with the warmth', () => {
    const told = against(year('2018', { days: 30 / 1.1, airKgM3: 1.32 }), best);
    expect(told.slower).toBeCloseTo(1 / 1.1, 12);
    expect(told.times.warmth).toBeCloseTo(1 / 1.1, 12);
    expect(told.times.hours * told.times.dryness * told.times.use).toBeCloseTo(1, 12);
  });

  it('shares nothing out of a pace that is the same', () => {
    expect(
      against(year('2019', { hoursPerDay: 6, canTake: 0.003, asWarm: 0.003, took: 0.0024 }), best).shares,
    ).toBeNull();
  });
});

/** Five days in which the fan runs by a plan and the grain loses water evenly; by hand, no bed. */
function handRun(weather: string, fan: readonly number[], endWb: number, reachedHour: number | null) {
  const hours = 120;
  const bare = bareBin(10, 1, 0.2);
  const ratio = humidityRatio(12, 0.5, PRESSURE_PA);
  const spec = {
    ...bare,
    endHour: hours,
    hours: { ...bare.hours, humidityRatio: new Float64Array(hours).fill(ratio) },
  };
  const done = reachedHour ?? hours;
  const meanWb = Float64Array.from({ length: hours }, (_, i) => 0.2 + (endWb - 0.2) * Math.min(1, (i + 1) / done));
  const trace = {
    fan: Float64Array.from({ length: hours }, (_, i) => fan[i % fan.length]),
    meanWb,
    meanC: new Float64Array(hours),
    plenumC: new Float64Array(hours).fill(12),
    layerC: new Float64Array(0),
    layerWb: new Float64Array(0),
  };
  const outcome = { reachedTarget: reachedHour !== null, reachedHour: reachedHour ?? Number.NaN } as never;
  return { weather, spec, outcome, trace };
}

describe('runAir', () => {
  // By hand: 96 hours, each second one: 48 fan hours, 12 a day. 20 % is 0.25, 15 % 0.17647 of dry matter: 0.07353 come out of
  // 5 x 610 = 3050 kg/m2, 224.3 kg; the fan takes in air of 0 degC with 4.44 g/kg at 98,885 Pa, 0.7986 m3/kg: 3600 x 48 x
  // 0.06696 / 0.7986 = 14,490 kg/m2: 15.5 g/kg.
  it('tells hours, water and what air took, until the target', () => {
    const { air } = runAir(handRun('2017', [1, 0], 0.15, 96));
    expect(air).toMatchObject({ reached: true, days: 4, fanHours: 48, hoursPerDay: 12 });
    expect(air?.water).toBeCloseTo(0.07353, 5);
    expect(air?.took).toBeCloseTo(224.3 / 14_490, 5);
    expect(air?.plenumC).toBeCloseTo(12, 12);
    expect(air?.plenumRh).toBeCloseTo(0.5, 9);
  });

  it('says why not: no running, grain taken out', () => {
    expect(runAir(handRun('2017', [0], 0.15, 96)).why).toBe('The fan did not run before that.');
    const run = handRun('2017', [1], 0.15, 96);
    const levels = [...run.spec.levels, { ...run.spec.levels[0], hour: 40, depthM: 3 }];
    expect(runAir({ ...run, spec: { ...run.spec, levels } }).why).toMatch(/taken out/);
  });
});

describe('heldBack', () => {
  it('finds the best, and holds a year that was not done against its days', () => {
    const told = heldBack([
      handRun('2016', [1, 0, 0, 0], 0.15, 120),
      handRun('2017', [1, 0], 0.15, 96),
      handRun('2018', [1, 0], 0.18, null),
      handRun('2019', [0], 0.2, null),
    ]);
    expect(told.best?.weather).toBe('2017');
    expect(told.others.map(({ air }) => [air.weather, air.days])).toEqual([
      ['2016', 5],
      ['2018', 4],
    ]);
    expect(told.others.map(({ days, late }) => [days, late])).toEqual([
      [5, false],
      [null, true],
    ]);
    const [first] = told.others;
    expect(first.slower).toBeCloseTo(5 / 4, 10);
    expect(first.times.hours).toBeCloseTo(2, 10);
    expect(first.times.hours * first.times.warmth * first.times.dryness * first.times.use).toBeCloseTo(
      first.slower,
      10,
    );
    expect(told.untold).toEqual([{ weather: '2019', why: 'The fan did not run before that.' }]);
  });

  it('holds a year that was done long after against the best year’s days too', () => {
    // Water comes out evenly over 110 hours: by hand 5 points x 48 / 110 in the best year's two days, of 20 % so 17.818 %.
    const [slow] = heldBack([handRun('2017', [1], 0.15, 48), handRun('2018', [1], 0.15, 110)]).others;
    expect(slow).toMatchObject({ late: true, days: 110 / 24 });
    expect(slow.air.days).toBe(2);
    expect(slow.water).toBeCloseTo((0.25 - 0.17818 / 0.82182) / (0.25 - 0.15 / 0.85), 4);
  });

  it('tells of no year where none was run', () => {
    expect(heldBack([])).toEqual({ best: null, others: [], untold: [] });
  });
});

describe('yearsHeldBack', () => {
  it('tells why a year or a strategy is not told', () => {
    const { spec } = handRun('2017', [1], 0.15, null);
    const lacking = { year: 2015, spec: null, why: 'No weather is on file for it.' } as const;
    const [told] = yearsHeldBack([lacking, { year: 2017, spec, why: null }], ['warmed-air']);
    expect(told.years.best).toBeNull();
    expect(told.years.untold).toEqual([
      { weather: '2017', why: 'What its heater adds is not the weather’s.' },
      { weather: '2015', why: 'No weather is on file for it.' },
    ]);
  });
});
