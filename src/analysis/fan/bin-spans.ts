import { FAN_OFF, FAN_ON, FAN_UNKNOWN, type FanSpans } from '../types.ts';
import { edgesTogether } from './edges-together.ts';
import { pushSpan, spanIndexAt, spanList, toFanSpans } from './spans.ts';

/**
 * A bin's fans together: on while any is known to run, else unknown while any is unknown, else off; power summed.
 * Spans the time from the first fan's first moment to the last fan's last; a fan outside its own log is unknown.
 * Starts and stops that a log leaves unsure are set where they are to be expected, those of fans switched together as one.
 * Where one fan runs and another is unknown the power of the known ones stands: what is known, not the whole.
 */
export function binSpans(fans: readonly FanSpans[]): FanSpans {
  const told = fans.filter((fan) => fan.state.length > 0);
  if (told.length <= 1) return told[0] ?? toFanSpans(spanList());
  const logged = edgesTogether(told);
  const edges = new Set<number>();
  for (const fan of logged) {
    for (const ms of fan.startMs) edges.add(ms);
    edges.add(fan.endMs[fan.endMs.length - 1]);
  }
  const cuts = Float64Array.from(edges).sort();
  const at = logged.map((fan) => spanIndexAt(fan, cuts[0]));
  const list = spanList();
  for (let k = 0; k + 1 < cuts.length; k++) {
    let state: number = FAN_OFF;
    let powerW = 0;
    logged.forEach((fan, f) => {
      while (at[f] + 1 < fan.startMs.length && fan.startMs[at[f] + 1] <= cuts[k]) at[f] += 1;
      const index = at[f];
      const own = index < 0 || cuts[k] >= fan.endMs[index] ? FAN_UNKNOWN : fan.state[index];
      if (own === FAN_ON) {
        state = FAN_ON;
        powerW += fan.powerW[index];
      } else if (own === FAN_UNKNOWN && state === FAN_OFF) state = FAN_UNKNOWN;
    });
    pushSpan(list, cuts[k], cuts[k + 1], state, state === FAN_UNKNOWN ? Number.NaN : powerW);
  }
  return toFanSpans(list);
}
