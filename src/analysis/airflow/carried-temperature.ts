import { PROFILE_STEPS } from './start-profile.ts';

/** What is known of a way between two sensors before its airflow is. */
export interface CarriedWay {
  /** first sensor at every fan hour since the run began, degC */
  sourceC: Float64Array;
  /** the time that each of these takes over that of the mean temperature, [as sourceC] */
  pace: Float64Array;
  /** grain between the sensors as the run began, degC, [PROFILE_STEPS + 1] */
  beginC: Float64Array;
}

/**
 * Temperature that arrives at the second sensor: each part of a spread change left the first one its own time before, or lay
 * between the two as the run began.
 *
 * @param hours     moments at the second sensor, fan hours since the run began
 * @param delayH    mean time on the way at the mean temperature
 * @param arrivals  over the mean time, as `spreadArrivals`
 * @param out       [as hours], written: degC, NaN where the first sensor is not known
 */
export function carriedTemperature(
  { sourceC, pace, beginC }: CarriedWay,
  hours: Float64Array,
  delayH: number,
  arrivals: Float64Array,
  out: Float64Array,
): void {
  const last = sourceC.length - 1;
  for (let j = 0; j < hours.length; j++) {
    let sum = 0;
    for (let k = 0; k < arrivals.length; k++) {
      // Warm grain carries a change faster: the pace is that of the temperature which would have left at the mean pace.
      const mean = hours[j] - delayH * arrivals[k];
      const late = delayH * arrivals[k] * (mean > 0 ? pace[Math.min(last, Math.round(mean))] : pace[0]);
      const left = hours[j] - late;
      if (left < 0) sum += beginC[Math.min(PROFILE_STEPS, Math.round((-left / late) * PROFILE_STEPS))];
      else {
        const i = Math.floor(left);
        sum += i >= last ? sourceC[last] : sourceC[i] + (left - i) * (sourceC[i + 1] - sourceC[i]);
      }
    }
    out[j] = sum / arrivals.length;
  }
}
