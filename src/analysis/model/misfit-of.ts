import type { FitSamples } from './fit-samples.ts';
import type { Misfit } from './model-types.ts';
import type { Shown } from './play-cable.ts';

/**
 * How far what the bed's sensors show lies from the log, over fan-on hours and the 48 hours after.
 *
 * @param shown     by cable, as `playCable` gives them
 * @param biasWb    what the cables read too much
 * @param offsetsWb what each sensor reads too much beside, [cables][sensors]; null: nothing
 * @param from, to  hours read, [from, to)
 */
export function misfitOf(
  samples: FitSamples,
  shown: readonly Pick<Shown, 'tempC' | 'moistureWb'>[],
  biasWb: number,
  offsetsWb: readonly Float64Array[] | null,
  from: number,
  to: number,
): Misfit {
  const temperature = { sum: 0, count: 0 };
  const moisture = { sum: 0, count: 0 };
  samples.cables.forEach((own, cable) => {
    for (let read = from; read < to; read++) {
      if (samples.near[read] === 0) continue;
      for (let i = read * own.sensors; i < (read + 1) * own.sensors; i++) {
        add(temperature, shown[cable].tempC[i] - own.tempC[i]);
        const tooMuch = biasWb + (offsetsWb?.[cable][i % own.sensors] ?? 0);
        add(moisture, 100 * (shown[cable].moistureWb[i] + tooMuch - own.moistureWb[i]));
      }
    }
  });
  return {
    temperatureK: Math.sqrt(temperature.sum / temperature.count),
    moisturePoints: Math.sqrt(moisture.sum / moisture.count),
    temperatures: temperature.count,
    moistures: moisture.count,
  };
}

function add(into: { sum: number; count: number }, off: number): void {
  if (Number.isNaN(off)) return;
  into.sum += off * off;
  into.count += 1;
}

/** What each sensor last showed before an hour, held from then on. */
export function persisting(samples: FitSamples, from: number): Pick<Shown, 'tempC' | 'moistureWb'>[] {
  const hold = (values: Float64Array, sensors: number) => {
    const out = values.slice();
    const last = new Float64Array(sensors).fill(Number.NaN);
    for (let i = 0; i < values.length; i++) {
      const sensor = i % sensors;
      if (i < from * sensors) {
        if (!Number.isNaN(values[i])) last[sensor] = values[i];
      } else out[i] = last[sensor];
    }
    return out;
  };
  return samples.cables.map(({ sensors, tempC, moistureWb }) => ({
    tempC: hold(tempC, sensors),
    moistureWb: hold(moistureWb, sensors),
  }));
}
