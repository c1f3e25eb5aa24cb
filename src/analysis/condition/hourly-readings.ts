import type { SensorSeries } from '../../tables/sensors.ts';

const HOUR_MS = 3_600_000;

/** A sensor's first good readings of each hour: the air over the grain changes no faster, and a log of every ten minutes costs six times the work. */
export function hourlyReadings(series: SensorSeries): SensorSeries {
  const { timeMs, tempC, moistureWb, tempFlags, moistureFlags, rows } = series;
  const kept: number[] = [];
  let hour = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < timeMs.length; i++) {
    const good =
      tempFlags[i] === 0 && moistureFlags[i] === 0 && !Number.isNaN(tempC[i]) && !Number.isNaN(moistureWb[i]);
    const own = Math.floor(timeMs[i] / HOUR_MS);
    if (!good || own === hour) continue;
    hour = own;
    kept.push(i);
  }
  return {
    ...series,
    timeMs: Float64Array.from(kept, (i) => timeMs[i]),
    tempC: Float64Array.from(kept, (i) => tempC[i]),
    moistureWb: Float64Array.from(kept, (i) => moistureWb[i]),
    tempFlags: new Uint8Array(kept.length),
    moistureFlags: new Uint8Array(kept.length),
    rows: Int32Array.from(kept, (i) => rows[i]),
  };
}
