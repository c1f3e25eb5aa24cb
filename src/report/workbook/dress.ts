import { CellStyles } from './cell-styles.ts';
import { HEADER_ROWS, type Sheet } from './sheet.ts';

/** Replace what must stand in a part of the workbook once; the library that wrote it is pinned, a newer one may write other words. */
function replaced(part: string, text: string, found: RegExp, by: string): string {
  if (!found.test(text)) throw new Error(`${part} of the workbook holds no ${found.source}`);
  return text.replace(found, () => by);
}

/** `C7` to its row and column, both from 0. */
function placeOf(ref: string): [number, number] {
  const [, letters, digits] = /^([A-Z]+)(\d+)$/.exec(ref) as RegExpExecArray;
  const column = [...letters].reduce((sum, letter) => 26 * sum + letter.charCodeAt(0) - 64, 0) - 1;
  return [Number(digits) - 1, column];
}

const PANE = `<pane xSplit="1" ySplit="${HEADER_ROWS}" topLeftCell="B${HEADER_ROWS + 1}" activePane="bottomRight" state="frozen"/><selection pane="bottomRight" activeCell="B${HEADER_ROWS + 1}" sqref="B${HEADER_ROWS + 1}"/>`;

/** On paper: as wide as a sheet turned sideways, its name and page below. */
const FIT = '<sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>';
const PAPER =
  '<pageSetup orientation="landscape" fitToWidth="1" fitToHeight="0"/><headerFooter><oddFooter>&amp;L&amp;A&amp;R&amp;P / &amp;N</oddFooter></headerFooter>';

/** Put what the sheet's own parts lack where the order of ECMA-376 part 1, 18.3.1.99 asks for it. */
function framed(name: string, text: string, first: boolean): string {
  const view = `<sheetView workbookViewId="0"${first ? ' tabSelected="1"' : ''}>${PANE}</sheetView>`;
  const fit = replaced(name, text, /(?=<dimension )/, FIT);
  const paper = replaced(name, fit, /(?=<ignoredErrors>)/, PAPER);
  return replaced(name, paper, /<sheetView workbookViewId="0"\/>/, view);
}

/**
 * What the spreadsheet library leaves out of a workbook that it writes: the header and the first column stay in sight, paper is
 * as wide as the table, heads, totals and links look like such.
 *
 * @param parts  the files of the package by name, as text; changed in place
 */
export function dress(parts: Map<string, string>, sheets: readonly Sheet[]): void {
  const part = (name: string) => {
    const text = parts.get(name);
    if (text === undefined) throw new Error(`the workbook has no ${name}`);
    return text;
  };
  const plain = [...part('xl/styles.xml').matchAll(/<xf numFmtId="(\d+)"/g)].map((found) => Number(found[1]));
  // The first is that of the named style, the others are those of cells.
  const formats = plain.slice(1);
  const styles = new CellStyles();
  sheets.forEach((sheet, at) => {
    const name = `xl/worksheets/sheet${at + 1}.xml`;
    const styled = framed(name, part(name), at === 0).replace(
      /<c r="([A-Z]+\d+)"(?: s="(\d+)")?/g,
      (_, ref: string, format = '0') => {
        const [row, column] = placeOf(ref);
        const style = sheet.rows[row][column]?.style ?? 'body';
        return `<c r="${ref}" s="${styles.number(style, formats[Number(format)])}"`;
      },
    );
    parts.set(name, styled);
  });
  let looks = part('xl/styles.xml');
  for (const [tag, list] of Object.entries(styles.lists())) {
    looks = replaced('xl/styles.xml', looks, new RegExp(`<${tag}[ >].*?</${tag}>`, 's'), list);
  }
  parts.set('xl/styles.xml', looks);
  const book = part('xl/workbook.xml');
  parts.set(
    'xl/workbook.xml',
    replaced('xl/workbook.xml', book, /<sheets>/, '<bookViews><workbookView/></bookViews><sheets>'),
  );
  const about = 'docProps/app.xml';
  parts.set(about, replaced(about, part(about), /<Application>[^<]*</, '<Application>fanbook<'));
}
