import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import packageJson from '../../package.json' with { type: 'json' };
import { fileDigits } from '../../src/base/file-digits.ts';
import type { ClientLine } from '../../src/notebook/year-end/client-line.ts';
import { CLIENTS_NOTEBOOK, type FailedClient } from '../../src/notebook/year-end/clients-page.ts';
import { renderPages } from '../../src/report/html/pages.ts';
import type { InputFile } from '../../src/report/page.ts';
import { Units } from '../../src/report/units.ts';
import type { OwnFolder } from '../folder/own-folder.ts';
import { replaceFolder } from '../folder/replace-folder.ts';
import { tablesOf } from '../review/run-review.ts';

/** What stands in the folder of a consultant's summary. */
export const SUMMARY_FOLDER: OwnFolder = {
  marks: ['index.html', 'clients.json'],
  own: /^(index\.html|clients\.json|tables)$/,
};

export interface SummaryJob {
  out: string;
  lines: readonly ClientLine[];
  failed: readonly FailedClient[];
  /** files of all clients, by client */
  inputs: readonly InputFile[];
  command: string;
  preparedBy: string | null;
  system: 'us' | 'si';
  generatedAtMs: number;
}

/** Numbers as `summary.json` gives them. */
const inFigures = (_: string, value: unknown) => (typeof value === 'number' ? fileDigits(value) : value);

/** The consultant's own summary across clients, written whole or not at all. @returns what broke in it */
export async function clientsSummary({
  out,
  lines,
  failed,
  inputs,
  command,
  preparedBy,
  system,
  generatedAtMs,
}: SummaryJob): Promise<string[]> {
  const currency = lines[0]?.currency ?? 'USD';
  const zones = new Set(lines.map(({ timeZone }) => timeZone));
  const page = CLIENTS_NOTEBOOK.page({
    lines,
    failed,
    units: new Units(system, currency, zones.size === 1 ? [...zones][0] : 'UTC'),
    made: {
      seasonTitle: 'Clients, for the consultant alone',
      farm: preparedBy,
      command,
      version: packageJson.version,
      generatedAtMs,
      inputs,
      changedDefaults: lines.length === 0 ? [] : ['each client’s own report tells what its season.yaml changes'],
    },
  });
  const [rendered] = renderPages([page]);
  const tables = tablesOf(page);
  await replaceFolder(out, SUMMARY_FOLDER, async (fresh) => {
    await writeFile(join(fresh, 'index.html'), rendered.html);
    await writeFile(join(fresh, 'clients.json'), `${JSON.stringify({ clients: lines, failed }, inFigures, 2)}\n`);
    await mkdir(join(fresh, 'tables'), { recursive: true });
    for (const table of tables.files) await writeFile(join(fresh, 'tables', `${table.name}.csv`), table.csv);
  });
  return [...rendered.failures, ...tables.failures];
}
