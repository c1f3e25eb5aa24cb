import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { parse } from 'csv-parse/sync';
import { parseHTML } from 'linkedom';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runReview } from '../../scripts/review/run-review.ts';
import type { Summary } from '../../src/analysis/summary-shape.ts';
import { unguarded } from '../../src/base/csv-text.ts';
import { openWorkbook, type ReadSheet, shownAs } from '../support/open-workbook.ts';
import { sheetCells, sheetColumns } from './sheet-cells.ts';
import { summaryCells } from './summary-cells.ts';

// The sample season's whole review, walked: what stands in summary.json, in tables/*.csv, in season.xlsx and on the pages is one
// number with one face, each read by a reader of its own. The rounding here is written anew, with the language's own toPrecision
// and toFixed, not taken from the kit.
const work = mkdtempSync(join(tmpdir(), 'fanbook-digits-'));
const out = join(work, 'out');
const csv = new Map<string, string[][]>();
const pages = new Map<string, Document>();
/** by the name of the table's CSV */
const sheets = new Map<string, ReadSheet>();
let summary: Summary;

beforeAll(async () => {
  const seasonFolder = resolve('data-samples/sorrel-fork');
  const generatedAtMs = Date.UTC(2025, 5, 1);
  await runReview({ seasonFolder, out, workbook: true, generatedAtMs, onStage: () => {} });
  for (const name of readdirSync(join(out, 'tables'))) {
    csv.set(name.slice(0, -4), parse(readFileSync(join(out, 'tables', name), 'utf8')));
  }
  for (const name of readdirSync(out).filter((each) => each.endsWith('.html'))) {
    const id = name === 'index.html' ? 'overview' : name.slice(0, -5);
    pages.set(id, parseHTML(readFileSync(join(out, name), 'utf8')).document);
  }
  const [index, ...others] = openWorkbook(readFileSync(join(out, 'season.xlsx'))).sheets;
  index.rows.slice(2).forEach((row, at) => {
    sheets.set(String(row[6]?.value).replace(/\.csv$/, ''), others[at]);
  });
  summary = JSON.parse(readFileSync(join(out, 'summary.json'), 'utf8'));
});
afterAll(() => rmSync(work, { recursive: true, force: true }));

/** A page's number as a program writes it. */
/** Pages keep a number and its unit together by a no-break space; files carry a plain one. */
const spaced = (text: string) => text.replaceAll('\u00a0', ' ');
const plain = (text: string) => spaced(text).replaceAll(',', '').replace('−', '-');

/** A value at the digits that a text of it has: its decimals, or three figures where it has none. */
function atDigitsOf(text: string, value: number): number {
  const decimals = text.split('.')[1]?.length;
  if (decimals !== undefined) return Number(value.toFixed(decimals));
  return Math.abs(value) >= 1000 ? Number(value.toPrecision(3)) : Number(value.toFixed(0));
}

/** An end of an interval at the place of its middle, or of its own three figures where that is coarser. */
function endAtDigitsOf(text: string, middle: string, end: number): number {
  if (text.includes('.')) return Number(end.toFixed(text.split('.')[1].length));
  const wholes = [middle, Math.abs(end).toFixed(0)].map((one) => one.replace(/^-/, '').split('.')[0].length);
  const place = 10 ** Math.max(0, ...wholes.map((length) => length - 3));
  return Math.sign(end) * Math.round(Math.abs(end) / place) * place;
}

/** Figures of a number: no sign, point, leading noughts, or trailing noughts of a whole number. */
function figuresOf(text: string): number {
  const digits = text.replace(/[-.]/g, '').replace(/^0+/, '');
  return (text.includes('.') ? digits : digits.replace(/0+$/, '')).length;
}

interface Shown {
  middle: string;
  ends: [string, string] | null;
}

function cellOf(cell: Element): Shown {
  const copy = cell.cloneNode(true) as Element;
  for (const drop of copy.querySelectorAll('.pad, .range, sup')) drop.remove();
  const range = /^\((\S+) to (\S+)\)$/.exec(cell.querySelector('.range')?.textContent ?? '');
  const middle = plain((copy.textContent ?? '').trim());
  return { middle: middle === '–' ? '' : middle, ends: range === null ? null : [plain(range[1]), plain(range[2])] };
}

