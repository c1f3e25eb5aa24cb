import { parse } from 'csv-parse/sync';
import { parseHTML } from 'linkedom';
import { beforeAll, describe, expect, it } from 'vitest';
import { renderPages } from '../../src/report/html/pages.ts';
import type { Cell, Column, Page, Section, Table } from '../../src/report/page.ts';
import { pageTables } from '../../src/report/page-tables.ts';
import { QUANTITIES, type Quantity } from '../../src/report/quantities.ts';
import { samplePages } from './sample-pages.ts';

// No number stands without its unit and either an interval or how it is known. Counts have their noun in the label.
const SAYS = /\b(measured|stated|counted|published|printed|90 % limit|both ranges)\b/i;
const COUNTS: readonly Quantity[] = ['count'];
/** Kinds that have no unit of their own: ratios, and values of published tables, whose unit their table says in words. */
const UNITLESS: readonly Quantity[] = ['count', 'number', 'misfit'];

/** How a number is known: by its interval, as a count, or not from itself. */
function carriesInterval(amount: Cell): boolean {
  return typeof amount === 'object' && amount !== null && 'interval' in amount && amount.interval !== null;
}

function unitless(quantity: Quantity): boolean {
  return QUANTITIES[quantity].us === '' || QUANTITIES[quantity].si === '';
}

/** Every number of a table that says neither, by column. */
function bareOf(table: Table, section: Section, page: string): string[] {
  const words = [table.caption, section.lead, ...(section.notes ?? [])].join(' ');
  return table.columns.flatMap((column) => {
    const rows = [...table.rows, ...(table.total === undefined ? [] : [table.total])];
    return rows.flatMap((row) => {
      const why = bareCell(row[column.key], column, row);
      // The page of methods holds the kit against published tables: its captions and leads say so.
      if (why === null || (page === 'methods' && SAYS.test(`${column.label} ${words}`))) return [];
      return [`${page}/${section.id}/${table.id}/${column.label}: ${why}`];
    });
  });
}

function bareCell(cell: Cell | undefined, column: Column, row: Readonly<Record<string, Cell>>): string | null {
  const { quantity, known } = column;
  if (cell === undefined || cell === null || typeof cell === 'string' || quantity === null) return null;
  if (quantity === 'day' || quantity === 'moment' || quantity === 'month') return null;
  if (quantity === 'own') {
    if (typeof cell !== 'object' || !('of' in cell)) return null;
    // A published constant: unit and source stand in its table's words.
    if (cell.of === 'constant') return null;
    const unit = String(row.unit ?? '');
    if (!COUNTS.includes(cell.of) && unit === '') return 'no unit';
    return COUNTS.includes(cell.of) || carriesInterval(cell.amount) || SAYS.test(unit) ? null : 'not said how known';
  }
  if (typeof cell === 'object' && 'value' in cell && cell.value === null) return null;
  if (unitless(quantity) && !UNITLESS.includes(quantity)) return 'no unit';
  return COUNTS.includes(quantity) || carriesInterval(cell) || known !== undefined ? null : 'not said how known';
}

/** Every bare number of a page. */
function bare(page: Page): string[] {
  const keys = page.keyNumbers.flatMap(({ label, quantity, amount, known }) =>
    amount === null || COUNTS.includes(quantity) || known !== undefined
      ? []
      : typeof amount === 'object' && (amount.value === null || amount.interval !== null)
        ? []
        : [`${page.id}/key/${label}: not said how known`],
  );
  return [
    ...keys,
    ...page.sections.flatMap((section) =>
      [...(section.table === undefined ? [] : [section.table]), ...(section.tables ?? [])].flatMap((table) =>
        bareOf(table, section, page.id),
      ),
    ),
  ];
}

describe.each(['sorrel-fork', 'sorrel-fork-2023'] as const)('no number of %s stands alone', (name) => {
  let pages: Page[] = [];

  beforeAll(async () => {
    pages = await samplePages(name);
  });

  it('on its pages: unit and interval, or the word', () => {
    expect(pages.map((page) => page.failure ?? '').join('')).toBe('');
    expect([...new Set(pages.flatMap(bare))]).toEqual([]);
    const cells = pages.flatMap((page) => page.sections.flatMap((one) => one.tables ?? [])).flatMap((one) => one.rows);
    expect(cells.length).toBeGreaterThan(200);
  });

  it('fails where a mark is taken away, and where an interval is', () => {
    let marked = 0;
    for (const page of pages.filter(({ id }) => id !== 'methods')) {
      for (const section of page.sections) {
        for (const table of section.tables ?? []) {
          const keys = table.columns.filter(({ known }) => known !== undefined).map(({ key }) => key);
          const rows = [...table.rows, ...(table.total === undefined ? [] : [table.total])];
          const plain = rows.flatMap((row) => keys.filter((key) => typeof row[key] === 'number'));
          const columns = table.columns.map(({ known: _, ...rest }) => rest);
          expect(bareOf({ ...table, columns }, section, page.id), `${section.id} ${table.id}`).toHaveLength(
            plain.length,
          );
          marked += plain.length;
        }
      }
    }
    expect(marked).toBeGreaterThan(500);
    const key = pages[0].keyNumbers.find(({ amount }) => typeof amount === 'object' && amount?.value !== null);
    const alone = { ...pages[0], keyNumbers: [{ ...key, amount: 1, quantity: 'hours', label: 'Hours' }] } as Page;
    expect(bare(alone)).toEqual(['overview/key/Hours: not said how known']);
  });

  it('as drawn and as CSV: the word stands under the unit and in the header', () => {
    const drawn = new Map(renderPages(pages).map(({ file, html }) => [file, parseHTML(html).document]));
    let told = 0;
    for (const page of pages) {
      const files = new Map(pageTables(page).map((file) => [file.name, parse(file.csv)[0] as string[]]));
      for (const section of page.sections) {
        for (const table of [...(section.table === undefined ? [] : [section.table]), ...(section.tables ?? [])]) {
          if (table.rows.length === 0) continue;
          const units = drawn.get(page.file)?.getElementById(`${section.id}-${table.id}`.toLowerCase());
          const cells = [...(units?.querySelectorAll('thead tr.units td') ?? [])];
          table.columns.forEach(({ known, label }, c) => {
            if (known === undefined) return;
            const where = `${page.id}-${section.id}-${table.id}`.toLowerCase();
            expect(cells[c]?.querySelector('.known')?.textContent?.replace('\u00a0', ' '), where).toBe(known);
            expect(
              files.get(where)?.some((head) => head.startsWith(`${label}, ${known}`)),
              where,
            ).toBe(true);
            told += 1;
          });
        }
      }
    }
    expect(told).toBeGreaterThan(20);
  });
});
