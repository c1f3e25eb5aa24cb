import { unknownHoursBetween } from '../fan/spans.ts';
import { FAN_UNKNOWN, type FanSeason, type FanSpans } from '../types.ts';

/** A fan whose log begins later, or ends earlier, than those of the bin's other fans: unknown there, in hours and in energy. */
export function besideOthers(fan: FanSeason, whole: FanSpans): FanSeason {
  const { startMs, endMs, state, powerW } = fan.spans;
  const last = endMs.length - 1;
  const before = whole.startMs[0] < startMs[0] ? [[whole.startMs[0], startMs[0]]] : [];
  const wholeEndMs = whole.endMs[whole.endMs.length - 1];
  const after = wholeEndMs > endMs[last] ? [[endMs[last], wholeEndMs]] : [];
  if (before.length + after.length === 0) return fan;
  const joined = (own: Float64Array, of: (span: readonly number[]) => number) =>
    Float64Array.from([...before.map(of), ...own, ...after.map(of)]);
  const spans: FanSpans = {
    startMs: joined(startMs, ([from]) => from),
    endMs: joined(endMs, ([, to]) => to),
    state: Uint8Array.from([...before.map(() => FAN_UNKNOWN), ...state, ...after.map(() => FAN_UNKNOWN)]),
    powerW: joined(powerW, () => Number.NaN),
  };
  return { ...fan, spans, unknownHours: unknownHoursBetween(spans) };
}