describe('a number has the same digits', () => {
  it('in every table of the pages and its CSV, ends of intervals too', () => {
    let numbers = 0;
    for (const [name, [header, ...rows]] of csv) {
      const page = [...pages.keys()].find((id) => name.startsWith(`${id}-`)) ?? '';
      const table = pages.get(page)?.getElementById(name.slice(page.length + 1));
      expect(table, name).toBeTruthy();
      const drawn = [...(table?.querySelectorAll('tbody tr, tfoot tr') ?? [])].map((row) => [...row.children]);
      expect(drawn.length, name).toBe(rows.length);
      const labels = [...(table?.querySelectorAll('thead tr:first-child th') ?? [])].map((th) =>
        spaced(th.textContent ?? ''),
      );
      labels.forEach((label, c) => {
        const kind = (drawn[0][c] ?? drawn[0][0]).className;
        if (!/^(n|n marked|own)$/.test(kind)) return;
        const at = header.findIndex(
          (head) => head === label || head.startsWith(`${label} (`) || head.startsWith(`${label}, `),
        );
        expect(at, `${name} ${label}`).toBeGreaterThanOrEqual(0);
        const ended = header[at + 1] === `${header[at]}, low`;
        rows.forEach((row, r) => {
          const where = `${name}, ${row[0]}, ${label}`;
          const shown = cellOf(drawn[r][c]);
          expect(row[at], where).toBe(shown.middle);
          if (shown.middle === '') return;
          numbers += 1;
          expect(row[at], where).toMatch(/^-?\d+(\.\d+)?$/);
          if (shown.ends !== null) expect(row.slice(at + 1, at + 3), where).toEqual(shown.ends);
          // No range on the page: there is none, or both ends round to the number.
          else if (ended)
            expect(
              [
                ['', ''],
                [shown.middle, shown.middle],
              ],
              where,
            ).toContainEqual(row.slice(at + 1, at + 3));
        });
      });
    }
    expect(numbers).toBeGreaterThan(1000);
  });

  it('for one bin on every page that asks first what the trade asks first', () => {
    const faces = new Map<string, Set<string>>();
    for (const [name, [header, ...rows]] of csv) {
      if (!/-bin-b\d-bins$/.test(name)) continue;
      const bin = /-bin-(b\d)-/.exec(name)?.[1];
      for (const row of rows) {
        const key = `${bin} ${row[0]}`;
        faces.set(key, (faces.get(key) ?? new Set()).add(row.slice(1, header.length).join('|')));
      }
    }
    expect(faces.size).toBeGreaterThanOrEqual(6 * 11);
    for (const [key, set] of faces) expect([...set], key).toHaveLength(1);
  });

  it('in summary.json, once its seven figures are rounded', () => {
    const [header, ...rows] = csv.get('overview-bins-bins') ?? [];
    const [grainHeader, ...grainRows] = csv.get('overview-grain-grain') ?? [];
    summary.bins.forEach((bin, b) => {
      const { fan, moisture, grain, costPerPoint } = bin;
      const pairs: [string[], string[], string, number | null, readonly number[] | null][] = [
        [header, rows[b], 'Grain (bu)', grain.bushels, null],
        [header, rows[b], 'Fan hours (h)', fan.hours, fan.hoursInterval],
        [header, rows[b], 'Energy (kWh)', fan.energyKwh, fan.energyKwhInterval],
        [header, rows[b], 'Cost (USD)', fan.cost, fan.costInterval],
        [header, rows[b], 'Cost per bushel (USD/bu)', fan.costPerBushel, fan.costPerBushelInterval],
        [
          header,
          rows[b],
          'Cost per bushel-point (USD/bu-point)',
          costPerPoint.perBushelPoint,
          costPerPoint.perBushelPointInterval,
        ],
        [grainHeader, grainRows[b], 'Moisture in (%)', moisture.startPct, moisture.startPctInterval],
        [grainHeader, grainRows[b], 'Moisture out (%)', moisture.endPct, moisture.endPctInterval],
        [grainHeader, grainRows[b], 'Points removed (points)', moisture.pointsRemoved, moisture.interval],
        [
          grainHeader,
          grainRows[b],
          'Over-drying, weight (bu)',
          moisture.overdryingLossBushels,
          moisture.overdryingLossBushelsInterval,
        ],
        [
          grainHeader,
          grainRows[b],
          'Over-drying, money (USD)',
          moisture.overdryingLoss,
          moisture.overdryingLossInterval,
        ],
      ];
      for (const [heads, row, label, value, interval] of pairs) {
        const at = heads.indexOf(label);
        const where = `${bin.id} ${label}`;
        expect(at, where).toBeGreaterThan(0);
        if (value === null) {
          expect(row.slice(at, at + 3).join(''), where).toBe('');
          expect(row.at(-1), where).toMatch(/\w/);
          continue;
        }
        expect(Number(row[at]), where).toBe(atDigitsOf(row[at], value));
        interval?.forEach((end, i) => {
          expect(Number(row[at + 1 + i]), `${where}, end ${i}`).toBe(atDigitsOf(row[at + 1 + i], end));
        });
      }
    });
  });

  it('in summary.json and every table that says its numbers, by row and column', () => {
    const names = (csv.get('overview-bins-bins') ?? []).slice(1).map((row) => row[0]);
    const cells = summaryCells(summary, names);
    let numbers = 0;
    for (const { table, row, column, value, interval } of cells) {
      const where = `${table}, ${row.join(', ')}, ${column}`;
      const [header, ...rows] = csv.get(table) ?? [];
      const at = header?.indexOf(column) ?? -1;
      expect(at, where).toBeGreaterThan(0);
      const found = rows.find((one) => row.every((text, c) => one[c] === text));
      expect(found, where).toBeDefined();
      if (found === undefined) continue;
      if (value === null) {
        expect(found[at], where).toBe('');
        continue;
      }
      numbers += 1;
      expect(Number(found[at]), where).toBe(atDigitsOf(found[at], value));
      if (header[at + 1] !== `${column}, low`) continue;
      interval?.forEach((end, i) => {
        const text = found[at + 1 + i];
        expect(Number(text), `${where}, end ${i}`).toBeCloseTo(endAtDigitsOf(text, found[at], end), 9);
        numbers += 1;
      });
    }
    expect(numbers).toBeGreaterThan(600);
  });

  it('in the answer of the first page and in its table', () => {
    const [header, ...rows] = csv.get('overview-bins-bins') ?? [];
    const total = rows.at(-1) ?? [];
    const said = plain(pages.get('overview')?.getElementById('answer')?.textContent ?? '');
    for (const label of ['Fan hours (h)', 'Cost (USD)']) {
      const at = header.indexOf(label);
      const [middle, low, high] = total.slice(at, at + 3);
      expect(said).toMatch(new RegExp(`\\b${middle} (h|USD) \\(${low} to ${high}\\)`));
    }
  });

  it('and at most three that mean something, but where things are counted', () => {
    let numbers = 0;
    for (const [name, [header, ...rows]] of csv) {
      header.forEach((head, c) => {
        if (!/\((USD|USD\/bu|USD\/bu-point|kWh|kW|h|bu|%|points|ft|°F)\)/.test(head) && !/^Value(,|$)/.test(head))
          return;
        for (const row of rows) {
          if (row[c] === '' || !/^-?[\d.]+$/.test(row[c])) continue;
          // A count has no unit: the starts of a fan.
          if (/^Value(,|$)/.test(head) && row[header.indexOf('Unit')] === '') continue;
          numbers += 1;
          expect(figuresOf(row[c]), `${name} ${head} ${row[0]}: ${row[c]}`).toBeLessThanOrEqual(3);
        }
      });
    }
    expect(numbers).toBeGreaterThan(1000);
  });
});

