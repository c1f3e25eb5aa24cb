import type { Bin } from '../../season/season.ts';
import type { SensorChange } from './cable-points.ts';

/** Drying and wetting fronts in farm bins are 1 to 2 ft thick (common practice). */
const FRONT_THICKNESS_M = 0.45;
/** Fronts are no straight ramps: some doubt is left between sensors nearer than that. */
const LEAST_SHARPNESS = 0.25;
/** Floor and surface are met by other air than their nearest sensor: sd of the difference of a strip, points. */
const END_STRIP_SD = 0.3;
/** A strip thicker than a front, where the air comes in, can hide one: of about three points, its mean half of that. */
const HIDDEN_FRONT_SD = 1.5;
/** A cable with one sensor tells nothing of the height: sd, points per point changed. */
const ONE_SENSOR_SD = 0.3;
/** Fronts stand at like heights in all cables, but not at the same: share of the variance that all cables have in common. */
export const COMMON_SHARE = 0.5;

/**
 * Error of the bin's points removed from seeing each cable at a few heights only.
 *
 * @param sensors  with shares and moistures at both moments
 * @param depthM   levelled depth
 * @param scale    points that the bin changed, at least one
 * @param air      where the air comes in: `up` at the floor, `down` at the surface
 * @returns        standard error, points
 */
export function heightError(sensors: readonly SensorChange[], depthM: number, scale: number, air: Bin['air']): number {
  let common = 0;
  let own = 0;
  for (const cable of new Set(sensors.map((one) => one.cable))) {
    const column = sensors.filter((one) => one.cable === cable).sort((a, b) => a.heightM - b.heightM);
    const sd = column[0].cableShare * columnError(column, depthM, scale, air);
    common += sd;
    own += sd * sd;
  }
  return Math.sqrt(COMMON_SHARE * common ** 2 + (1 - COMMON_SHARE) * own);
}

function columnError(column: readonly SensorChange[], depthM: number, scale: number, air: Bin['air']): number {
  if (column.length === 1) return ONE_SENSOR_SD * scale;
  const points = column.map((one) => 100 * (one.startWb - one.endWb));
  let variance = 0;
  for (let i = 1; i < column.length; i++) {
    const gap = column[i].heightM - column[i - 1].heightM;
    variance += ((sharpness(gap) * Math.abs(points[i] - points[i - 1]) * gap) / depthM) ** 2 / 12;
  }
  const last = column.length - 1;
  variance += strip(column[0].heightM, points[0] - points[1], column[1].heightM - column[0].heightM, air === 'up');
  variance += strip(
    depthM - column[last].heightM,
    points[last] - points[last - 1],
    column[last].heightM - column[last - 1].heightM,
    air === 'down',
  );
  return Math.sqrt(variance);

  function strip(heightM: number, jump: number, gap: number, airEnters: boolean): number {
    return ((heightM / depthM) * endStripSd(heightM, jump, gap, airEnters)) ** 2;
  }
}

/**
 * Error of the strip between an end sensor and floor or surface, sd of its mean in points. The profile may go on beyond
 * the sensor as steeply as it came: over a strip h its mean is off by slope h / 2, at most by the jump.
 *
 * @param jump        from the next sensor to the end one, points
 * @param gap         between the two, m; 0 where there is one only
 * @param airEnters   the air comes in through this strip
 */
export function endStripSd(heightM: number, jump: number, gap: number, airEnters: boolean): number {
  const slope = gap > 0 ? Math.abs(jump) / gap : 0;
  const hidden = airEnters ? HIDDEN_FRONT_SD * Math.max(0, 1 - FRONT_THICKNESS_M / heightM) : 0;
  const goesOn = Math.min(Math.abs(jump), (slope * heightM) / 2);
  return Math.max(END_STRIP_SD, goesOn, hidden);
}

/**
 * A front can stand anywhere between two sensors. A sharp step of size d, equally likely anywhere in a gap g of the depth
 * D, leaves the nearest-sensor mean off by an sd of d g / (D sqrt 12); a straight ramp of length w by 1 - w / g of that
 * (the saw-tooth of the error averaged over w: by hand, nothing left at w = g).
 */
export function sharpness(gapM: number): number {
  return Math.max(LEAST_SHARPNESS, 1 - FRONT_THICKNESS_M / gapM);
}
