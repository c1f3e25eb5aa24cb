import { type FileReading, isOutside } from '../file-reading.ts';

/** Beyond it, in any unit, lies nothing that a station reports. */
const LARGEST = 1e9;

/** One measured cell of an archive's row. */
export interface ArchiveCell {
  column: 'temp_c' | 'dew_point_c' | 'rh' | 'pressure_pa';
  /** as the file names it, for rejects */
  header: string;
  text: string;
  /** SI; null: missing; a text: why it is rejected */
  value: number | string | null;
}

/**
 * Put a row of an archive into the weather table and count its cells.
 *
 * @param timeMs  UTC: the instant of an observation, the start of an hour's mean
 * @param width   how many cells a row has
 * @param cells   worked out only for a row inside the season
 * @returns       the row of the table; -1 where it lies outside the season
 */
export function addArchiveRow(
  reading: FileReading,
  line: number,
  timeMs: number,
  width: number,
  cells: () => readonly ArchiveCell[],
): number {
  const { table, tally, spec, path } = reading;
  if (isOutside(reading, timeMs)) {
    tally.outside += width;
    return -1;
  }
  const at = table.addRow();
  table.setNumber('time', at, timeMs);
  table.setText('role', at, spec.role);
  table.setText('file', at, path);
  tally.keptRow(timeMs);
  for (const { column, header, text, value } of cells()) {
    if (value === null) tally.missing += 1;
    else if (typeof value === 'string') tally.rejectCell(line, header, text, value);
    // Written so that NaN fails: a pressure that cannot be brought to the site's height comes out as it.
    else if (!(Math.abs(value) <= LARGEST)) tally.rejectCell(line, header, text, 'is no number that air can have');
    else {
      tally.kept += 1;
      table.keepCell(at);
      table.setNumber(column, at, value);
    }
  }
  return at;
}
