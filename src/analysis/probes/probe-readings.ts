import type { Table } from 'apache-arrow';
import { rowsWhere } from '../../tables/sensors.ts';
import type { ProbeReading } from './probe-types.ts';

/** The hand samples of a bin that are believed and have a moisture, in time order, and how many are left out. */
export function probeReadings(probes: Table, binId: string): { readings: ProbeReading[]; leftOut: number } {
  const names = ['time', 'height_m', 'from_centre_m', 'moisture_wb', 'temp_c', 'flags'];
  const rows = rowsWhere(probes, 'bin', binId, names);
  const all = [...rows.time.keys()];
  const good = all.filter(
    (i) => rows.flags[i] === 0 && rows.moisture_wb[i] > 0 && rows.moisture_wb[i] < 1 && !Number.isNaN(rows.time[i]),
  );
  return {
    readings: good.map((i) => ({
      timeMs: rows.time[i],
      heightM: rows.height_m[i],
      fromCentreM: rows.from_centre_m[i],
      moistureWb: rows.moisture_wb[i],
      tempC: rows.temp_c[i],
    })),
    leftOut: all.length - good.length,
  };
}
