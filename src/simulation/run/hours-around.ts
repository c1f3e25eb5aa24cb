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
  const count = tempC.length;
  const made: HoursAround = {
    cheapestPerKwh: new Float64Array(count),
    dearestPerKwh: new Float64Array(count),
    dayMeanC: new Float64Array(count),
  };
  for (let hour = 0; hour < count; hour++) {
    const to = Math.min(count, hour + DAY_H);
    let [cheapest, dearest] = [pricePerKwh[hour], pricePerKwh[hour]];
    for (let h = hour + 1; h < to; h++) {
      // An hour without a price makes both NaN, as it should.
      cheapest = Math.min(cheapest, pricePerKwh[h]);
      dearest = Math.max(dearest, pricePerKwh[h]);
    }
    made.cheapestPerKwh[hour] = cheapest;
    made.dearestPerKwh[hour] = dearest;
    made.dayMeanC[hour] = hour === 0 ? tempC[0] : meanOf(tempC, Math.max(0, hour - DAY_H), hour);
  }
  KNOWN.set(hours, made);
  return made;
}

/** Of values from `from` to before `to`. */
function meanOf(values: Float64Array, from: number, to: number): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += values[i];
  return sum / (to - from);
}
