import { describe, expect, it } from 'vitest';
import { binTemperature } from '../../../src/analysis/moisture/bin-temperature.ts';
import { edgeWarmth, STEP_S } from '../../../src/analysis/moisture/edge-warmth.ts';
import { stepSeries } from '../../../src/analysis/moisture/step-series.ts';
import { conduct, makeStrip, stripMean } from '../../../src/analysis/moisture/strip-conduction.ts';
import { DAY, HOUR, makeBin, makeCable, makeSeries, makeSpans, T0 } from './make-bin.ts';

const A = 1.1e-7;

describe('conduction through a strip against closed solutions', () => {
  // Half-space, surface stepped by 10 K: T = 10 erfc(x / (2 sqrt(a t))) (Carslaw and Jaeger 2.4). After 30 days with a = 1.1e-7:
  // 2 sqrt(a t) = 1.06793 m; erfc at 0.2, 0.5 and 1.0 of it, from Abramowitz and Stegun table 7.1: 0.7772974, 0.4795001, 0.1572992.
  it('half-space after a step', () => {
    const reach = 2 * Math.sqrt(A * 30 * 86_400);
    expect(reach).toBeCloseTo(1.06793, 4);
    const strip = makeStrip(0, 4, false);
    const tempC = new Float64Array(strip.volumes.length);
    for (let i = 0; i < 120; i++) conduct(strip, tempC, 0, 10, A, STEP_S);
    const at = (fromFace: number) => {
      const place = (4 - fromFace * reach) / 0.1 - 0.5;
      const cell = Math.floor(place);
      return tempC[cell] + (place - cell) * (tempC[cell + 1] - tempC[cell]);
    };
    // A cell is 0.1 m and a step 6 h: a twentieth of a kelvin.
    expect(Math.abs(at(0.2) - 7.773)).toBeLessThan(0.05);
    expect(Math.abs(at(0.5) - 4.795)).toBeLessThan(0.05);
    expect(Math.abs(at(1) - 1.573)).toBeLessThan(0.05);
  });

  // A year's wave of 15 K dies with exp(-x sqrt(w / 2a)) (Carslaw and Jaeger 2.6): w = 1.9924e-7 1/s, sqrt(w/2a) = 0.95164 1/m; 1 m in 5.79 K.
  it('the year’s wave one metre in', () => {
    const w = (2 * Math.PI) / (365 * 86_400);
    const strip = makeStrip(0, 10, false);
    const tempC = new Float64Array(strip.volumes.length);
    let [most, least] = [0, 0];
    for (let i = 0; i < 4 * 365 * 3; i++) {
      conduct(strip, tempC, 0, 15 * Math.sin(w * (i + 1) * STEP_S), A, STEP_S);
      if (i < 4 * 365 * 2) continue;
      most = Math.max(most, (tempC[89] + tempC[90]) / 2);
      least = Math.min(least, (tempC[89] + tempC[90]) / 2);
    }
    // Half of the swing, for the first years still lie deep inside.
    expect(Math.abs((most - least) / 2 - 15 * Math.exp(-0.95164))).toBeLessThan(0.05);
  });

  // Steady state between radii 2 and 4 m at 0 and 10 C: T = 10 ln(r/2)/ln 2; its mean over the area by hand
  // 10/ln 2 x [r^2 ln(r/2)/2 - r^2/4] from 2 to 4 over 6 = 10/0.693147 x (5.545177 - 4 + 1)/6 = 6.1202.
  it('a ring at rest', () => {
    const strip = makeStrip(2, 4, true);
    const tempC = new Float64Array(strip.volumes.length);
    for (let i = 0; i < 4000; i++) conduct(strip, tempC, 0, 10, A, STEP_S);
    expect(stripMean(strip, tempC)).toBeCloseTo(6.12, 2);
  });

  it('gives back what it is given where nothing differs', () => {
    const strip = makeStrip(0, 3, true);
    const tempC = new Float64Array(strip.volumes.length).fill(7);
    conduct(strip, tempC, 7, 7, A, STEP_S);
    expect([...tempC].every((one) => Math.abs(one - 7) < 1e-12)).toBe(true);
  });
});

