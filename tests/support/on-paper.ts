import type { Page as Tab } from 'playwright-core';
import { headingSheets } from '../../scripts/pdf/heading-sheets.ts';
import { sheetsOf } from './pdf-sheets.ts';

/** A figure, a row or a table, with marks at its beginning and its end. */
interface Marked {
  kind: 'figure' | 'row' | 'table';
  name: string;
  /** of a table: its caption and what its columns are headed */
  heads: string[];
}

export interface OnPaper {
  sheets: number;
  /** figures and rows that begin on one sheet and end on another */
  cut: string[];
  /** tables that go on over a sheet's edge */
  goOn: string[];
  /** of these, what a later sheet lacks of caption and heads */
  headless: string[];
  figures: number;
  rows: number;
}

/** How what a tab shows falls on the sheets of a paper. The tab has the print medium and the sheet's width; its page is changed. */
export async function onPaper(tab: Tab, format: 'Letter' | 'A4'): Promise<OnPaper> {
  // A translator of TypeScript may wrap functions in this name.
  await tab.evaluate('globalThis.__name = (of) => of');
  const marked = await tab.evaluate(markEnds);
  const pdf = await tab.pdf({ format });
  const ids = marked.flatMap((_, n) => [`from-${n}`, `to-${n}`]);
  const at = await headingSheets(pdf, ids);
  const sheets = await sheetsOf(pdf);
  const texts = sheets.map(({ lines }) => squeezed(lines.join(' ')));
  const out: OnPaper = { sheets: sheets.length, cut: [], goOn: [], headless: [], figures: 0, rows: 0 };
  for (const [n, { kind, name, heads }] of marked.entries()) {
    const [from, to] = [at.get(`from-${n}`), at.get(`to-${n}`)];
    if (from === undefined || to === undefined) throw new Error(`${name} has no place in the PDF`);
    if (kind === 'figure') out.figures += 1;
    if (kind === 'row') out.rows += 1;
    if (from === to) continue;
    if (kind !== 'table') out.cut.push(`${kind} ${name}: sheets ${from} to ${to}`);
    else out.goOn.push(name);
    if (kind !== 'table') continue;
    for (let sheet = from; sheet < to; sheet++) {
      const lacking = heads.filter((head) => !wordsOf(head).every((word) => texts[sheet].includes(word)));
      if (lacking.length > 0) out.headless.push(`${name}, sheet ${sheet + 1}: ${lacking.join(', ')}`);
    }
  }
  return out;
}

/** Heads stand beside each other in lines of their own: their words are looked for one by one. */
const wordsOf = (head: string) => head.split(/[\s-]+/);
/** A word may come in pieces. */
const squeezed = (text: string) => text.replace(/\s+/g, '');

/** Runs in the browser: an empty mark at both ends of whatever must not be cut, and links to the marks, so that a PDF knows their sheets. */
function markEnds(): Marked[] {
  const marked: Marked[] = [];
  const shown = (one: Element) => one.getClientRects().length > 0;
  const mark = (id: string) => {
    const made = document.createElement('i');
    made.id = id;
    return made;
  };
  const between = (from: Element, to: Element, one: Marked) => {
    const n = marked.push(one) - 1;
    from.prepend(mark(`from-${n}`));
    to.append(mark(`to-${n}`));
  };
  const lowest = (row: Element) => {
    const bottom = (cell: Element) => {
      const range = document.createRange();
      range.selectNodeContents(cell);
      return range.getBoundingClientRect().bottom;
    };
    return [...row.children].reduce((low, cell) => (bottom(cell) > bottom(low) ? cell : low));
  };
  for (const figure of document.querySelectorAll('figure')) {
    const caption = figure.querySelector('figcaption') ?? figure;
    if (shown(figure)) between(caption, figure, { kind: 'figure', name: figure.id, heads: [] });
  }
  for (const table of document.querySelectorAll('table')) {
    const rows = [...table.querySelectorAll('tbody tr, tfoot tr')];
    if (!shown(table) || rows.length === 0) continue;
    const label = table.closest('.scroll')?.getAttribute('aria-label') ?? '';
    const heads = [label, ...[...table.querySelectorAll('thead th')].map((head) => head.textContent ?? '')];
    for (const [i, row] of rows.entries())
      between(row.children[0], lowest(row), { kind: 'row', name: `${table.id} ${i + 1}`, heads: [] });
    const last = rows[rows.length - 1];
    between(rows[0].children[0], last.children[0], { kind: 'table', name: table.id, heads });
  }
  const links = document.createElement('p');
  links.style.fontSize = '1px';
  for (const n of marked.keys()) {
    for (const end of ['from', 'to']) {
      const link = document.createElement('a');
      link.href = `#${end}-${n}`;
      link.textContent = '.';
      links.append(link);
    }
  }
  document.querySelector('main')?.append(links);
  return marked;
}
