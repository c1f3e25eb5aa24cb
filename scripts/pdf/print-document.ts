import { fixedDates } from './fixed-dates.ts';
import { headingSheets } from './heading-sheets.ts';
import { vectorHatches } from './vector-hatches.ts';
import { withBrowser } from './with-browser.ts';

/** Numbers of another width may move a line, and with it a heading, over the edge of a sheet; more rounds than this never help. */
const ROUNDS = 5;

export interface PrintOptions {
  /** path of an installed Chromium */
  browser: string;
  /** time that the PDF bears, ms UTC */
  madeMs: number;
}

/**
 * A document as PDF with true page numbers in its contents: printed, its headings' sheets read, printed again with them, until they
 * stay.
 *
 * @param html  the document with the sheets as known so far
 * @param ids   of the headings that the contents list
 * @throws      Error where the browser fails, or where the numbers do not settle
 */
export async function printDocument(
  html: (sheetOf: ReadonlyMap<string, number>) => string,
  ids: readonly string[],
  { browser, madeMs }: PrintOptions,
): Promise<Uint8Array> {
  return withBrowser(browser, async (one) => {
    const context = await one.newContext({ javaScriptEnabled: false, offline: true });
    const page = await context.newPage();
    await page.emulateMedia({ media: 'print' });
    let sheetOf: ReadonlyMap<string, number> = new Map();
    for (let round = 0; round < ROUNDS; round++) {
      await page.setContent(html(sheetOf), { waitUntil: 'load' });
      // A translator of TypeScript may wrap functions in this name.
      await page.evaluate('globalThis.__name = (of) => of');
      await page.evaluate(vectorHatches);
      const pdf = await page.pdf({ preferCSSPageSize: true, tagged: true, outline: true });
      const found = await headingSheets(pdf, ids);
      const lacking = ids.filter((id) => !found.has(id));
      if (lacking.length > 0) throw new Error(`the printed document lacks the headings ${lacking.join(', ')}`);
      if (ids.every((id) => sheetOf.get(id) === found.get(id))) return fixedDates(pdf, madeMs);
      sheetOf = found;
    }
    throw new Error('the page numbers of the contents do not settle');
  });
}
