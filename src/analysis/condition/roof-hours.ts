import { vapourPressurePa } from '../../air/humidity-ratio.ts';
import { saturationPressurePa } from '../../air/saturation.ts';
import { type Estimate, estimate, withheld } from '../../base/estimate.ts';
import type { AirLog } from '../fronts/air-log.ts';
import { betweenReadings } from '../fronts/between-readings.ts';
import { FAN_ON, FAN_UNKNOWN, type FanSpans } from '../types.ts';
import type { LeavingAir } from '../water/leaving-air.ts';

const HOUR_MS = 3_600_000;
/** Weather farther off than this says nothing of an hour. */
const NEAR_MS = 3 * HOUR_MS;
/** Under a clear night sky steel is colder than the air by this much (from memory), K. */
const SKY_K = 3;
/** Of the fan hours, those of which air and weather have to be known. */
const LEAST_KNOWN = 0.5;

export interface RoofInput {
  spans: FanSpans | null;
  /** storage, ms UTC */
  fromMs: number;
  toMs: number;
  air: 'up' | 'down';
  outdoor: AirLog;
  stationPa: number;
  leaving: ((ms: number) => LeavingAir | null) | null;
}

/**
 * Fan hours in which the air that leaves the grain holds more water than it can at the temperature of the roof, so that it may
 * wet the steel. The middle takes the roof to be as warm as the outdoor air, the lower end grain half a point drier, the upper
 * end half a point wetter grain and steel as cold as under a clear night sky; hours that nobody can tell stand in the upper end.
 */
export function roofHours({ spans, fromMs, toMs, air, outdoor, stationPa, leaving }: RoofInput): Estimate {
  if (air === 'down') return withheld('The air is drawn down: what leaves the grain does not meet the roof.');
  if (spans === null) return withheld('No log tells when every fan of this bin ran.');
  if (leaving === null) return withheld('No isotherm of the crop tells how damp the leaving air is.');
  let middle = 0;
  let low = 0;
  let high = 0;
  let known = 0;
  let open = 0;
  let isLogged = false;
  for (let i = 0; i < spans.state.length; i++) {
    const start = Math.max(spans.startMs[i], fromMs);
    const end = Math.min(spans.endMs[i], toMs);
    if (end > start && spans.state[i] !== FAN_UNKNOWN) isLogged = true;
    if (spans.state[i] !== FAN_ON) continue;
    for (let ms = start; ms < end; ms += HOUR_MS) {
      const hours = (Math.min(end, ms + HOUR_MS) - ms) / HOUR_MS;
      const at = ms + (hours * HOUR_MS) / 2;
      const [steelC] = betweenReadings(outdoor.timeMs, outdoor.tempC, Float64Array.of(at), NEAR_MS);
      const out = Number.isNaN(steelC) ? null : leaving(at);
      if (out === null) {
        open += hours;
        continue;
      }
      known += hours;
      const wets = (ratio: number, tempC: number) =>
        vapourPressurePa(ratio, stationPa) > saturationPressurePa(Math.max(-60, tempC));
      const drier = out.ratio - (out.wetter - out.ratio);
      if (wets(out.ratio, steelC)) middle += hours;
      if (wets(Math.min(out.ratio, drier), steelC)) low += hours;
      if (wets(Math.max(out.ratio, out.wetter), steelC - SKY_K)) high += hours;
    }
  }
  if (!isLogged) return withheld('The log of the fans tells nothing of the storage.');
  if (known + open === 0) return estimate(0, 0, 0);
  if (known < LEAST_KNOWN * (known + open))
    return withheld('Of more than half of the fan hours the leaving air or the outdoor air is not known.');
  return estimate(middle, Math.min(low, middle), Math.max(high, middle) + open);
}
