import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** Opens a PDF without fonts, scripts or network: what is asked of it is structure and text. */
export function openPdf(pdf: Uint8Array) {
  // The library takes the bytes for itself; the caller's stay as they are.
  return getDocument({ data: Uint8Array.from(pdf), verbosity: 0, isEvalSupported: false, disableFontFace: true })
    .promise;
}

/**
 * On which sheet each heading that something links to stands, counted from 1.
 *
 * @param ids  of the headings, as the links name them
 * @returns    without those that the PDF knows no place of
 */
export async function headingSheets(pdf: Uint8Array, ids: readonly string[]): Promise<Map<string, number>> {
  const document = await openPdf(pdf);
  try {
    const sheets = new Map<string, number>();
    for (const id of ids) {
      const place = await document.getDestination(id);
      if (place !== null) sheets.set(id, (await document.getPageIndex(place[0])) + 1);
    }
    return sheets;
  } finally {
    await document.destroy();
  }
}
