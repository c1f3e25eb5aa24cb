import { firstNotBefore } from '../../base/first-not-before.ts';
import { type PassingCurve, passingAt } from './passing-curve.ts';

/** The last reading holds for so many fan hours where none follows. */
const HOLDS_H = 3;

/**
 * A sensor's temperatures at every fan hour from `fromH` on.
 *
 * @param gapH  readings farther apart are not joined; the first one counts for so long before it
 * @returns     [hours], NaN where not known
 */
export function hourlyPassing(curve: PassingCurve, fromH: number, toH: number, gapH: number): Float64Array {
  const hours = Float64Array.from({ length: Math.max(2, Math.ceil(toH - fromH) + 2) }, (_, h) =>
    passingAt(curve, fromH + h, gapH),
  );
  const begun = hours.findIndex((tempC) => !Number.isNaN(tempC));
  if (begun > 0 && begun <= gapH) hours.fill(hours[begun], 0, begun);
  let ended = hours.length - 1;
  while (ended > 0 && Number.isNaN(hours[ended])) ended -= 1;
  hours.fill(hours[ended], ended + 1, Math.min(hours.length, ended + 1 + HOLDS_H));
  return hours;
}

/** Readings of a stretch, those within one fan hour averaged; both arrays are [moments]. */
export function thinnedPassing(
  curve: PassingCurve,
  fromH: number,
  toH: number,
): { fanHour: Float64Array; tempC: Float64Array } {
  const fanHour: number[] = [];
  const tempC: number[] = [];
  let openedH = Number.NEGATIVE_INFINITY;
  let count = 0;
  for (let i = firstNotBefore(curve.fanHour, fromH); i < curve.fanHour.length && curve.fanHour[i] <= toH; i++) {
    if (curve.fanHour[i] - openedH >= 0.99) {
      openedH = curve.fanHour[i];
      fanHour.push(0);
      tempC.push(0);
      count = 0;
    }
    const last = fanHour.length - 1;
    count += 1;
    fanHour[last] += (curve.fanHour[i] - fanHour[last]) / count;
    tempC[last] += (curve.tempC[i] - tempC[last]) / count;
  }
  return { fanHour: Float64Array.from(fanHour), tempC: Float64Array.from(tempC) };
}
