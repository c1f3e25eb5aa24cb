import { fanHoursBetween, pushSpan, spanList, toFanSpans } from '../fan/spans.ts';
import { FAN_OFF, FAN_ON, FAN_UNKNOWN, type FanSpans } from '../types.ts';
import { DAY_H, HOUR_MS, UNKNOWN_H } from './front-limits.ts';

/** Days to both sides of a hole of the fan log that show how the fan was run. */
const AROUND_DAYS = 7;

/**
 * A fan log whose holes of over UNKNOWN_H are filled by how the fan ran in the days around: for as many hours a day, those of the
 * day in which it ran most. So the readings within a hole keep their order and a front its clock time; fan hours are not
 * counted from it.
 *
 * @param fromMs  holes that end before stay as they are
 */
export function likelyRunning(log: FanSpans, fromMs: number): FanSpans {
  const isHole = (state: number, i: number) =>
    state === FAN_UNKNOWN && log.endMs[i] > fromMs && log.endMs[i] - log.startMs[i] > UNKNOWN_H * HOUR_MS;
  if (!log.state.some(isHole)) return log;
  const list = spanList();
  log.state.forEach((state, i) => {
    const [startMs, endMs, powerW] = [log.startMs[i], log.endMs[i], log.powerW[i]];
    if (!isHole(state, i)) {
      pushSpan(list, startMs, endMs, state, powerW);
      return;
    }
    const runs = hoursMostRun(log, startMs, endMs);
    for (let ms = startMs; ms < endMs; ) {
      const nextMs = Math.min(endMs, (Math.floor(ms / HOUR_MS) + 1) * HOUR_MS);
      pushSpan(list, ms, nextMs, runs.has(hourOf(ms)) ? FAN_ON : FAN_OFF, powerW);
      ms = nextMs;
    }
  });
  return toFanSpans(list);
}

const hourOf = (ms: number) => Math.floor(ms / HOUR_MS) % DAY_H;

/** Hours of the UTC day in which the fan most likely ran. */
function hoursMostRun(log: FanSpans, fromMs: number, toMs: number): Set<number> {
  const onH = new Float64Array(DAY_H);
  let known = 0;
  const reachMs = AROUND_DAYS * DAY_H * HOUR_MS;
  const count = (startMs: number, endMs: number) => {
    for (let ms = startMs; ms < endMs; ms += HOUR_MS) onH[hourOf(ms)] += fanHoursBetween(log, ms, ms + HOUR_MS);
    known += log.state.reduce((sum, state, i) => {
      const both = Math.min(endMs, log.endMs[i]) - Math.max(startMs, log.startMs[i]);
      return state === FAN_UNKNOWN ? sum : sum + Math.max(0, both) / HOUR_MS;
    }, 0);
  };
  count(fromMs - reachMs, fromMs);
  count(toMs, toMs + reachMs);
  const share = known > 0 ? onH.reduce((sum, hours) => sum + hours, 0) / known : 0;
  const byMost = Array.from(onH.keys()).sort((a, b) => onH[b] - onH[a]);
  return new Set(byMost.slice(0, Math.round(share * DAY_H)));
}
