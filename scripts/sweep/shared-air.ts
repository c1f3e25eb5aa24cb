import type { OutdoorAir } from '../../src/analysis/strategies/outdoor-air.ts';

/** The same air in memory that all threads read, so that no task carries decades of it. */
export function sharedAir({ timeMs, tempC, humidityRatio, hourMean }: OutdoorAir): OutdoorAir {
  const bytes = new Uint8Array(new SharedArrayBuffer(hourMean.length));
  bytes.set(hourMean);
  return { timeMs: shared(timeMs), tempC: shared(tempC), humidityRatio: shared(humidityRatio), hourMean: bytes };
}

function shared(values: Float64Array): Float64Array {
  const held = new Float64Array(new SharedArrayBuffer(values.byteLength));
  held.set(values);
  return held;
}
