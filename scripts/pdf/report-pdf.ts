import { renderDocument } from '../../src/report/html/document.ts';
import { numberedParts } from '../../src/report/html/document-numbers.ts';
import type { Page } from '../../src/report/page.ts';
import { printDocument } from './print-document.ts';

export const PAPERS = ['letter', 'a4'] as const;
export type Paper = (typeof PAPERS)[number];

/** A page with a cover as PDF. @param browser  path of an installed Chromium */
export function reportPdf(page: Page, browser: string, paper: Paper): Promise<Uint8Array> {
  const ids = numberedParts(page).map(({ id }) => id);
  const alone = [{ file: page.file, title: page.title }];
  return printDocument((sheetOf) => renderDocument(page, alone, { sheetOf, paper }).html, ids, {
    browser,
    madeMs: page.madeBy.generatedAtMs,
  });
}
