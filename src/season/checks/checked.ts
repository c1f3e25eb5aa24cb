import { FLAGS } from '../../tables/flags.ts';
import type { SensorSeries } from '../../tables/sensors.ts';
import type { Bin } from '../season.ts';
import type { Roster } from './places.ts';
import type { AirSwing } from './swing.ts';
import { leaveOut, type Track, trackOf } from './track.ts';
import type { ShowUnits } from './wording.ts';

export type Cell = 'temp' | 'moisture';

/** A sensor under check: its cells, and the bits that the checks set so far, by reading. */
export interface Checked {
  series: SensorSeries;
  temp: Track;
  moisture: Track;
  tempBits: Uint8Array;
  moistureBits: Uint8Array;
  /** STILL, MOVING or UNKNOWN by reading */
  air: Uint8Array;
}

/** What the checks of one bin work with. */
export interface BinCheck {
  bin: Bin;
  sensors: Checked[];
  roster: Roster;
  show: ShowUnits;
  /** the farm's outdoor air; null where there is none */
  outdoor: { swing: AirSwing; daily: ReadonlyMap<number, number> } | null;
  /** temperature unit that the sensor's files state; null where unknown or mixed */
  saidUnit: (sensor: Checked) => 'degF' | 'degC' | null;
}

export function checkedOf(series: SensorSeries, air: Uint8Array): Checked {
  return {
    series,
    temp: trackOf(series.timeMs, series.tempC, series.tempFlags),
    moisture: trackOf(series.timeMs, series.moistureWb, series.moistureFlags),
    tempBits: new Uint8Array(series.rows.length),
    moistureBits: new Uint8Array(series.rows.length),
    air,
  };
}

/** Flag cells of a sensor that have a value, and take them out of what later checks see. Returns how many. */
export function flagCells(sensor: Checked, cell: Cell, positions: Iterable<number>, flag: keyof typeof FLAGS): number {
  const bits = cell === 'temp' ? sensor.tempBits : sensor.moistureBits;
  const { values } = sensor[cell];
  let count = 0;
  const out: number[] = [];
  for (const i of positions) {
    if (!Number.isFinite(values[i]) || (bits[i] & FLAGS[flag]) !== 0) continue;
    bits[i] |= FLAGS[flag];
    out.push(i);
    count += 1;
  }
  leaveOut(sensor[cell], out);
  return count;
}
