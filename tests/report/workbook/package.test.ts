import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { read, utils, write } from '@e965/xlsx';
import type { Element } from '@xmldom/xmldom';
import { type DataFrame, readExcel } from 'danfojs-node';
import readExcelFile from 'read-excel-file/node';
import { beforeAll, describe, expect, it } from 'vitest';
import { workbookOf } from '../../../src/report/workbook/workbook.ts';
import { columnOf, unzip } from '../../support/open-workbook.ts';
import { file, parts, sheets, tables, values } from './example-workbook.ts';

// What a workbook is: ECMA-376 (5th edition) part 2 (Open Packaging) and part 1, chapter 18 (SpreadsheetML).

describe('the package', () => {
  const texts = new Map(unzip(file).map((entry) => [entry.name, entry.bytes.toString('utf8')]));
  const elements = (name: string, tag: string): Element[] => [...(parts.get(name)?.getElementsByTagName(tag) ?? [])];

  it('names the type of each part first, and each relationship leads to one (part 2, 6.2 and 6.5)', () => {
    expect([...texts.keys()][0]).toBe('[Content_Types].xml');
    const types = new Map(
      elements('[Content_Types].xml', 'Override').map((one) => [
        one.getAttribute('PartName'),
        one.getAttribute('ContentType'),
      ]),
    );
    const endings = new Set(elements('[Content_Types].xml', 'Default').map((one) => one.getAttribute('Extension')));
    for (const name of texts.keys()) {
      if (name === '[Content_Types].xml') continue;
      expect(types.has(`/${name}`) || endings.has(name.split('.').at(-1) ?? ''), name).toBe(true);
      if (!name.endsWith('.rels')) continue;
      const folder = name.replace(/_rels\/[^/]+$/, '');
      for (const one of elements(name, 'Relationship')) {
        if (one.getAttribute('TargetMode') === 'External') continue;
        const target = one.getAttribute('Target') ?? '';
        expect(texts.has(target.startsWith('/') ? target.slice(1) : folder + target), `${name}: ${target}`).toBe(true);
      }
    }
    const main = 'application/vnd.openxmlformats-officedocument.spreadsheetml';
    expect(types.get('/xl/workbook.xml')).toBe(`${main}.sheet.main+xml`);
    expect(types.get('/xl/worksheets/sheet1.xml')).toBe(`${main}.worksheet+xml`);
    expect(types.get('/xl/sharedStrings.xml')).toBe(`${main}.sharedStrings+xml`);
    expect(types.get('/xl/styles.xml')).toBe(`${main}.styles+xml`);
  });

  it('has the elements of a sheet in the order of the schema (18.3.1.99), cells in the order of their places', () => {
    const order = [
      'sheetPr',
      'dimension',
      'sheetViews',
      'sheetFormatPr',
      'cols',
      'sheetData',
      'hyperlinks',
      'pageMargins',
      'pageSetup',
      'headerFooter',
      'ignoredErrors',
    ];
    for (const { name, xml } of sheets) {
      const tags = [...(xml.documentElement?.childNodes ?? [])].map((node) => node.nodeName);
      const places = tags.map((tag) => order.indexOf(tag));
      expect(places, `${name}: ${tags}`).toEqual([...places].sort((a, b) => a - b));
      expect(places).not.toContain(-1);
      for (const row of xml.getElementsByTagName('row')) {
        const at = [...row.getElementsByTagName('c')].map((cell) => columnOf(cell.getAttribute('r') ?? ''));
        expect(at).toEqual([...at].sort((a, b) => a - b));
      }
    }
  });

  it('calls only strings and styles that it has, own formats from 164 on (18.8.30), widths and frozen headers', () => {
    const [table] = elements('xl/sharedStrings.xml', 'sst');
    const strings = elements('xl/sharedStrings.xml', 'si').length;
    const [looks] = elements('xl/styles.xml', 'cellXfs');
    const styles = looks.getElementsByTagName('xf').length;
    expect(Number(table.getAttribute('uniqueCount'))).toBe(strings);
    expect(Number(looks.getAttribute('count'))).toBe(styles);
    let called = 0;
    for (const { name, xml, rows } of sheets) {
      for (const cell of xml.getElementsByTagName('c')) {
        expect(Number(cell.getAttribute('s'))).toBeLessThan(styles);
        if (cell.getAttribute('t') !== 's') continue;
        called += 1;
        expect(Number(cell.getElementsByTagName('v')[0].textContent)).toBeLessThan(strings);
      }
      const [pane] = xml.getElementsByTagName('pane');
      expect([pane.getAttribute('ySplit'), pane.getAttribute('state')], name).toEqual(['2', 'frozen']);
      const widths = [...xml.getElementsByTagName('col')].map((col) => Number(col.getAttribute('width')));
      expect(widths).toHaveLength(rows[0].length);
      for (const width of widths) expect(width).toBeGreaterThan(5);
    }
    expect(Number(table.getAttribute('count'))).toBe(called);
    for (const one of elements('xl/styles.xml', 'numFmt')) {
      expect(Number(one.getAttribute('numFmtId'))).toBeGreaterThanOrEqual(164);
    }
  });

  it('is the same bytes again, after other workbooks were read and written, with stamps that say nothing', () => {
    const other = utils.book_new();
    utils.book_append_sheet(other, { A1: { t: 'n', v: 1, z: '0.0000 "odd"' }, '!ref': 'A1' }, 'a');
    read(write(other, { type: 'buffer', bookType: 'xlsx' }));
    expect(Buffer.from(workbookOf(tables, 'Harvest 2024')).equals(Buffer.from(file))).toBe(true);
    // 1 January 1980, midnight: the first moment that a zip can say.
    for (const { name, stamp } of unzip(file)) expect(stamp, name).toBe(0x0021_0000);
    expect(texts.get('docProps/core.xml')).not.toMatch(/created|modified/);
    expect(texts.get('docProps/app.xml')).toContain('<Application>fanbook</Application>');
  });
});