describe('edgeWarmth', () => {
  const steps = 400;
  const flat = (value: number) => new Float64Array(steps).fill(value);
  const edge = { fromM: 0, toM: 1, round: false, share: 0.5, warmerK: [0, 4] as const, mayBeShielded: false };

  it('after months of still air: half of the difference over a flat strip, by its share', () => {
    // Steady: a straight line from the sensor to the wall. 100 days are 9 to 12 of the strip's times L^2/(pi^2 a).
    const [least, most] = edgeWarmth({ ...edge, innerC: flat(0) }, flat(10), flat(0));
    expect(least).toBeCloseTo(0.5 * 5, 2);
    expect(most).toBeCloseTo(0.5 * 7, 2);
  });

  it('little while the fan runs, none or less for a shielded one', () => {
    const [low, high] = edgeWarmth({ ...edge, innerC: flat(0) }, flat(10), flat(1));
    // The wall goes on to warm the outer decimetre: a tenth of the still bin's 2.5 to 3.5 K.
    expect(low).toBeGreaterThan(0);
    expect(high).toBeLessThan(0.35);
    const cold = edgeWarmth({ ...edge, innerC: flat(0), warmerK: [0, 0], mayBeShielded: true }, flat(-10), flat(0));
    expect(cold[0]).toBeCloseTo(-2.5, 2);
    expect(cold[1]).toBe(0);
  });
});

describe('stepSeries', () => {
  it('means, a bridged hole, held ends, too little', () => {
    const times = Float64Array.from([1, 2, 21, 41, 42].map((at) => at));
    const values = Float64Array.from([4, 6, 10, 20, 22]);
    // Steps of 10 that end at 50: [0,10) 5, [10,20) none, [20,30) 10, [30,40) none, [40,50) 21.
    expect([...stepSeries(times, values, 50, 5, 10, 10)!]).toEqual([5, 7.5, 10, 15.5, 21]);
    expect([...stepSeries(times, values, 60, 4, 10, 10)!]).toEqual([10, 15.5, 21, 21]);
    expect(stepSeries(times, values, 90, 6, 10, 10)).toBeNull();
    expect([...stepSeries(times, values, 90, 6, 10, 10, 0)!]).toEqual([21, 21, 21, 21, 21, 21]);
    expect(stepSeries(times, values, 190, 6, 10, 10, 0)).toBeNull();
  });
});

