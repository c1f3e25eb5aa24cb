import { lstat, realpath, stat } from 'node:fs/promises';
import { isAbsolute, join } from 'node:path';
import { escapePath, glob, isDynamicPattern } from 'tinyglobby';
import { foldersOut, isInside, leadsThrough } from './links-out.ts';
import type { YamlPath } from './path-text.ts';
import type { Report } from './report.ts';
import { show } from './show.ts';

/** Folders that the kit writes into a season folder, each by a command of its own. */
const OWN_FOLDERS = ['review', 'year-end', 'pages', 'loaded', 'sweep', '.cache'] as const;

/** What a pattern must never take in: what the kit itself writes. */
const OWN = [...OWN_FOLDERS.map((name) => `${name}/**`), 'season.yaml'];

export interface Match {
  /** from the season folder, with `/` */
  path: string;
  /** where the file really is: two names of one file share it */
  real: string;
}

/** The files that a pattern of season.yaml matches, sorted; what is wrong with it is reported at `at`. */
export async function matchFiles(folder: string, pattern: string, at: YamlPath, report: Report): Promise<Match[]> {
  const unsafe = unsafePattern(pattern);
  if (unsafe !== null) {
    report('SEASON_PATH', at, `is ${show(pattern)}; ${unsafe}`);
    return [];
  }
  const root = await realpath(folder);
  const out = isDynamicPattern(pattern) ? await foldersOut(folder) : [];
  const matches: Match[] = [];
  let refused = 0;
  for (const link of out.filter((one) => leadsThrough(pattern, one))) {
    refused += 1;
    const text = `is ${show(pattern)} and leads into ${show(link)}; that is a link out of the season folder. Copy its files into the season folder.`;
    report('SEASON_PATH', at, text);
  }
  for (const path of await candidates(folder, pattern, out)) {
    const found = await look(root, folder, path);
    if (typeof found === 'string') {
      refused += 1;
      const which = path === pattern ? `is ${show(pattern)}` : `is ${show(pattern)} and matches ${show(path)}`;
      report('SEASON_PATH', at, `${which}; ${found}`);
    } else if (found !== null) matches.push(found);
  }
  if (matches.length === 0 && refused === 0) {
    const why = isDynamicPattern(pattern) ? 'no file of the season folder matches it' : 'there is no such file';
    report('SEASON_PATTERN', at, `is ${show(pattern)}; ${why}. Check the name, or delete the entry.`);
  }
  return matches;
}

/** Why a path may not be used, whatever is on disk. */
function unsafePattern(pattern: string): string | null {
  if (isAbsolute(pattern) || /^(?:[A-Za-z]:|~|\/|\\\\)/.test(pattern)) {
    return 'an absolute path. Paths start from the season folder, e.g. logs/fans.csv.';
  }
  if (pattern.includes('\\')) return 'folders are parted by / on every system, e.g. logs/fans.csv.';
  // Braces could hide the dots from a plain look at the steps.
  if (pattern.split(/[/{},()|]/).includes('..')) {
    return 'it leads out of the season folder (..). Put the file into the season folder.';
  }
  const plain = withoutDots(pattern);
  if (plain === 'season.yaml' || OWN_FOLDERS.some((name) => plain.startsWith(`${name}/`))) {
    const folders = OWN_FOLDERS.map((name) => `${name}/`).join(', ');
    return `that is written or read by the kit itself. Name a file of your own, outside ${folders}.`;
  }
  if ([...pattern].some((char) => char < ' ')) return 'it holds a control character. Write the plain name.';
  return null;
}

const withoutDots = (pattern: string) => pattern.replace(/^(?:\.\/)+/, '');

async function candidates(folder: string, pattern: string, out: readonly string[]): Promise<string[]> {
  const literal = withoutDots(pattern);
  // A name with brackets in it is first of all a name.
  const there = await lstat(join(folder, literal)).catch(() => null);
  if (there !== null) return [literal];
  if (!isDynamicPattern(literal)) return [];
  const found = await glob(literal, {
    cwd: folder,
    ignore: [...OWN, ...out.map((link) => `${escapePath(link)}/**`)],
    expandDirectories: false,
    onlyFiles: true,
  }).catch(() => []);
  return found.sort((a, b) => (a < b ? -1 : 1));
}

/** The file, or why it is refused, or null for a folder that a pattern met by its way. */
async function look(root: string, folder: string, path: string): Promise<Match | string | null> {
  const full = join(folder, path);
  const real = await realpath(full).catch(() => null);
  if (real === null) return 'that is a link to nothing. Mend or delete it.';
  if (!isInside(root, real)) {
    return 'that is a link out of the season folder. Copy the file into the season folder.';
  }
  const what = await stat(real);
  if (what.isFile()) return { path, real };
  return what.isDirectory()
    ? 'that is a folder. Name its files, e.g. with /*.csv at the end.'
    : 'that is no plain file.';
}
