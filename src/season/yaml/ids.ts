import type { Check } from './check.ts';
import { didYouMean } from './nearest.ts';
import type { YamlPath } from './path-text.ts';
import { show } from './show.ts';

type WithId = { id?: string } | undefined;

/** Tells ids that stand twice in a list; capitals alone make no difference, since ids name files on any disk. */
export function checkIds(
  what: string,
  entries: readonly WithId[] | undefined,
  path: YamlPath,
  { report }: Check,
): void {
  const first = new Map<string, number>();
  entries?.forEach((entry, i) => {
    if (entry?.id === undefined) return;
    const key = entry.id.toLowerCase();
    const before = first.get(key);
    if (before === undefined) first.set(key, i);
    else {
      const text = `is ${show(entry.id)}, which ${what} [${before}] of the list has already. Each ${what} needs an id of its own.`;
      report('SEASON_ID', [...path, i, 'id'], text);
    }
  });
}

/** The ids of a list; null when one is wrong or stands twice: no reference can be called wrong then. */
export function idsOf(entries: readonly WithId[] | undefined, path: YamlPath, { bad }: Check): string[] | null {
  if (entries === undefined) return bad.under(path) ? null : [];
  const ids = entries.map((entry) => entry?.id);
  return ids.every((id) => id !== undefined) && new Set(ids).size === ids.length ? ids : null;
}

/** Tells a reference to an id that is not there. */
export function checkReference(
  what: string,
  id: string | undefined,
  known: readonly string[] | null,
  path: YamlPath,
  { report }: Check,
): void {
  if (id === undefined || known === null || known.includes(id)) return;
  const there = known.length === 0 ? `the file has no ${what}` : `there is ${known.slice(0, 30).join(', ')}`;
  report('SEASON_REFERENCE', path, `is ${show(id)}; no ${what} has that id (${there}).${didYouMean(id, known)}`);
}
