import { renderDocument } from '../../src/report/html/document.ts';
import { numberedParts } from '../../src/report/html/document-numbers.ts';
import type { Page } from '../../src/report/page.ts';
import type { Paper } from './papers.ts';
import { printDocument } from './print-document.ts';

/** A page with a cover as PDF. @param browser  path of an installed Chromium */
export function reportPdf(page: Page, browser: string, paper: Paper): Promise<Uint8Array> {
  const ids = numberedParts(page).map(({ id }) => id);
  const alone = [{ file: page.file, title: page.title }];
  return printDocument((sheetOf) => renderDocument(page, alone, { sheetOf, paper }).html, ids, {
    browser,
    madeMs: page.madeBy.generatedAtMs,
  });
}
