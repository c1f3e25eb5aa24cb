import type { Dirent } from 'node:fs';
import { readdir, realpath, stat } from 'node:fs/promises';
import { isAbsolute, join, relative, sep } from 'node:path';
import { isDynamicPattern } from 'tinyglobby';

/** Whether a real path lies in the folder with this real path. */
export function isInside(root: string, real: string): boolean {
  const way = relative(root, real);
  return !isAbsolute(way) && way !== '..' && !way.startsWith(`..${sep}`);
}

/** Folders inside the season folder that are links out of it, with `/`. They are never walked into. */
export async function foldersOut(folder: string): Promise<string[]> {
  const root = await realpath(folder);
  const entries: Dirent[] = await readdir(folder, { recursive: true, withFileTypes: true }).catch(() => []);
  const out: string[] = [];
  for (const entry of entries.filter((one) => one.isSymbolicLink())) {
    const full = join(entry.parentPath, entry.name);
    const real = await realpath(full).catch(() => null);
    if (real === null || isInside(root, real)) continue;
    if ((await stat(real)).isDirectory()) out.push(relative(folder, full).split(sep).join('/'));
  }
  return out.sort();
}

/** Whether a pattern leads through a folder; a step with a wildcard is taken to lead anywhere. */
export function leadsThrough(pattern: string, folder: string): boolean {
  const way = pattern.split('/').slice(0, -1);
  const steps = folder.split('/');
  for (const [i, step] of steps.entries()) {
    if (way[i]?.includes('**')) return true;
    if (way[i] === undefined || (way[i] !== step && !isDynamicPattern(way[i]))) return false;
  }
  return true;
}
