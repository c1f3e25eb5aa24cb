import { createHash } from 'node:crypto';
import { normalised } from './golden-file.ts';

/** Drawings for narrow windows show what the wide ones show; a fingerprint tells that one changed. */
const NARROW = /(<div class="at-narrow"[^>]*>)(<svg[\s\S]*?<\/svg>)(?=<\/div>)/g;

/** A page as its golden file holds it. */
export function pageText(html: string): string {
  const text = html.replace(NARROW, (_, frame: string, drawing: string) => {
    const print = createHash('sha256').update(normalised(drawing)).digest('hex').slice(0, 16);
    return `${frame}drawing ${print}`;
  });
  return normalised(text);
}

/** The text of a page cut at its sections: the frame, and each section by its id. */
export function inSections(text: string): Map<string, string> {
  const parts = new Map<string, string>();
  const frame = text.replace(/<section aria-labelledby="([^"]+)">[\s\S]*?<\/section>/g, (section, id: string) => {
    parts.set(id, section);
    return `<section aria-labelledby="${id}">…</section>`;
  });
  return new Map([['frame', frame], ...parts]);
}
