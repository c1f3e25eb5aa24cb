import type { CellStyle } from './sheet.ts';

// Fonts, fills and borders by their place in the list (ECMA-376 part 1, 18.8). Colour says nothing that the place does not.
const FONT = '<name val="Calibri"/><family val="2"/>';
const FONTS = [
  `<font><sz val="11"/>${FONT}</font>`,
  `<font><b/><sz val="11"/>${FONT}</font>`,
  `<font><i/><sz val="10"/><color rgb="FF595959"/>${FONT}</font>`,
  `<font><u/><sz val="11"/><color rgb="FF0B5394"/>${FONT}</font>`,
];
const SIDES = (top: string, bottom: string) => `<border><left/><right/>${top}${bottom}<diagonal/></border>`;
const RULE = '<color rgb="FF8C8C8C"/>';
const BORDERS = [
  SIDES('<top/>', '<bottom/>'),
  SIDES('<top/>', `<bottom style="thin">${RULE}</bottom>`),
  SIDES(`<top style="thin">${RULE}</top>`, '<bottom/>'),
];

const aligned = (vertical: 'top' | 'bottom', horizontal?: 'left' | 'right') =>
  `<alignment${horizontal === undefined ? '' : ` horizontal="${horizontal}"`} vertical="${vertical}" wrapText="1"/>`;
const LOOKS: Record<CellStyle, { font: number; border: number; alignment: string; quoted?: true }> = {
  name: { font: 1, border: 0, alignment: aligned('bottom') },
  'number name': { font: 1, border: 0, alignment: aligned('bottom', 'right') },
  unit: { font: 2, border: 1, alignment: aligned('top') },
  'number unit': { font: 2, border: 1, alignment: aligned('top', 'right') },
  body: { font: 0, border: 0, alignment: aligned('top') },
  time: { font: 0, border: 0, alignment: aligned('top', 'left') },
  // Edited by hand it stays text, too.
  guarded: { font: 0, border: 0, alignment: aligned('top'), quoted: true },
  link: { font: 3, border: 0, alignment: aligned('top') },
  total: { font: 1, border: 2, alignment: aligned('top') },
};

function listed(tag: string, items: readonly string[]): string {
  return `<${tag} count="${items.length}">${items.join('')}</${tag}>`;
}

/** The styles in use, each a look and a number format, numbered as cells call them. */
export class CellStyles {
  readonly #uses: { style: CellStyle; format: number }[] = [{ style: 'body', format: 0 }];

  /** @param format  id of the number format in the same workbook */
  number(style: CellStyle, format: number): number {
    const at = this.#uses.findIndex((use) => use.style === style && use.format === format);
    return at >= 0 ? at : this.#uses.push({ style, format }) - 1;
  }

  /** The lists that take the place of those of a plain workbook, by their tags. */
  lists(): Record<'fonts' | 'borders' | 'cellXfs', string> {
    const uses = this.#uses.map(({ style, format }) => {
      const { font, border, alignment, quoted } = LOOKS[style];
      const ids = `numFmtId="${format}" fontId="${font}" fillId="0" borderId="${border}" xfId="0"`;
      return `<xf ${ids}${quoted ? ' quotePrefix="1"' : ''} applyNumberFormat="1" applyFont="1" applyBorder="1" applyAlignment="1">${alignment}</xf>`;
    });
    return { fonts: listed('fonts', FONTS), borders: listed('borders', BORDERS), cellXfs: listed('cellXfs', uses) };
  }
}
