import { endStripSd, sharpness } from '../moisture/height-error.ts';
import type { ProbeAir } from './probe-types.ts';
import type { ReadingAt } from './reading-at.ts';

/** A sensor farther above or below than this says nothing of the sample's place. */
const NEAR_M = 1;
/** How well a hand knows the height of its sample: sd, m (about half a foot, working assumption). */
const HEIGHT_SD_M = 0.15;

/** A sensor of one cable with its reading. */
export interface SensorAt extends ReadingAt {
  sensor: number;
  heightM: number;
}

/**
 * A cable's moisture at a height: on the straight line between the sensors on both sides, or the end sensor's. Between two
 * sensors a front may stand anywhere: then the value at the part f of the way is the upper one's with probability f, the
 * straight line its mean and d sqrt(f (1 - f)) its standard deviation (by hand).
 *
 * @param sensors  of the cable, those with a reading, rising
 * @returns        null where none lies within a metre
 */
export function cableAt(
  sensors: readonly SensorAt[],
  heightM: number,
): { value: number; sd: number; air: ProbeAir; parts: { sensor: number; share: number }[] } | null {
  if (!sensors.some((one) => Math.abs(one.heightM - heightM) <= NEAR_M)) return null;
  const above = sensors.findIndex((one) => one.heightM >= heightM);
  const high = above < 0 ? sensors[sensors.length - 1] : sensors[above];
  const low = above < 1 ? high : sensors[above - 1];
  if (above < 1) {
    // Beyond the first or the last sensor: its own value.
    const next = above < 0 ? sensors[sensors.length - 2] : sensors[1];
    const jump = next === undefined ? 0 : 100 * (high.value - next.value);
    const gap = next === undefined ? 0 : Math.abs(high.heightM - next.heightM);
    const off = Math.abs(high.heightM - heightM);
    const beyond = off < 1e-3 ? 0 : endStripSd(2 * off, jump, gap, false);
    const slope = gap > 0 ? Math.abs(jump) / gap : 0;
    return {
      value: high.value,
      sd: Math.hypot(high.sd, beyond, slope * HEIGHT_SD_M),
      air: high.air,
      parts: [{ sensor: high.sensor, share: 1 }],
    };
  }
  const gap = high.heightM - low.heightM;
  const part = gap > 0 ? (heightM - low.heightM) / gap : 1;
  const jump = 100 * (high.value - low.value);
  const front = sharpness(gap) * Math.abs(jump) * Math.sqrt(part * (1 - part));
  const place = gap > 0 ? (Math.abs(jump) / gap) * HEIGHT_SD_M : 0;
  return {
    value: low.value + part * (high.value - low.value),
    sd: Math.hypot((1 - part) * low.sd, part * high.sd, front, place),
    air: part >= 1 ? high.air : airOf([low.air, high.air]),
    parts:
      part >= 1
        ? [{ sensor: high.sensor, share: 1 }]
        : [
            { sensor: low.sensor, share: 1 - part },
            { sensor: high.sensor, share: part },
          ],
  };
}

/** The air of several readings together: still where all were in still air. */
export function airOf(airs: readonly ProbeAir[]): ProbeAir {
  if (airs.includes('moving')) return 'moving';
  return airs.includes('unknown') ? 'unknown' : 'still';
}
