import type { SensorChange } from './cable-points.ts';

/**
 * A drying front can stand anywhere between two sensors. A sharp step of size d, equally likely anywhere in a gap g of
 * the depth D, leaves the nearest-sensor mean off by an sd of d g / (D sqrt 12). A front as thick as the gap (a straight
 * ramp of length g) leaves it exact. Fronts in farm bins lie in between (some decimetres against gaps of 0.5 to 1.2 m): half.
 */
const FRONT_SHARPNESS = 0.5;
/** Floor and surface are met by other air than their nearest sensor: sd of the difference of a strip, points. */
const END_STRIP_SD = 0.3;
/** A cable with one sensor tells nothing of the height: sd, points per point changed. */
const ONE_SENSOR_SD = 0.3;
/** Fronts stand at like heights in all cables, but not at the same: share of the variance that all cables have in common. */
const COMMON_SHARE = 0.5;

/**
 * Error of the bin's points removed from seeing each cable at a few heights only.
 *
 * @param sensors  with shares and moistures at both moments
 * @param depthM   levelled depth
 * @param scale    points that the bin changed, at least one
 * @returns        standard error, points
 */
export function heightError(sensors: readonly SensorChange[], depthM: number, scale: number): number {
  let common = 0;
  let own = 0;
  for (const cable of new Set(sensors.map((one) => one.cable))) {
    const column = sensors.filter((one) => one.cable === cable).sort((a, b) => a.heightM - b.heightM);
    const sd = column[0].cableShare * columnError(column, depthM, scale);
    common += sd;
    own += sd * sd;
  }
  return Math.sqrt(COMMON_SHARE * common ** 2 + (1 - COMMON_SHARE) * own);
}

function columnError(column: readonly SensorChange[], depthM: number, scale: number): number {
  if (column.length === 1) return ONE_SENSOR_SD * scale;
  const points = column.map((one) => 100 * (one.startWb - one.endWb));
  let variance = 0;
  for (let i = 1; i < column.length; i++) {
    const gap = column[i].heightM - column[i - 1].heightM;
    variance += ((FRONT_SHARPNESS * Math.abs(points[i] - points[i - 1]) * gap) / depthM) ** 2 / 12;
  }
  const last = column.length - 1;
  variance += strip(column[0].heightM, points[0] - points[1], column[1].heightM - column[0].heightM);
  variance += strip(
    depthM - column[last].heightM,
    points[last] - points[last - 1],
    column[last].heightM - column[last - 1].heightM,
  );
  return Math.sqrt(variance);

  /** The profile may go on beyond the end sensor as steeply as it came: over a strip h its mean is off by slope h / 2, at most by the jump. */
  function strip(heightM: number, jump: number, gap: number): number {
    const slope = gap > 0 ? Math.abs(jump) / gap : 0;
    return ((heightM / depthM) * Math.max(END_STRIP_SD, Math.min(Math.abs(jump), (slope * heightM) / 2))) ** 2;
  }
}
