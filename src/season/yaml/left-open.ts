import { type Document, isCollection, isScalar, visit, type YAMLError } from 'yaml';

/** A bracket or quote that nothing closes. */
export interface LeftOpen {
  /** where it stands in the text */
  offset: number;
  sign: string;
  /** what would close it */
  close: string;
}

const CLOSES: Readonly<Record<string, string>> = { '[': ']', '{': '}', '"': '"', "'": "'" };

/** What the parser misses the end of, told where it opens: the parser tells where it gave up. Null where that cannot be found. */
export function leftOpen(error: YAMLError, doc: Document, text: string): LeftOpen | null {
  if (error.code !== 'BAD_INDENT' && error.code !== 'MISSING_CHAR') return null;
  let open: LeftOpen | null = null;
  visit(doc, {
    Node(_, node) {
      const [offset, end] = node.range ?? [Number.POSITIVE_INFINITY, 0];
      const sign = text[offset];
      const close = CLOSES[sign];
      const may = isCollection(node) ? node.flow === true : isScalar(node) && /^QUOTE/.test(node.type ?? '');
      if (!may || close === undefined || offset >= error.pos[0]) return;
      // The innermost is visited last.
      if (end - offset < 2 || text[end - 1] !== close) open = { offset, sign, close };
    },
  });
  return open;
}
