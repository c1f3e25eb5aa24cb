import { type Estimate, estimate, withheld } from '../../base/estimate.ts';
import type { BinMoisture } from '../types.ts';

/**
 * The bin's moisture at the end and its points with one sensor's offset taken off, by the share of the grain that it stands
 * for. Where the same sensors tell the start too the offset cancels in the points.
 *
 * @param offset  sensor less probes, points, with a value
 */
export function correctedForSensor(
  { start, end, shares, pointsRemoved }: BinMoisture,
  cable: string,
  sensor: number,
  offset: Estimate,
): { end: Estimate; pointsRemoved: Estimate } {
  const own = shares.find((one) => one.cable === cable && one.sensor === sensor);
  if (end.from !== 'sensors' || end.value === null)
    return both('The end is not told by sensors, so there is nothing to correct.');
  if (own === undefined || own.endWb === null) return both('This sensor does not tell the moisture at the end.');
  const whole: Estimate = { value: end.value, interval: end.interval ?? null, why: null };
  return {
    end: lessBy(whole, own.share / 100, offset),
    pointsRemoved:
      start.from === 'sensors' || pointsRemoved.value === null
        ? pointsRemoved
        : lessBy(pointsRemoved, -own.share, offset),
  };
}

function both(why: string) {
  return { end: withheld(why), pointsRemoved: withheld(why) };
}

/** The offset's half-width joins the number's own as a square: the samples know nothing of the other sensors. */
function lessBy({ value, interval }: Estimate, part: number, offset: Estimate): Estimate {
  const less = Number(value) - part * Number(offset.value);
  const half = (Math.abs(part) * (offset.interval![1] - offset.interval![0])) / 2;
  const [low, high] = interval ?? [Number(value), Number(value)];
  return estimate(less, less - Math.hypot(Number(value) - low, half), less + Math.hypot(high - Number(value), half));
}
