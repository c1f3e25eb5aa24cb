import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { csvText } from '../base/csv-text.ts';
import { toIpcFile } from '../tables/arrow.ts';
import { TABLES, type TableName } from '../tables/columns.ts';
import { toParquetFile } from '../tables/parquet.ts';
import type { LoadedSeason, Reject } from './loaded.ts';

/**
 * Write the loaded tables as Arrow IPC files, `DIR/readings.arrow` and so on, and nothing else.
 *
 * @param dir      made if it is not there
 * @param parquet  write each as `DIR/readings.parquet` too; false
 */
export function writeTables(loaded: LoadedSeason, dir: string, parquet = false): void {
  mkdirSync(dir, { recursive: true });
  for (const name of Object.keys(TABLES) as TableName[]) {
    writeFileSync(join(dir, `${name}.arrow`), toIpcFile(loaded.tables[name]));
    if (parquet) writeFileSync(join(dir, `${name}.parquet`), toParquetFile(name, loaded.tables[name]));
  }
}

/** `rejects.csv`: file, line, column, the text as it stood, the reason (RFC 4180, `\n` line ends). */
export function rejectsCsv(rejects: readonly Reject[]): string {
  const rows = rejects.map(({ file, line, column, text, reason }) =>
    [csvText(file), String(line), csvText(column ?? ''), csvText(text), csvText(reason)].join(','),
  );
  return `${['file,line,column,text,reason', ...rows].join('\n')}\n`;
}
