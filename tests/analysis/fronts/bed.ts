/** A column of grain that air passes through: heat carried upwards from layer to layer, nothing else. */
export interface Bed {
  /** height of the grain above where the air enters, m */
  depthM: number;
  /** front speed with the fan on, m/h */
  speedMH: number;
  /** layers: the fewer, the wider the front spreads */
  layers: number;
  /** temperature at the start, C, by distance from where the air enters */
  startC: (fromEntryM: number) => number;
}

/** Noise-free temperatures of some places, [places][steps], steps of `stepH` from hour 0. */
export interface BedRun {
  stepH: number;
  on: Uint8Array;
  tempC: Float64Array[];
}

/**
 * Upwind transport: each layer of the bed takes on the temperature of the layer before it at speed/thickness.
 *
 * @param airC  entering air at an hour
 * @param onAt  whether the fan runs in the step that begins at an hour
 */
export function runBed(
  bed: Bed,
  placesM: readonly number[],
  hours: number,
  stepH: number,
  airC: (hour: number) => number,
  onAt: (hour: number) => boolean,
): BedRun {
  const { depthM, speedMH, layers, startC } = bed;
  const thickM = depthM / layers;
  const parts = Math.max(1, Math.ceil((2 * speedMH * stepH) / thickM));
  const courant = (speedMH * stepH) / parts / thickM;
  const temp = Float64Array.from({ length: layers }, (_, i) => startC((i + 0.5) * thickM));
  const steps = Math.round(hours / stepH) + 1;
  const on = new Uint8Array(steps);
  const tempC = placesM.map(() => new Float64Array(steps));
  const read = (placeM: number) => {
    const at = Math.min(layers - 1.001, Math.max(0, placeM / thickM - 0.5));
    const low = Math.floor(at);
    return temp[low] + (at - low) * (temp[Math.min(layers - 1, low + 1)] - temp[low]);
  };
  for (let step = 0; step < steps; step++) {
    for (let place = 0; place < placesM.length; place++) tempC[place][step] = read(placesM[place]);
    on[step] = onAt(step * stepH) ? 1 : 0;
    if (on[step] === 0) continue;
    for (let part = 0; part < parts; part++) {
      const air = airC((step + (part + 0.5) / parts) * stepH);
      for (let i = layers - 1; i > 0; i--) temp[i] += courant * (temp[i - 1] - temp[i]);
      temp[0] += courant * (air - temp[0]);
    }
  }
  return { stepH, on, tempC };
}
