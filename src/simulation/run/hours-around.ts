import type { Hours } from './hours.ts';

const DAY_H = 24;

/** What a controller knows of the hours around each hour, [hours]. */
export interface HoursAround {
  /** cheapest and dearest of the 24 hours from each hour on (fewer at the end), money per kWh; NaN where one has no price */
  cheapestPerKwh: Float64Array;
  dearestPerKwh: Float64Array;
  /** mean outdoor temperature of the 24 hours before each hour (fewer at the start, the first hour's own at the first), degC */
  dayMeanC: Float64Array;
}

/** The same weather and tariff serve many runs. */
const KNOWN = new WeakMap<Hours, HoursAround>();

export function hoursAround(hours: Hours): HoursAround {
  const known = KNOWN.get(hours);
  if (known !== undefined) return known;
  const { pricePerKwh, tempC } = hours;
  const ahead = (hour: number) => pricePerKwh.subarray(hour, hour + DAY_H);
  const made = {
    cheapestPerKwh: pricePerKwh.map((_, hour) => Math.min(...ahead(hour))),
    dearestPerKwh: pricePerKwh.map((_, hour) => Math.max(...ahead(hour))),
    dayMeanC: tempC.map((own, hour) => (hour === 0 ? own : meanOf(tempC.subarray(Math.max(0, hour - DAY_H), hour)))),
  };
  KNOWN.set(hours, made);
  return made;
}

function meanOf(values: Float64Array): number {
  let sum = 0;
  for (const value of values) sum += value;
  return sum / values.length;
}
