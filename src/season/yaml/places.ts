import { type Document, isAlias, isMap, isNode, isScalar, isSeq, type LineCounter, type Node, type Pair } from 'yaml';
import type { Anchors } from './anchors.ts';
import type { YamlPath } from './path-text.ts';

export interface Place {
  line: number;
  column: number;
}

/** The text of a map key as it stands, `1` and `"1"` alike; null for a key that is no scalar. */
export function keyText(key: unknown): string | null {
  if (!isScalar(key)) return null;
  return key.source ?? String(key.value ?? '');
}

/** Finds line and column of a path in the parsed file. */
export class Places {
  private readonly doc: Document;
  private readonly lines: LineCounter;
  private readonly anchors: Anchors;

  constructor(doc: Document, lines: LineCounter, anchors: Anchors) {
    this.doc = doc;
    this.lines = lines;
    this.anchors = anchors;
  }

  offset(offset: number): Place {
    const { line, col } = this.lines.linePos(offset);
    return { line: Math.max(1, line), column: Math.max(1, col) };
  }

  node(node: unknown): Place {
    return this.offset(isNode(node) ? (node.range?.[0] ?? 0) : 0);
  }

  /** The value at a path, or what holds it where there is none. */
  value(path: YamlPath): Place {
    let node: unknown = this.doc.contents;
    for (const step of path) {
      const next = this.step(node, step);
      if (next === undefined) break;
      node = next;
    }
    return this.node(node);
  }

  /** The key of the last step of a path; in a list, its entry. */
  key(path: YamlPath): Place {
    let node: unknown = this.doc.contents;
    for (const step of path.slice(0, -1)) node = this.step(node, step) ?? node;
    const last = path.at(-1);
    const pair = typeof last === 'string' ? this.pair(node, last) : undefined;
    return pair === undefined ? this.value(path) : this.node(pair.key);
  }

  private step(node: unknown, step: string | number): Node | undefined {
    const held = isAlias(node) ? this.anchors.target(node) : node;
    if (typeof step === 'number') return isSeq(held) && isNode(held.items[step]) ? held.items[step] : undefined;
    const pair = this.pair(held, step);
    if (pair === undefined) return undefined;
    return isNode(pair.value) ? pair.value : (pair.key as Node);
  }

  private pair(node: unknown, key: string): Pair | undefined {
    const held = isAlias(node) ? this.anchors.target(node) : node;
    return isMap(held) ? held.items.find((pair) => keyText(pair.key) === key) : undefined;
  }
}
