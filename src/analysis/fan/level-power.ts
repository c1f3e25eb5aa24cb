import { FAN_ON } from '../types.ts';

/** Samples this far apart in power, as a part of it, are of one level: a motor's noise and no heater or second speed. */
const ALIKE = 0.1;
/** How far around a sample its level is looked for: long against noise, short against weather and rising pressure, ms. */
const AROUND_MS = 3 * 3_600_000;
const MOST_SAMPLES = 24;

/**
 * Sampled power with the noise of its readings taken out: each on sample becomes the mean of those like it within three
 * hours of the same run. A motor's load moves slowly, but the highest of thousands of noisy quarter hours would be a
 * peak that no meter saw, and a demand charge is priced by it.
 *
 * @param timeMs  [samples]
 * @param watt    [samples]
 * @param state   [samples]
 */
export function levelPower(timeMs: Float64Array, watt: Float64Array, state: Uint8Array): Float64Array {
  return watt.map((own, i) => {
    if (state[i] !== FAN_ON || !(own > 0)) return own;
    let sum = own;
    let count = 1;
    for (const step of [-1, 1]) {
      for (let k = 1; k <= MOST_SAMPLES; k++) {
        const j = i + step * k;
        if (j < 0 || j >= watt.length || state[j] !== FAN_ON || Math.abs(timeMs[j] - timeMs[i]) > AROUND_MS) break;
        if (!(Math.abs(watt[j] - own) <= ALIKE * own)) continue;
        sum += watt[j];
        count += 1;
      }
    }
    return sum / count;
  });
}
