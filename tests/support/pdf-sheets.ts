import { openPdf } from '../../scripts/pdf/heading-sheets.ts';

export interface Sheet {
  /** lines of text, top to bottom */
  lines: string[];
  /** size of each piece of text, points, by the piece */
  sizes: { text: string; size: number }[];
}

/** Every sheet of a PDF as lines of text: pieces at one height belong together. */
export async function sheetsOf(pdf: Uint8Array): Promise<Sheet[]> {
  const document = await openPdf(pdf);
  const out: Sheet[] = [];
  for (let n = 1; n <= document.numPages; n++) {
    const { items } = await (await document.getPage(n)).getTextContent();
    const rows = new Map<number, { x: number; end: number; text: string }[]>();
    const sizes: Sheet['sizes'] = [];
    for (const item of items) {
      if (!('str' in item) || item.str === '') continue;
      const [a, b, , , x, y] = item.transform;
      const row = rows.get(Math.round(y)) ?? [];
      rows.set(Math.round(y), row);
      row.push({ x, end: x + item.width, text: item.str });
      sizes.push({ text: item.str, size: Math.hypot(a, b) });
    }
    const lines = [...rows].sort((one, other) => other[0] - one[0]).map(([, row]) => lineOf(row));
    out.push({ lines, sizes });
  }
  await document.destroy();
  return out;
}

/** Pieces at one height from left to right, with a blank where there is a gap. */
function lineOf(row: readonly { x: number; end: number; text: string }[]): string {
  const sorted = [...row].sort((a, b) => a.x - b.x);
  const text = sorted.map((one, i) => (i > 0 && one.x - sorted[i - 1].end > 1 ? ` ${one.text}` : one.text)).join('');
  return text.replace(/\s+/g, ' ').trim();
}