describe('the interval of a bin’s mean temperature', () => {
  // A round bin of one temperature whose wall steps by 20 K (Carslaw and Jaeger 7.6): inside
  // T = 20 (1 - sum 2 J0(l r/R) exp(-l^2 a t/R^2) / (l J1(l))), its mean 20 (1 - sum 4 exp(-l^2 a t/R^2) / l^2);
  // zeros of J0 and J1 there from Abramowitz and Stegun table 9.5.
  const ZEROS = [2.40482556, 5.52007811, 8.65372791, 11.79153444, 14.93091771, 18.07106397];
  const J1 = [0.5191475, -0.34026481, 0.2714523, -0.23245983, 0.20654643, -0.1877288];
  const R = 5;
  const j0 = (x: number) => {
    let term = 1;
    let sum = 1;
    for (let k = 1; k < 60; k++) {
      term *= -(x * x) / 4 / (k * k);
      sum += term;
    }
    return sum;
  };
  const decay = (zero: number, hours: number) => Math.exp((-(zero ** 2) * A * hours * 3600) / R ** 2);
  const inside = (r: number, hours: number) =>
    20 * (1 - ZEROS.reduce((sum, z, i) => sum + (2 * j0((z * r) / R) * decay(z, hours)) / (z * J1[i]), 0));
  const mean = (hours: number) => 20 * (1 - ZEROS.reduce((sum, z) => sum + (4 * decay(z, hours)) / z ** 2, 0));

  it.each([
    [60, 6],
    [120, 6],
    [200, 6],
    // By hand, once a week.
    [60, 168],
    [200, 168],
  ])(
    'holds the true mean of a bin warmed through its wall for %d days, cables two thirds out, read every %d h',
    (days, step) => {
      const cables = [makeCable('C1', 0, 1, 2, 3, 4, 5), makeCable('C2', 3.3, 1, 2, 3, 4, 5)];
      const bin = makeBin(cables, {}, { diameterM: 2 * R });
      const hours = 24 * days;
      const series = cables.flatMap((cable) =>
        [1, 2, 3, 4, 5].map((n) =>
          makeSeries(
            cable,
            n,
            1,
            hours,
            () => 0.15,
            (hour) => inside(cable.fromCentreM, Math.max(hour, 240)),
            step,
          ),
        ),
      );
      // The tall cylinder of the closed solution knows neither floor nor surface: the weather of those edges is the grain's own here.
      const weather = {
        timeMs: Float64Array.from({ length: hours }, (_, h) => T0 + h * HOUR),
        tempC: new Float64Array(hours).fill(20),
      };
      const errors = { accuracyK: 0.3, noiseK: 0.1, biasK: 0.1 };
      const told = binTemperature(bin, series, makeSpans([hours, 0]), { errors, weather });
      const truth = mean(hours - 12);
      expect(told.end.value).toBeLessThan(truth - 1);
      expect(told.end.interval![0]).toBeLessThanOrEqual(truth);
      expect(told.end.interval![1]).toBeGreaterThanOrEqual(truth);
      // Wide upwards only: below, the sensors' own errors and what lies between the cables.
      expect(told.end.interval![1] - told.end.value!).toBeGreaterThan(told.end.value! - told.end.interval![0]);
      expect(told.why).toBeNull();
    },
  );

  it('without weather reaches as far as any outdoor air could have pulled the grain along the wall, and says so', () => {
    const cable = makeCable('C1', 3, 1, 3, 5);
    const series = [1, 2, 3].map((n) => makeSeries(cable, n, 1, 24 * 60, () => 0.15));
    const constant = (tempC: number) => ({
      timeMs: Float64Array.from({ length: 24 * 60 }, (_, h) => T0 + h * HOUR),
      tempC: new Float64Array(24 * 60).fill(tempC),
    });
    const errors = { accuracyK: null, noiseK: null, biasK: null };
    const told = (weather: { timeMs: Float64Array; tempC: Float64Array }) =>
      binTemperature(makeBin([cable]), series, makeSpans([24 * 60, 0]), { errors, weather });
    const none = told({ timeMs: new Float64Array(), tempC: new Float64Array() });
    expect(none.end.value).toBe(10);
    expect(none.why).toContain('may have followed any');
    // Whatever the air was, between the cold and the heat of farm country: the interval with the weather known lies within.
    for (const outdoorC of [-30, -10, 10, 30]) {
      const known = told(constant(outdoorC));
      expect(known.why).toBeNull();
      for (const name of ['start', 'end'] as const) {
        expect(none[name].interval![0]).toBeLessThanOrEqual(known[name].interval![0]);
        expect(none[name].interval![1]).toBeGreaterThanOrEqual(known[name].interval![1]);
      }
    }
    // Two days after filling nothing has come in yet; after two months much may have.
    const width = ({ interval }: { interval?: [number, number] | null }) => interval![1] - interval![0];
    expect(width(none.end)).toBeGreaterThan(2 * width(none.start));
  });

  it('by hand where nothing differs and nothing moves: accuracy, bias and the assumed spread alone', () => {
    const cable = makeCable('C1', 2.5, 1, 3, 5);
    const series = [1, 2, 3].map((n) => makeSeries(cable, n, 1, 24 * 20, () => 0.15));
    const tens = Float64Array.from({ length: 480 }, () => 10);
    const weather = { timeMs: Float64Array.from({ length: 480 }, (_, h) => T0 + h * HOUR), tempC: tens };
    const told = binTemperature(makeBin([cable]), series, makeSpans([480, 1]), {
      errors: { accuracyK: 0.6, noiseK: null, biasK: 0.4 },
      weather,
    });
    // The fan has just flushed the edges. Parts, K: accuracy 0.6/1.96 x sqrt(3)/3 = 0.177; bias 0.4/1.96 = 0.204; cables 0.5; strips at
    // floor and surface 0.3/6 each, 0.071; core (2.5/5/2)^2 x 0.3 = 0.019 and rim (1 - 0.75^2) x 0.1 = 0.044.
    // Together sqrt(0.0313 + 0.0416 + 0.25 + 0.005 + 0.0004 + 0.0019) = 0.5747; df = 0.5747^4/(0.5^4/3) = 5.24, t 0.95 of it 1.996.
    const half = told.end.value! - told.end.interval![0];
    expect(Math.abs(half - 1.996 * 0.5747)).toBeLessThan(0.03);
    expect(told.end.interval![1] - told.end.value!).toBeLessThan(half + 0.25);
    expect(told.end.window!.toMs).toBeLessThanOrEqual(T0 + 20 * DAY);
  });
});
