import type { Page, Table } from '../page.ts';
import { html, type Markup } from './markup.ts';
import { renderTable } from './table.ts';

const NO_ROWS = 'This file is no log: it holds numbers that were worked out before.';

/** "How this page was made": enough to make it again, and to see whether it was made from the same files. */
export function renderMadeBy(page: Page, what = 'page'): Markup {
  const { madeBy, units } = page;
  const span = (rows: number | null, ms: number | null) =>
    ms ?? { value: null, why: rows === null ? NO_ROWS : 'No row of this file was kept.' };
  const table: Table = {
    id: 'inputs',
    caption: 'Files read',
    columns: [
      { key: 'path', label: 'File', quantity: null },
      { key: 'rows', label: 'Rows', quantity: 'count' },
      { key: 'first', label: 'First', quantity: 'day' },
      { key: 'last', label: 'Last', quantity: 'day' },
      { key: 'bytes', label: 'Size', quantity: 'bytes' },
      { key: 'hash', label: 'Fingerprint', quantity: null },
    ],
    rows: madeBy.inputs.map((file) => ({
      path: file.path,
      rows: file.rows ?? { value: null, why: NO_ROWS },
      first: span(file.rows, file.firstMs),
      last: span(file.rows, file.lastMs),
      bytes: file.bytes,
      hash: file.sha256.slice(0, 16),
    })),
    empty: 'none.',
  };
  return html`<section aria-labelledby="made"><h2 id="made">How this ${what} was made</h2>
<p>By fanbook ${madeBy.version} on ${units.dateTime(madeBy.generatedAtMs)}, with <code>${madeBy.command}</code>. Times on this ${what} are by the clock of ${units.zone.name}.</p>
<p>${madeBy.changedDefaults.length === 0 ? 'season.yaml changes none of the kit’s own assumptions.' : 'Where season.yaml says other than the kit’s own assumptions, its word is used:'}</p>
${madeBy.changedDefaults.length > 0 && html`<ul>${madeBy.changedDefaults.map((one) => html`<li>${one}</li>`)}</ul>`}
${renderTable(table, units, 'made-inputs')}<p class="note">The fingerprint (first 16 characters of SHA-256) of a file changes with any change in it.</p></section>`;
}
