import type { TableName } from '../tables/columns.ts';
import { FLAGS, type FlagName } from '../tables/flags.ts';
import type { SeasonFlags } from './checks/check-season.ts';
import type { LoadReport } from './loaded.ts';
import type { TableBuilder } from './readers/table-builder.ts';

/**
 * Add the checks' flags to those of the loader, and count the cells that carry each: a reading for itself,
 * in tables with one flag for the row each value that the file gave.
 */
export function joinFlags(
  builders: ReadonlyMap<TableName, TableBuilder>,
  flags: SeasonFlags,
): LoadReport['totals']['flagged'] {
  const flagged = { stuck: 0, spike: 0, headspace: 0, duplicate: 0, clock: 0, unit: 0 };
  const count = (bits: number, cells: number) => {
    if (bits === 0 || cells === 0) return;
    for (const name of Object.keys(FLAGS) as FlagName[]) if ((bits & FLAGS[name]) !== 0) flagged[name] += cells;
  };
  const join = (table: TableBuilder, column: string, more: Uint8Array, cellsOf: (row: number) => number) => {
    for (let row = 0; row < table.rows; row++) if (more[row] !== 0) table.addFlag(column, row, more[row]);
    const all = table.number(column);
    for (let row = 0; row < table.rows; row++) count(all[row], cellsOf(row));
  };
  const readings = builders.get('readings')!;
  const oneIf = (column: string) => {
    const values = readings.number(column);
    return (row: number) => (Number.isNaN(values[row]) ? 0 : 1);
  };
  join(readings, 'temp_flags', flags.readings.temp, oneIf('temp_c'));
  join(readings, 'moisture_flags', flags.readings.moisture, oneIf('moisture_wb'));
  for (const name of ['fan', 'plenum', 'weather', 'tickets', 'probes'] as const) {
    const table = builders.get(name)!;
    join(table, 'flags', flags[name] ?? new Uint8Array(table.rows), (row) => table.cellsOf(row));
  }
  return flagged;
}
