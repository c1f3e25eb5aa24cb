import type { Table } from 'apache-arrow';
import * as aq from 'arquero';
import { toIpcFile } from './arrow.ts';

/** How many readings a cable gave, and how many of them stand. */
export interface CableReadings {
  bin: string;
  cable: string;
  /** sensors that gave any */
  sensors: number;
  /** rows of the readings table */
  readings: number;
  temperatures: number;
  moistures: number;
  /** cells with a flag */
  flagged: number;
}

/** The readings table rolled up by bin and cable, in order of their ids. */
export function readingsByCable(readings: Table): CableReadings[] {
  if (readings.numRows === 0) return [];
  // The two libraries exchange tables as IPC bytes.
  return aq
    .fromArrow(toIpcFile(readings))
    .derive({
      temperature: (d: { temp_c: number | null }) => (d.temp_c === null ? 0 : 1),
      moisture: (d: { moisture_wb: number | null }) => (d.moisture_wb === null ? 0 : 1),
      flagged: (d: { temp_c: number | null; moisture_wb: number | null; temp_flags: number; moisture_flags: number }) =>
        (d.temp_c !== null && d.temp_flags > 0 ? 1 : 0) + (d.moisture_wb !== null && d.moisture_flags > 0 ? 1 : 0),
    })
    .groupby('bin', 'cable')
    .rollup({
      sensors: (d: { sensor: number }) => aq.op.distinct(d.sensor),
      readings: () => aq.op.count(),
      temperatures: (d: { temperature: number }) => aq.op.sum(d.temperature),
      moistures: (d: { moisture: number }) => aq.op.sum(d.moisture),
      flagged: (d: { flagged: number }) => aq.op.sum(d.flagged),
    })
    .orderby('bin', 'cable')
    .objects() as CableReadings[];
}
