import { agreeing } from '../../base/agreeing.ts';
import { FLAGS } from '../../tables/flags.ts';
import { KEYS } from '../column-keys.ts';
import type { Finding } from '../loaded.ts';
import type { Holds } from '../season.ts';
import type { TableBuilder } from './table-builder.ts';

/** The flag column of a measured column: one for each in the readings, one for the row elsewhere. */
const flagColumn = (table: string, column: string) =>
  table !== 'readings' ? 'flags' : column === 'temp_c' ? 'temp_flags' : 'moisture_flags';

/**
 * Flag the second and later readings of a series at one instant, over all files; the first in the tables' order stays good.
 * A row that brings what the earlier one lacked (a meter beside a current log) is no duplicate, nor is one whose time is not believed.
 */
export function flagDuplicates(holds: Holds, table: TableBuilder): Finding[] {
  const keys = KEYS[holds];
  const time = table.number('time');
  const files = table.codes('file');
  const series = seriesCodes(
    table,
    holds === 'grain' ? ['bin', 'cable'] : holds === 'weather' ? ['role'] : keys.places,
  );
  const sensor = holds === 'grain' ? table.number('sensor') : null;
  const measured = keys.measured.map((key) => ({
    values: table.number(key.column),
    flags: flagColumn(table.name, key.column),
  }));
  const clockFlags = table.number(holds === 'grain' ? 'temp_flags' : 'flags');
  const seen = new Map<number, Map<number, number>>();
  const perFile = new Map<number, { cells: number; differ: number; fromMs: number; toMs: number }>();
  const firstRows = new Map<number, Int32Array>();
  for (let row = 0; row < table.rows; row++) {
    // A row that is known as a second one already is not counted again.
    if ((clockFlags[row] & (FLAGS.clock | FLAGS.duplicate)) !== 0) continue;
    const code = sensor === null ? series[row] : series[row] * 10_000 + sensor[row];
    let times = seen.get(code);
    if (times === undefined) {
      times = new Map();
      seen.set(code, times);
    }
    const first = times.get(time[row]);
    if (first === undefined) {
      times.set(time[row], row);
      continue;
    }
    // Which row first brought each measured value at this instant.
    let owners = firstRows.get(first);
    if (owners === undefined) {
      owners = Int32Array.from(measured, ({ values }) => (Number.isNaN(values[first]) ? -1 : first));
      firstRows.set(first, owners);
    }
    let again = 0;
    let differ = 0;
    measured.forEach(({ values, flags }, m) => {
      if (Number.isNaN(values[row])) return;
      if (owners[m] < 0) owners[m] = row;
      else {
        again += 1;
        if (values[row] !== values[owners[m]]) differ += 1;
        table.addFlag(flags, row, FLAGS.duplicate);
      }
    });
    if (again === 0) continue;
    const cells = table.name === 'readings' ? again : table.cellsOf(row);
    const found = perFile.get(files[row]);
    if (found === undefined) perFile.set(files[row], { cells, differ, fromMs: time[row], toMs: time[row] });
    else {
      found.cells += cells;
      found.differ += differ;
      found.fromMs = Math.min(found.fromMs, time[row]);
      found.toMs = Math.max(found.toMs, time[row]);
    }
  }
  const names = table.values('file');
  return [...perFile].map(([file, { cells, differ, fromMs, toMs }]) => ({
    kind: 'duplicate',
    where: names[file],
    binId: null,
    fromMs,
    toMs,
    cells,
    text: `${names[file]}: ${cells} ${agreeing(cells, 'reading stands at a time for which its', 'readings stand at a time for which their')} series already has one; ${differ === 0 ? agreeing(cells, 'it says the same', 'all say the same') : `${differ} ${agreeing(differ, 'says', 'say')} something else`}. The first is used.`,
    advice: differ === 0 ? null : 'See which of the two is right, and take the other out of the file.',
  }));
}

/** Rows numbered by what their text columns say together. */
function seriesCodes(table: TableBuilder, columns: readonly string[]): Float64Array {
  const out = new Float64Array(table.rows);
  for (const column of columns) {
    const codes = table.codes(column);
    const count = table.values(column).length;
    for (let row = 0; row < out.length; row++) out[row] = out[row] * count + codes[row];
  }
  return out;
}
