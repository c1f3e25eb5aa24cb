import type { YamlPath } from './path-text.ts';

/** A value of which any part may be lacking, because it was left out or was wrong and has been reported. */
export type Draft<T> = T extends readonly (infer U)[]
  ? (Draft<U> | undefined)[]
  : T extends object
    ? { [K in keyof T]?: Draft<T[K]> }
    : T;

/** Takes away what has been reported as wrong, so that later checks meet only what can be trusted. */
export function prune(data: unknown, path: YamlPath): void {
  let holder = data;
  for (const step of path.slice(0, -1)) {
    if (holder === null || typeof holder !== 'object') return;
    holder = (holder as Record<string | number, unknown>)[step];
  }
  const last = path.at(-1);
  if (last === undefined || holder === null || typeof holder !== 'object') return;
  if (Array.isArray(holder)) holder[last as number] = undefined;
  else delete (holder as Record<string, unknown>)[last];
}

/** The places that have been reported as wrong: a check that would only repeat them keeps still. */
export class Bad {
  private readonly paths: string[];

  constructor(paths: readonly YamlPath[]) {
    this.paths = paths.map(key);
  }

  /** Whether the value at the path, or anything in it, was wrong. */
  under(path: YamlPath): boolean {
    const start = key(path);
    return this.paths.some((one) => one.startsWith(start));
  }
}

// Every step ends with a character that no key holds, so that `fan` is no start of `fans`.
const key = (path: YamlPath) => path.map((step) => `${step}\u0000`).join('');
