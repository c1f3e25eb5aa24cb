import { isDynamicPattern } from 'tinyglobby';
import type { Check } from './check.ts';
import type { Draft } from './draft.ts';
import { checkFile, type FileText } from './file.ts';
import { checkReference, idsOf } from './ids.ts';
import { type Match, matchFiles } from './match-files.ts';
import type { SeasonText } from './season-schema.ts';
import { show } from './show.ts';

/** Checks all entries of `files`. @returns for each entry the files that it matches */
export async function checkFiles(draft: Draft<SeasonText>, folder: string, check: Check): Promise<string[][]> {
  const matches: Match[][] = [];
  for (const [i, file] of (draft.files ?? []).entries()) {
    matches.push([]);
    if (file === undefined) continue;
    checkFile(file, ['files', i], check);
    checkConstants(draft, file, i, check);
    if (file.path !== undefined) matches[i] = await matchFiles(folder, file.path, ['files', i, 'path'], check.report);
  }
  checkOverlap(draft, matches, check);
  return matches.map((some) => some.map((match) => match.path));
}

function checkConstants(draft: Draft<SeasonText>, file: Draft<FileText>, i: number, check: Check): void {
  checkReference('bin', file.bin, idsOf(draft.bins, ['bins'], check), ['files', i, 'bin'], check);
  checkReference('fan', file.fan, idsOf(draft.fans, ['fans'], check), ['files', i, 'fan'], check);
  checkReference('tariff', file.tariff, idsOf(draft.tariffs, ['tariffs'], check), ['files', i, 'tariff'], check);
  if (check.bad.under(['bins'])) return;
  const bins = (draft.bins ?? []).filter((bin) => file.bin === undefined || bin?.id === file.bin);
  // A bin that is not there is told already; its cables cannot be known.
  if (bins.length === 0) return;
  const cables = bins.flatMap((bin) => bin?.cables?.map((cable) => cable?.id ?? '') ?? []);
  checkReference('cable', file.cable, [...new Set(cables)], ['files', i, 'cable'], check);
}

interface Taken {
  entry: number;
  path: string;
}

/**
 * A file that two entries match would count twice. On purpose is only a file that both name outright, for different
 * things: one logger that writes fan and plenum into one file, or two fans side by side.
 */
function checkOverlap(draft: Draft<SeasonText>, matches: readonly Match[][], { report }: Check): void {
  const taken = new Map<string, Taken[]>();
  matches.forEach((some, i) => {
    for (const { path, real } of some) {
      const before = (taken.get(real) ?? []).find((one) => !onPurpose(draft.files?.[one.entry], draft.files?.[i]));
      if (before !== undefined) {
        const other = before.entry === i ? 'this entry' : `files[${before.entry}]`;
        const as = before.path === path ? '' : ` as ${show(before.path)}`;
        const text = `matches ${show(path)}, which ${other} matches too${as}. Narrow the patterns, so that each file is read once.`;
        report('SEASON_OVERLAP', ['files', i, 'path'], text);
      }
      taken.set(real, [...(taken.get(real) ?? []), { entry: i, path }]);
    }
  });
}

function onPurpose(a: Draft<FileText> | undefined, b: Draft<FileText> | undefined): boolean {
  if (a === undefined || b === undefined || a === b || a.path === undefined || b.path === undefined) return false;
  if (isDynamicPattern(a.path) || isDynamicPattern(b.path)) return false;
  const what = (file: Draft<FileText>) => JSON.stringify([file.holds, file.bin, file.fan, file.cable, file.tariff]);
  return what(a) !== what(b);
}
