import { describe, expect, it } from 'vitest';
import type { CablePoints, SensorChange } from '../../../src/analysis/moisture/cable-points.ts';
import { ownSpread, pooledCableSpread, ringsOf } from '../../../src/analysis/moisture/cable-spread.ts';
import { joinErrors } from '../../../src/analysis/moisture/error-part.ts';
import { heightError } from '../../../src/analysis/moisture/height-error.ts';
import { ASSUMED_MOVING_AIR_SD, movingAirError } from '../../../src/analysis/moisture/moving-air-error.ts';
import { radialError } from '../../../src/analysis/moisture/radial-error.ts';
import { believedReadings } from '../../../src/analysis/moisture/sensor-readings.ts';
import { ticketMean } from '../../../src/analysis/moisture/tickets.ts';
import { FAN_OFF, FAN_ON } from '../../../src/analysis/types.ts';
import { HOUR, makeBin, makeCable, makeSeries, makeSpans, T0 } from './make-bin.ts';

const cable = (fromCentreM: number, points: number, weight = 0.25): CablePoints => ({
  cable: `${fromCentreM} ${points}`,
  points,
  weight,
  fromCentreM,
});

describe('cable spread', () => {
  // Ring at 3 m: 2, 3, 4 -> squares 1 + 0 + 1, df 2; the centre alone adds none. A bin of 2 points: 2/2/4 = 0.25.
  it('within the rings only: the centre being behind is no spread', () => {
    const cables = [cable(3, 2), cable(3, 4), cable(0, -5), cable(3.005, 3)];
    expect(ringsOf(cables).map((ring) => ring.length)).toEqual([1, 3]);
    expect(ownSpread(cables, 2)).toEqual({ variance: 0.25, df: 2 });
  });

  // (2 * 0.25 + 1 * 0.5)/3: the second bin changed half a point, so its 0, 1 count as they are: 0.5/1.
  it('pools bins by their degrees of freedom', () => {
    const first = { cables: [cable(3, 2), cable(3, 4), cable(3, 3)], points: 2 };
    const second = { cables: [cable(2, 0), cable(2, 1)], points: 0.5 };
    const pooled = pooledCableSpread([first, second, { cables: [cable(0, 1)], points: 1 }]);
    expect(pooled.df).toBe(3);
    expect(pooled.variance).toBeCloseTo(1 / 3, 12);
    expect(pooledCableSpread([])).toEqual({ variance: 0, df: 0 });
  });
});

describe('joinErrors', () => {
  // Two equal parts of sd 1 with 4 degrees each: sd sqrt 2, df (1 + 1)^2/(1/4 + 1/4) = 8; t(0.95, 8) = 1.860 (NIST table).
  it('Welch and Satterthwaite by hand', () => {
    const told = joinErrors([
      { cause: 'a', sd: 1, df: 4 },
      { cause: 'b', sd: 1, df: 4 },
    ]);
    expect(told.df).toBeCloseTo(8, 12);
    expect(told.half90).toBeCloseTo(1.86 * Math.SQRT2, 2);
  });

  it('known errors only: the normal interval; none: none', () => {
    expect(joinErrors([{ cause: 'a', sd: 2, df: Number.POSITIVE_INFINITY }]).half90).toBeCloseTo(3.29, 2);
    expect(joinErrors([])).toEqual({ sd: 0, df: Number.POSITIVE_INFINITY, half90: 0 });
  });
});

describe('what lies between the sensors', () => {
  const sensor = (heightM: number, removed: number): SensorChange => ({
    cable: 'A',
    sensor: 1,
    heightM,
    fromCentreM: 0,
    heightShare: 0.5,
    cableShare: 1,
    share: 0.5,
    startWb: 0.2,
    endWb: 0.2 - removed / 100,
  });

  // Jump 4 points over a gap of 2 m in a depth of 4 m: a front of 0.45 m is 0.775 of a step, 0.775 * 4 * 2/4/sqrt 12 = 0.447447;
  // end strips of 1 m, slope 2 points/m: 1/4 * (2 * 1/2) = 0.25 each. sqrt(0.447447^2 + 2 * 0.25^2) = 0.570271
  it('a front between two heights, by hand', () => {
    expect(heightError([sensor(1, 4), sensor(3, 0)], 4, 2, 'up')).toBeCloseTo(0.570271, 5);
  });

  // The mean by nearest sensor over all places of a ramp, summed up directly: no formula shared with the code.
  it.each([0.75, 1, 2.2])('a ramp of 0.45 m anywhere between sensors %d m apart', (gap) => {
    const sharp = (thick: number) => {
      let squares = 0;
      for (let i = 0; i < 2000; i++) {
        // Sensors at (k + 1/2) gap; the ramp's middle anywhere within one gap of ten.
        const middle = 5 * gap + ((i + 0.5) / 2000) * gap;
        const of = (z: number) => Math.min(1, Math.max(0, (z - middle) / thick + 0.5));
        const seen = Array.from({ length: 10 }, (_, k) => of((k + 0.5) * gap)).reduce((sum, one) => sum + one * gap, 0);
        squares += (seen - (10 * gap - middle)) ** 2;
      }
      return Math.sqrt(squares / 2000);
    };
    expect(sharp(1e-9)).toBeCloseTo(gap / Math.sqrt(12), 3);
    const told = heightError([sensor(0.01, 1), sensor(0.01 + gap, 0)], 0.02 + gap, 1, 'down');
    const ends = 2 * ((0.01 / (0.02 + gap)) * 0.3) ** 2;
    expect(Math.sqrt(told ** 2 - ends) * (0.02 + gap)).toBeCloseTo(sharp(0.45), 3);
  });

  // Lowest sensor 1.5 m up, all flat: 1.5/6 of 1.5 points * (1 - 0.45/1.5) = 0.2625 where air comes in below, 1.5/6 * 0.3 = 0.075
  // where it comes in above; the surface strip of 0.5 m: 0.025 (0.15 * 0.5/6 = 0.0125 of a hidden front is less).
  it('a thick strip where the air comes in can hide a front', () => {
    const flat = [sensor(1.5, 0), sensor(5.5, 0)];
    expect(heightError(flat, 6, 1, 'up')).toBeCloseTo(Math.hypot(0.2625, 0.025), 5);
    expect(heightError(flat, 6, 1, 'down')).toBeCloseTo(Math.hypot(0.075, 0.025), 5);
  });

  it('a flat profile leaves little doubt, a closer spacing less', () => {
    const flat = heightError([sensor(0.4, 2), sensor(3.6, 2)], 4, 2, 'up');
    expect(flat).toBeLessThan(0.2);
    const coarse = heightError([sensor(1, 4), sensor(3, 0)], 4, 2, 'up');
    const fine = heightError([sensor(0.5, 4), sensor(1.5, 4), sensor(2.5, 0), sensor(3.5, 0)], 4, 2, 'up');
    expect(fine).toBeLessThan(coarse);
  });

  it('a lone centre cable knows less than one half-way out, and rings less than one', () => {
    const centre = radialError([cable(0, 3)], 5, 3);
    const half = radialError([cable(2.5, 3)], 5, 3);
    const both = radialError([cable(0, 3), cable(3, 3)], 5, 3);
    expect(centre).toBeGreaterThan(half);
    expect(half).toBeGreaterThan(both);
    expect(radialError([cable(0, 1), cable(3, 3)], 5, 3)).toBeGreaterThan(both);
  });
});

