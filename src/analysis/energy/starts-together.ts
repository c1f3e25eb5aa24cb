import { untimedStretches } from '../fan/untimed-stretches.ts';
import { FAN_ON, type FanSeason, type FanSpans, type Span } from '../types.ts';

/**
 * Starts of a bin's fans taken together. Hours of which a meter tells how many, but not when, are spread over many clock hours: the
 * stretch of such a reading counts one start, and so do those of two fans that lie over each other.
 *
 * @param spans  of the fans together
 */
export function startsTogether(fans: readonly Pick<FanSeason, 'spread'>[], spans: FanSpans): number {
  const stretches = untimedStretches(fans).sort((a, b) => a.toMs - b.toMs);
  const counted = new Set<Span>();
  let starts = 0;
  for (let k = 0; k < spans.state.length; k++) {
    const ms = spans.startMs[k];
    if (spans.state[k] !== FAN_ON || (k > 0 && spans.state[k - 1] === FAN_ON)) continue;
    const around = stretches.filter(({ fromMs, toMs }) => ms >= fromMs && ms < toMs);
    const own = around.find((one) => !counted.has(one));
    if (around.length > 0 && own === undefined) continue;
    starts += 1;
    for (const one of stretches)
      if (own !== undefined && one.fromMs < own.toMs && one.toMs > own.fromMs) counted.add(one);
  }
  return starts;
}
