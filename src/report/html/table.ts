import type { Cell, Column, Table } from '../page.ts';
import type { Units } from '../units.ts';
import { type CellText, cellNumber, cellText, isTime, middleOf } from './cell.ts';
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
    .map((row, at) => ({ at, value: middleOf(cellNumber(row[column.key], column)?.amount ?? null) }))
    .filter((one): one is { at: number; value: number } => one.value !== null)
    .sort((a, b) => a.value - b.value);
  const [first, last] = [known[0], known.at(-1)];
  return first === undefined || last === undefined || first.value === last.value ? [] : [first.at, last.at];
}

/** A cell with its interval under it, or a dash that leads to its reason. */
function bodyCell(
  shown: CellText,
  column: Column,
  most: number,
  marked: boolean,
  reasons: Reasons,
  id: string,
): Markup {
  const kind = isTime(column.quantity)
    ? 't'
    : isText(column)
      ? shortly(shown.text)
      : isOwn(column)
        ? 'own'
        : marked
          ? 'n marked'
          : 'n';
  if (shown.why !== null) {
    const n = reasons.number(shown.why);
    return html`<td class="${kind}">${shown.text} <a href="#${id}-why-${n}" aria-label="${`no number, reason ${n}`}"><sup>${n}</sup></a></td>`;
  }
  const lacking = shown.decimals === null ? 0 : most - shown.decimals;
  const pad = lacking > 0 ? `${shown.decimals === 0 ? '.' : ''}${'0'.repeat(lacking)}` : '';
  return html`<td class="${kind}">${shown.text}${pad && html`<span class="pad" aria-hidden="true">${pad}</span>`}${shown.range && html`<br><span class="range">(${shown.range})</span>`}</td>`;
}

/** A name or word of a few letters stays on one line on a screen; paper has less room. */
function shortly(text: string): string {
  return text.length <= 13 ? 's' : '';
}

/** Columns of names, words and dates stand left. */
function isText({ quantity }: Column): boolean {
  return quantity === null || isTime(quantity);
}

/** Numbers of several kinds have no decimal to line up on. */
function isOwn({ quantity }: Column): boolean {
  return quantity === 'own';
}

function unitOf({ quantity }: Column, units: Units): string {
  return quantity === null || quantity === 'own' || isTime(quantity) ? '' : units.unit(quantity);
}

/** From so many columns on, a narrow window says that the table goes on, and its first column stays in sight. */
const WIDE = 6;
/** From so many on, columns move together on a screen. */
const CROWDED = 7;

/** A table with its units row, best marks, total and the reasons of its dashes. `id` is unique on the page. */
export function renderTable(table: Table, pageUnits: Units, id: string): Markup {
  const reasons = new Reasons();
  const units = pageUnits.withMoneyIn(table.currency ?? pageUnits.currency);
  const { columns, rows } = table;
  const all = table.total === undefined ? rows : [...rows, table.total];
  const texts = columns.map((column) => all.map((row) => cellText(row[column.key], column, units)));
  const most = texts.map((of) => Math.max(0, ...of.map((one) => one.decimals ?? 0)));
  const marked = columns.map((column) => markedRows(rows, column));
  const line = (row: Row, at: number) => {
    const cells = columns.map((column, c) => {
      const shown = texts[c][at];
      if (c === 0)
        return html`<th scope="row" class="${isTime(column.quantity) ? 't' : shortly(shown.text)}">${shown.text}</th>`;
      if (row[column.key] === undefined) return html`<td></td>`;
      return bodyCell(shown, column, most[c], marked[c].includes(at), reasons, id);
    });
    return html`<tr>${cells}</tr>`;
  };
  const body = rows.map(line);
  const foot = table.total === undefined ? null : line(table.total, rows.length);
  const hasUnits = columns.some((column) => unitOf(column, units) !== '' || column.known !== undefined);
  const align = (column: Column) => (isText(column) || isOwn(column) ? '' : 'n');
  if (rows.length === 0) {
    return html`<p class="note">${table.caption}: ${table.empty ?? 'none.'}</p>`;
  }
  const wide = columns.length >= WIDE;
  const out = html`${wide && html`<p class="small sideways">Scroll the table sideways for all ${columns.length} columns →</p>`}<div class="${['scroll', wide && 'wide', columns.length >= CROWDED && 'crowded'].filter(Boolean).join(' ')}" role="group" tabindex="0" aria-label="${table.caption}"><table id="${id}">
<caption>${table.caption}</caption>
<thead><tr>${columns.map((column) => html`<th scope="col" class="${align(column)}">${column.label}</th>`)}</tr>${
    hasUnits &&
    html`
<tr class="units">${columns.map((column) => html`<td class="${align(column)}">${unitOf(column, units)}${column.known !== undefined && html`<br><span class="known">${column.known}</span>`}</td>`)}</tr>`
  }</thead>
<tbody>${body}</tbody>${foot && html`<tfoot>${foot}</tfoot>`}
</table></div>${marked.some((of) => of.length > 0) && html`<p class="note">Bold: the lowest and the highest.</p>`}${reasons.list.map((why, i) => html`<p class="note" id="${id}-why-${i + 1}"><sup>${i + 1}</sup> ${why}</p>`)}`;
  if (!table.folded) return table.printed === false ? html`<div class="on-screen">${out}</div>` : out;
  return html`<details class="${table.folded === true ? 'folded' : 'on-screen'}"><summary>The table: ${table.caption}</summary>${out}</details>`;
}