describe('season.xlsx', () => {
  it('has a sheet for each table and each column of its CSV', () => {
    expect([...sheets.keys()].sort()).toEqual([...csv.keys()].sort());
  });

  it('has the cells of the CSV, as real numbers, dates and texts, and of the page', () => {
    const count = { number: 0, text: 0, time: 0, onPage: 0 };
    for (const [name, rows] of csv) {
      const sheet = sheets.get(name) as ReadSheet;
      const page = [...pages.keys()].find((id) => name.startsWith(`${id}-`)) ?? '';
      const table = pages.get(page)?.getElementById(name.slice(page.length + 1)) as Element;
      expect(
        sheetColumns(sheet).map(({ head }) => head),
        name,
      ).toEqual(rows[0].map(unguarded));
      expect(sheet.rows.length - 2, name).toBe(rows.length - 1);
      for (const { where, cell, csv: text, shown } of sheetCells(name, sheet, rows, table)) {
        if (cell === null) expect(text, where).toBe('');
        else if (typeof cell.value === 'string') {
          count.text += 1;
          expect(cell.value, where).toBe(text);
        } else {
          const face = shownAs(cell.value, cell.format);
          if (cell.format.startsWith('#')) {
            count.number += 1;
            expect([cell.value, face.replaceAll(',', '')], where).toEqual([Number(text), text]);
          } else {
            count.time += 1;
            // 2024-10, 2024-10-04, 2024-10-04T13:05-05:00: the same day and minute by the clock of the site.
            const local = text.length > 10 ? text.slice(0, 16) : `${text.padEnd(10, '-01')}T00:00`;
            expect(cell.value, where).toBeCloseTo(Date.parse(`${local}Z`) / 86_400_000 + 25_569, 6);
          }
          if (shown === null) continue;
          count.onPage += 1;
          expect(plain(face), where).toBe(cellOf(shown).middle);
        }
      }
    }
    expect(count.number).toBeGreaterThan(3000);
    expect(count.text).toBeGreaterThan(1000);
    expect(count.time).toBeGreaterThan(300);
    expect(count.onPage).toBeGreaterThan(2000);
  });
});

describe('tables/*.csv', () => {
  it('have times by ISO 8601 and no number with words or an interval in it', () => {
    for (const [name, [header, ...rows]] of csv) {
      header.forEach((head, c) => {
        const cells = rows.map((row) => row[c]).filter((cell) => cell !== '');
        if (/^(From|To|Up to|Arrived|Peak began|Began)$/.test(head)) {
          for (const cell of cells) {
            expect(cell, `${name} ${head}`).toMatch(/^\d{4}-\d{2}-\d{2}(T\d{2}:\d{2}[+-]\d{2}:\d{2})?$/);
          }
        }
        if (head === 'Month') for (const cell of cells) expect(cell, name).toMatch(/^\d{4}-\d{2}$|^All months$/);
        for (const cell of cells) expect(cell, `${name} ${head}`).not.toMatch(/^[\d,.]+ \([\d,.]+ to [\d,.]+\)$/);
        if (/\((?!local)[^)]*\)/.test(head)) {
          for (const cell of cells) expect(cell, `${name} ${head}`).toMatch(/^-?\d+(\.\d+)?$/);
        }
      });
    }
  });
});
