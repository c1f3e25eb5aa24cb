import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { toIpcFile } from '../tables/arrow.ts';
import { TABLES, type TableName } from '../tables/columns.ts';
import type { LoadedSeason, Reject } from './loaded.ts';

/**
 * Write the loaded tables as Arrow IPC files, `DIR/readings.arrow` and so on, and nothing else.
 *
 * @param dir  made if it is not there
 */
export function writeTables(loaded: LoadedSeason, dir: string): void {
  mkdirSync(dir, { recursive: true });
  for (const name of Object.keys(TABLES) as TableName[]) {
    writeFileSync(join(dir, `${name}.arrow`), toIpcFile(loaded.tables[name]));
  }
}

/** `rejects.csv`: file, line, column, the text as it stood, the reason (RFC 4180, `\n` line ends). */
export function rejectsCsv(rejects: readonly Reject[]): string {
  const rows = rejects.map(({ file, line, column, text, reason }) =>
    [textCell(file), String(line), textCell(column ?? ''), textCell(text), textCell(reason)].join(','),
  );
  return `${['file,line,column,text,reason', ...rows].join('\n')}\n`;
}

/** A text that a spreadsheet would take for a formula gets an apostrophe in front (OWASP, CSV injection). */
function textCell(text: string): string {
  const safe = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