describe('other readers', () => {
  let found: Awaited<ReturnType<typeof readExcelFile>>;
  beforeAll(async () => {
    found = await readExcelFile(Buffer.from(file));
  });

  it('of another author find the same sheets, numbers, texts and dates', () => {
    expect(found.map(({ sheet }) => sheet)).toEqual(sheets.map(({ name }) => name));
    let compared = 0;
    found.forEach(({ data }, at) => {
      sheets[at].rows.forEach((row, r) => {
        row.forEach((cell, c) => {
          const theirs = data[r]?.[c] ?? null;
          const where = `${sheets[at].name} row ${r + 1} column ${c + 1}`;
          if (cell === null || (typeof cell.value === 'string' && cell.value.trim() === '')) return;
          compared += 1;
          if (theirs instanceof Date) {
            // A minute is no round part of a day: this reader cuts to whole milliseconds, one too few here and there.
            const minuteMs = Math.round((Number(cell.value) - 25569) * 1440) * 60_000;
            expect(Math.abs(theirs.getTime() - minuteMs), where).toBeLessThanOrEqual(1);
          } else if (typeof cell.value === 'number') expect(theirs, where).toBe(cell.value);
          else expect(String(theirs).trim(), where).toBe(cell.value.trim());
        });
      });
    });
    expect(compared).toBeGreaterThan(2000);
  });

  it('that notebooks have take a sheet for a data frame: names, a row of units, numbers', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'fanbook-workbook-'));
    writeFileSync(join(folder, 'season.xlsx'), file);
    const frame = (await readExcel(join(folder, 'season.xlsx'), { sheet: 1 })) as DataFrame;
    rmSync(folder, { recursive: true });
    expect(frame.columns).toEqual(values(sheets[1], 0));
    expect(frame.column('Cost').values).toEqual(['USD', 1230, expect.toBeOneOf([undefined, null, Number.NaN]), 1240]);
    expect(frame.column('Cost, high').values.slice(0, 2)).toEqual(['USD', 1290]);
  });
});