describe('movingAirError', () => {
  const one = makeCable('A', 2, 3);
  const bin = makeBin([one]);
  // Runs of 12 hours and rests of 12: three stops. Readings 1 point low in moving air, 0.4 point in the hours between.
  const spans = makeSpans(...[0, 1, 2].flatMap(() => [[12, FAN_ON] as const, [12, FAN_OFF] as const]));
  const read = (hour: number) => (hour % 24 < 12 ? 0.14 : hour % 24 < 14 ? 0.146 : 0.15);

  it('finds the lean from the stops of the fan', () => {
    const sensors = believedReadings(bin, [makeSeries(one, 1, 0, 72, read)], 'moisture', spans, T0, T0 + 72 * HOUR);
    const told = movingAirError(sensors, [1], spans);
    expect(told.stops).toBe(3);
    expect(told.sd).toBeCloseTo(1, 9);
  });

  it('is never under the assumed error: stops of settled grain tell little of a start', () => {
    const little = (hour: number) => (hour % 24 < 12 ? 0.149 : 0.15);
    const sensors = believedReadings(bin, [makeSeries(one, 1, 0, 72, little)], 'moisture', spans, T0, T0 + 72 * HOUR);
    expect(movingAirError(sensors, [1], spans)).toEqual({ sd: ASSUMED_MOVING_AIR_SD, stops: 3 });
  });

  it('falls back on the assumed lean where the fan hardly stopped', () => {
    const sensors = believedReadings(bin, [makeSeries(one, 1, 0, 24, read)], 'moisture', spans, T0, T0 + 72 * HOUR);
    expect(movingAirError(sensors, [1], spans).sd).toBe(ASSUMED_MOVING_AIR_SD);
    expect(movingAirError(sensors, [1], null).sd).toBe(ASSUMED_MOVING_AIR_SD);
  });
});

describe('believedReadings', () => {
  const one = makeCable('A', 2, 3);
  it('keeps readings of the bin in good standing, each cell by its own flags', () => {
    const series = makeSeries(one, 1, 0, 5, (hour) => (hour === 1 ? Number.NaN : 0.15));
    series.moistureFlags[2] = 4;
    series.tempFlags[3] = 1;
    const kept = (what: 'moisture' | 'temperature') =>
      believedReadings(makeBin([one]), [series], what, null, T0, T0 + 4 * HOUR).map((s) =>
        Array.from(s.timeMs, (ms) => (ms - T0) / HOUR),
      );
    expect(kept('moisture')).toEqual([[0, 3]]);
    expect(kept('temperature')).toEqual([[0, 1, 2]]);
    expect(believedReadings(makeBin([]), [series], 'moisture', null, T0, T0 + HOUR)).toEqual([]);
  });
});

describe('ticketMean', () => {
  const load = (netKg: number, moistureWb: number, direction: 'in' | 'out' = 'in') => ({
    timeMs: T0,
    direction,
    netKg,
    moistureWb,
  });
  it('a load without weight counts as the mean load, one without moisture not at all', () => {
    const told = ticketMean([load(10, 0.2), load(30, 0.16), load(Number.NaN, 0.15), load(20, Number.NaN)], 'in')!;
    // weights 10, 30, 20 (mean of 10 and 30): (2 + 4.8 + 3)/60
    expect(told.moistureWb).toBeCloseTo(9.8 / 60, 12);
    expect(told.loads).toBe(3);
    expect(ticketMean([load(10, 0.2)], 'out')).toBeNull();
  });
});
