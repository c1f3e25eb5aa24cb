import type { Page } from '../../src/report/page.ts';
import { findChromium, NO_CHROMIUM } from '../pdf/find-chromium.ts';
import type { Paper } from '../pdf/papers.ts';

/** A PDF that is asked for. */
export interface PdfWish {
  paper: Paper;
  /** path of a Chromium; null: it is looked for */
  chromium: string | null;
}

/**
 * The document among the pages as PDF, or why there is none: a browser that is not there or fails takes no page with it.
 *
 * @throws UsageError where the Chromium that was named is none
 */
export async function pdfOf(
  pages: readonly Page[],
  wish: PdfWish | null,
): Promise<{ pdf: Uint8Array | null; failures: string[] }> {
  const page = pages.find(({ cover }) => cover !== undefined);
  if (wish === null || page === undefined) return { pdf: null, failures: [] };
  const browser = findChromium(wish.chromium);
  if (browser === null) return { pdf: null, failures: [NO_CHROMIUM] };
  try {
    // What prints is loaded only where a PDF is asked for.
    const { reportPdf } = await import('../pdf/report-pdf.ts');
    return { pdf: await reportPdf(page, browser, wish.paper), failures: [] };
  } catch (error) {
    const reason = error instanceof Error ? error.message.split('\n')[0] : String(error);
    return { pdf: null, failures: [`year-end.pdf: ${reason}`] };
  }
}
