import { isAlias, isMap, isScalar, isSeq, type Node, type YAMLMap } from 'yaml';
import type { Anchors } from './anchors.ts';
import { pathText, type YamlPath } from './path-text.ts';
import { keyText, type Places } from './places.ts';
import { type Problems, SEASON_FILE_NAME } from './report.ts';
import { show } from './show.ts';

/** What season.yaml holds, before any meaning: texts as they stand, lists, maps; null for nothing. */
export type Plain = string | null | Plain[] | { [key: string]: Plain };

/** More than any real season holds; an alias that repeats itself reaches it at once. */
const MOST_VALUES = 200_000;
const DEEPEST = 30;

/** Controls of the direction of writing (Unicode Standard Annex 9): unseen, they make a name read as another. */
const TURNS_TEXT = /[\u202a-\u202e\u2066-\u2069]/;

function turningText(sign: string): string {
  const code = `U+${sign.charCodeAt(0).toString(16).toUpperCase()}`;
  return `holds the unseen character ${code}, which turns the direction of the text after it. Delete the value and type it anew.`;
}

/**
 * Turns YAML nodes into plain values. Every scalar stays the text that was written: `2024-10-04`, `007`, `No` and `13:00`
 * mean what the key at their place says, never what YAML guesses. Keys that start with `x-` are the user's own and left out.
 */
export function toPlain(root: unknown, anchors: Anchors, places: Places, problems: Problems): Plain {
  let values = 0;
  let full = false;
  const inside = new Set<Node>();
  const fail = (node: unknown, path: YamlPath, code: 'SEASON_YAML' | 'SEASON_KEY_TWICE' | 'SEASON_KEY', text: string) =>
    problems.add({ code, file: SEASON_FILE_NAME, ...places.node(node), message: `${pathText(path)} ${text}` });

  const map = (node: YAMLMap, path: YamlPath): Plain => {
    const out: { [key: string]: Plain } = {};
    const lines = new Map<string, number>();
    for (const pair of node.items) {
      const key = keyText(pair.key);
      if (key === null) {
        fail(pair.key, path, 'SEASON_YAML', 'has a list or map as a key; keys are plain words.');
      } else if (key === '<<') {
        fail(pair.key, path, 'SEASON_YAML', 'has a merge key (<<), which is not read. Write the keys out.');
      } else if (key === '__proto__') {
        fail(pair.key, path, 'SEASON_KEY', 'has the key "__proto__", which is not known. Delete it.');
      } else if (lines.has(key)) {
        const text = `stands twice in one map, first on line ${lines.get(key)}. Keep one of them.`;
        fail(pair.key, [...path, key], 'SEASON_KEY_TWICE', text);
      } else {
        lines.set(key, places.node(pair.key).line);
        if (!key.startsWith('x-')) out[key] = walk(pair.value, [...path, key]);
      }
    }
    return out;
  };

  const walk = (node: unknown, path: YamlPath): Plain => {
    values += 1;
    if (values > MOST_VALUES) {
      if (!full)
        fail(node, path, 'SEASON_YAML', `takes the file beyond ${MOST_VALUES} values. Write less, or fewer aliases.`);
      full = true;
      return null;
    }
    if (isScalar(node)) {
      const text = node.value === null ? null : (node.source ?? String(node.value));
      const turning = TURNS_TEXT.exec(text ?? '')?.[0];
      if (turning !== undefined) fail(node, path, 'SEASON_YAML', turningText(turning));
      return text;
    }
    if (isAlias(node)) {
      const target = anchors.target(node);
      if (target === undefined || inside.has(target)) {
        const why = target === undefined ? 'to which no anchor above belongs' : 'that holds itself';
        fail(node, path, 'SEASON_YAML', `is the alias ${show(`*${node.source}`)}, ${why}. Write the value out.`);
        return null;
      }
      return walk(target, path);
    }
    if (!isMap(node) && !isSeq(node)) return null;
    if (path.length > DEEPEST) {
      fail(node, path, 'SEASON_YAML', `is nested more than ${DEEPEST} deep. Check the brackets.`);
      return null;
    }
    inside.add(node);
    const out = isMap(node) ? map(node, path) : node.items.map((item, i) => walk(item, [...path, i]));
    inside.delete(node);
    return out;
  };

  return walk(root, []);
}
