import { type Estimate, estimate, withheld, Z90 } from '../../base/estimate.ts';
import { binSpans } from '../fan/bin-spans.ts';
import { fanHoursBetween, unknownHoursBetween } from '../fan/spans.ts';
import type { BinFan, FanSeason, FanSpans } from '../types.ts';
import { overlapDoubt } from './overlap-doubt.ts';

/** Clock hours in which any of the fans ran; the upper end includes what no log tells, and both whether hours of unknown moment were run at once. */
export function hoursOfFans(
  spans: FanSpans,
  fans: readonly Pick<FanSeason, 'onHoursSd' | 'spans' | 'spread'>[],
): Estimate {
  const hours = fanHoursBetween(spans);
  const { less, more } = overlapDoubt(spans, fans);
  const half = Z90 * Math.hypot(...fans.map((fan) => fan.onHoursSd ?? 0));
  return estimate(hours, Math.max(0, hours - half - less), hours + half + more + unknownHoursBetween(spans));
}

/** Fan hours of several bins' fans together, and what no log tells of them. */
export interface HoursTogether {
  hours: Estimate;
  unknownHours: number | null;
  /** null where none of the bins' hours are known */
  spans: FanSpans | null;
}

/** Of bins that share fans: clock hours in which any of these ran, so that a shared fan's hours count once. Bins whose hours are not known are left out. */
export function hoursTogether(bins: readonly { fan: BinFan }[]): HoursTogether {
  const told = bins.filter(({ fan }) => fan.hours.value !== null);
  if (told.length === 0) {
    return { hours: bins[0]?.fan.hours ?? withheld('There is no bin.'), unknownHours: null, spans: null };
  }
  if (told.length === 1) {
    const [{ fan }] = told;
    return { hours: fan.hours, unknownHours: fan.unknownHours, spans: fan.spans };
  }
  const fans = [...new Map(told.flatMap(({ fan }) => fan.fans).map((fan) => [fan.fanId, fan])).values()];
  const spans = binSpans(fans.map((fan) => fan.spans));
  return { hours: hoursOfFans(spans, fans), unknownHours: unknownHoursBetween(spans), spans };
}
