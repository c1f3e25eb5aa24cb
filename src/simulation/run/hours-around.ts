import type { Hours } from './hours.ts';

const DAY_H = 24;

/** What a controller knows of the hours around each hour, [hours]. */
export interface HoursAround {
  /** mean of the 24 hours from each hour on (fewer at the end), money per kWh; NaN where one of them has none */
  dayPricePerKwh: Float64Array;
  /** mean outdoor temperature of the 24 hours before each hour (fewer at the start, the first hour's own at the first), degC */
  dayMeanC: Float64Array;
}

/** The same weather and tariff serve many runs. */
const KNOWN = new WeakMap<Hours, HoursAround>();

export function hoursAround(hours: Hours): HoursAround {
  const known = KNOWN.get(hours);
  if (known !== undefined) return known;
  const made = {
    dayPricePerKwh: hours.pricePerKwh.map((_, hour, all) => meanOf(all, hour, Math.min(all.length, hour + DAY_H))),
    dayMeanC: hours.tempC.map((own, hour, all) => (hour === 0 ? own : meanOf(all, Math.max(0, hour - DAY_H), hour))),
  };
  KNOWN.set(hours, made);
  return made;
}

function meanOf(values: Float64Array, from: number, to: number): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += values[i];
  return sum / (to - from);
}
