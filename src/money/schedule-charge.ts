import { assertRange } from '../base/errors.ts';
import type { MoistureSchedule } from './moisture-schedule.ts';
import { WETTEST_WB } from './water-shrink.ts';

// 0.155 - 0.15 is a hair above half a point: rounding of the machine must not start a step that the load does not.
const HAIR_POINTS = 1e-9;

/**
 * What a posted schedule charges a load.
 *
 * @param schedule    its bands end where it says nothing more
 * @param moistureWb  of the load, fraction, wet basis, 0 to 0.6
 * @returns           in the schedule's unit, per bushel; null where the load is not taken
 * @throws            RangeError outside, on NaN, on a moisture beyond the last band and on a schedule that cannot be read
 */
export function scheduleCharge(schedule: MoistureSchedule, moistureWb: number): number | null {
  assertRange('moistureWb', moistureWb, 0, WETTEST_WB);
  assertSchedule(schedule);
  if (schedule.rejectOverWb !== null && beyond(moistureWb, schedule.rejectOverWb)) return null;
  const { baseWb, perPoints, bands, banding } = schedule;
  if (!beyond(moistureWb, baseWb)) return 0;
  const reached = bands.findIndex((band) => !beyond(moistureWb, band.toWb));
  if (reached < 0) {
    const last = bands[bands.length - 1].toWb;
    throw new RangeError(`moistureWb is ${moistureWb}; the schedule ends at ${last} and has no rate beyond it.`);
  }
  const points = countedPoints((moistureWb - baseWb) * 100, schedule.stepPoints);
  if (banding === 'reached') return (bands[reached].rate * points) / perPoints;
  let charge = 0;
  let from = 0;
  for (const band of bands) {
    // A step that starts within the last band of a closed schedule is charged by that band.
    const end = band === bands[reached] ? points : Math.min(points, (band.toWb - baseWb) * 100);
    charge += (band.rate * Math.max(0, end - from)) / perPoints;
    from = end;
    if (band === bands[reached]) break;
  }
  return charge;
}

const beyond = (moistureWb: number, limitWb: number): boolean => (moistureWb - limitWb) * 100 > HAIR_POINTS;

function countedPoints(points: number, step: number | null): number {
  return step === null ? points : Math.ceil(points / step - HAIR_POINTS) * step;
}

function assertSchedule({ baseWb, perPoints, stepPoints, bands, rejectOverWb }: MoistureSchedule): void {
  assertRange('baseWb', baseWb, 0, WETTEST_WB);
  assertRange('perPoints', perPoints, 0.01, 10);
  if (stepPoints !== null) assertRange('stepPoints', stepPoints, 0.01, 10);
  if (rejectOverWb !== null) assertRange('rejectOverWb', rejectOverWb, baseWb, 1);
  if (bands.length === 0) throw new RangeError('bands is empty; a schedule needs at least one rate.');
  let below = baseWb;
  for (const [i, { toWb, rate }] of bands.entries()) {
    assertRange(`bands[${i}].rate`, rate, 0, Number.MAX_VALUE);
    if (!(toWb > below)) throw new RangeError(`bands[${i}].toWb is ${toWb}; it must lie above ${below}.`);
    below = toWb;
  }
}
