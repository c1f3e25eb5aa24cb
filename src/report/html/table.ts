import type { Cell, Column, Table } from '../page.ts';
import type { Units } from '../units.ts';
import { type CellText, cellText, cellValue } from './cell.ts';
import { html, type Markup } from './markup.ts';

type Row = Readonly<Record<string, Cell>>;

/** Reasons of dashes, numbered under the table: reachable without script, by keyboard and on paper. */
class Reasons {
  readonly list: string[] = [];
  number(why: string): number {
    if (!this.list.includes(why)) this.list.push(why);
    return this.list.indexOf(why) + 1;
  }
}

/** Rows of the lowest and the highest number of a column that asks for them; none where all are alike. */
function markedRows(rows: readonly Row[], column: Column): readonly number[] {
  if (!column.marked) return [];
  const known = rows
    .map((row, at) => ({ at, value: cellValue(row[column.key]) }))
    .filter((one): one is { at: number; value: number } => one.value !== null)
    .sort((a, b) => a.value - b.value);
  const [first, last] = [known[0], known.at(-1)];
  return first === undefined || last === undefined || first.value === last.value ? [] : [first.at, last.at];
}

function numberCell(shown: CellText, most: number, marked: boolean, reasons: Reasons, id: string): Markup {
  if (shown.why !== null) {
    const n = reasons.number(shown.why);
    return html`<td class="n">${shown.text} <a href="#${id}-why-${n}" aria-label="${`no number, reason ${n}`}"><sup>${n}</sup></a></td>`;
  }
  const lacking = shown.decimals === null ? 0 : most - shown.decimals;
  const pad = lacking > 0 ? `${shown.decimals === 0 ? '.' : ''}${'0'.repeat(lacking)}` : '';
  return html`<td class="${marked ? 'n marked' : 'n'}">${shown.text}${pad && html`<span class="pad" aria-hidden="true">${pad}</span>`}</td>`;
}

/** A table with its units row, best marks, total and the reasons of its dashes. `id` is unique on the page. */
export function renderTable(table: Table, units: Units, id: string): Markup {
  const reasons = new Reasons();
  const { columns, rows } = table;
  const all = table.total === undefined ? rows : [...rows, table.total];
  const texts = columns.map((column) => all.map((row) => cellText(row[column.key], column, units)));
  const most = texts.map((of) => Math.max(0, ...of.map((one) => one.decimals ?? 0)));
  const marked = columns.map((column) => markedRows(rows, column));
  const line = (row: Row, at: number) => {
    const cells = columns.map((column, c) => {
      const shown = texts[c][at];
      if (c === 0) return html`<th scope="row">${shown.text}</th>`;
      if (column.quantity === null && shown.why === null) return html`<td>${shown.text}</td>`;
      if (row[column.key] === undefined) return html`<td></td>`;
      return numberCell(shown, most[c], marked[c].includes(at), reasons, id);
    });
    return html`<tr>${cells}</tr>`;
  };
  const body = rows.map(line);
  const foot = table.total === undefined ? null : line(table.total, rows.length);
  const hasUnits = columns.some((column) => column.quantity !== null && units.unit(column.quantity) !== '');
  const align = (column: Column) => (column.quantity === null ? '' : 'n');
  if (rows.length === 0) {
    return html`<p class="note">${table.caption}: ${table.empty ?? 'none.'}</p>`;
  }
  const out = html`<div class="scroll" role="group" tabindex="0" aria-label="${table.caption}"><table id="${id}">
<caption>${table.caption}</caption>
<thead><tr>${columns.map((column) => html`<th scope="col" class="${align(column)}">${column.label}</th>`)}</tr>${
    hasUnits &&
    html`
<tr class="units">${columns.map((column) => html`<td class="${align(column)}">${column.quantity !== null ? units.unit(column.quantity) : ''}</td>`)}</tr>`
  }</thead>
<tbody>${body}</tbody>${foot && html`<tfoot>${foot}</tfoot>`}
</table></div>${marked.some((of) => of.length > 0) && html`<p class="note">Bold: the lowest and the highest.</p>`}${reasons.list.map((why, i) => html`<p class="note" id="${id}-why-${i + 1}"><sup>${i + 1}</sup> ${why}</p>`)}`;
  return table.folded ? html`<details><summary>The table: ${table.caption}</summary>${out}</details>` : out;
}
