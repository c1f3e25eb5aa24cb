import { WORKING_PRESSURE_PA } from '../../season/checks/dead-current.ts';
import { onAt } from '../fan/spans.ts';
import { HOUR_MS } from '../fronts/front-limits.ts';
import { FAN_OFF, FAN_ON, type FanSpans } from '../types.ts';
import type { FanShares } from './fan-shares.ts';

/** So much of the logged hours, with the fan on and with it off, the pressure must tell rightly before it may speak for silent ones. */
const LEAST_RIGHT = 0.9;
const LEAST_READINGS = 24;

/**
 * Hours of which the fan's log says nothing, told by the static pressure in the plenum where that tells the logged hours rightly: a bed
 * that is played with a fan standing still while it blew is off by a front for as long as one takes to pass.
 *
 * @param rows  columns `time` and `static_pressure_pa` of the plenum, time order
 * @returns     the shares with what could be told, and the fan hours among that
 */
export function sharesByPressure(
  fan: FanShares,
  spans: FanSpans,
  rows: Readonly<Record<string, Float64Array>>,
  startMs: number,
): { fan: FanShares; foundH: number } {
  const { time, static_pressure_pa: pressure } = rows;
  const told = [...time.keys()].filter((row) => !Number.isNaN(pressure[row]));
  if (!fan.unknown.some((part) => part > 0) || !isTrue(told, time, pressure, spans)) return { fan, foundH: 0 };
  const on = fan.on.slice();
  const unknown = fan.unknown.slice();
  let foundH = 0;
  let next = 0;
  for (let hour = 0; hour < on.length; hour++) {
    if (unknown[hour] === 0) continue;
    const midMs = startMs + (hour + 0.5) * HOUR_MS;
    while (next + 1 < told.length && Math.abs(time[told[next + 1]] - midMs) <= Math.abs(time[told[next]] - midMs))
      next++;
    if (Math.abs(time[told[next]] - midMs) > HOUR_MS) continue;
    if (isWorking(pressure[told[next]])) {
      on[hour] += unknown[hour];
      foundH += unknown[hour];
    }
    unknown[hour] = 0;
  }
  return { fan: { on, unknown }, foundH };
}

const isWorking = (pressurePa: number) => Math.abs(pressurePa) >= WORKING_PRESSURE_PA;

/** A gauge that froze, or a fan whose pressure is too little to be told from none, tells no hours. */
function isTrue(told: readonly number[], time: Float64Array, pressure: Float64Array, spans: FanSpans): boolean {
  return [FAN_ON, FAN_OFF].every((state) => {
    const rows = told.filter((row) => onAt(spans, time[row]) === state);
    const right = rows.filter((row) => isWorking(pressure[row]) === (state === FAN_ON)).length;
    return rows.length >= LEAST_READINGS && right >= LEAST_RIGHT * rows.length;
  });
}
