import type { Problem } from '../base/errors.ts';
import { InputError } from '../base/errors.ts';
import { TABLES, type TableName } from '../tables/columns.ts';
import { allOutside, outsideFindings } from './all-outside.ts';
import { checkSeason } from './checks/check-season.ts';
import { KEYS } from './column-keys.ts';
import { joinFlags } from './join-flags.ts';
import type { FileLoad, Finding, LoadedSeason, Reject, SeasonTables } from './loaded.ts';
import { readArchive } from './readers/archives/read-archive.ts';
import { fillHumidity } from './readers/fill-humidity.ts';
import { flagDuplicates } from './readers/flag-duplicates.ts';
import { readCsv } from './readers/read-csv.ts';
import { readText } from './readers/read-text.ts';
import { rejectFinding } from './readers/reject-finding.ts';
import { TableBuilder } from './readers/table-builder.ts';
import { Tally } from './readers/tally.ts';
import type { FileSpec, Season } from './season.ts';

/** What looks the tables over; the kit's own checks unless a test puts others in. */
export type SeasonCheck = typeof checkSeason;

/**
 * Read every file of a season into tables: in the order of `files`, paths sorted, rows as they stand in the file.
 *
 * @param onStage  told what is being done, one short line each
 * @throws         InputError with the problems of all files when any file as a whole cannot be read; nothing is half-loaded
 */
export async function loadSeason(
  season: Season,
  onStage: (text: string) => void = () => {},
  check: SeasonCheck = checkSeason,
): Promise<LoadedSeason> {
  const builders = new Map<TableName, TableBuilder>();
  for (const name of Object.keys(TABLES) as TableName[]) builders.set(name, new TableBuilder(name));
  const files: FileLoad[] = [];
  const rejects: Reject[] = [];
  const findings: Finding[] = [];
  const problems: Problem[] = [];
  for (const spec of season.files) {
    for (const path of spec.paths) {
      onStage(`reading ${path}`);
      const read = readText(season.folder, path);
      if ('code' in read) {
        problems.push(namedIn(read, spec));
        continue;
      }
      const tally = new Tally(path);
      const table = builders.get(KEYS[spec.holds].table)!;
      const reading = { season, spec, path, text: read.text, table, tally, findings };
      problems.push(...(spec.format === null ? readCsv(reading) : readArchive(reading, spec.format)));
      files.push(tally.done(spec, read));
      for (const reject of tally.rejects) rejects.push(reject);
      if (tally.rejects.length > 0) findings.push(rejectFinding(tally));
    }
  }
  const nothing = allOutside(season, files);
  if (nothing !== null) problems.push(nothing);
  if (problems.length > 0) throw new InputError(problems);
  findings.push(...outsideFindings(season, files));
  fillHumidity(builders.get('weather')!);
  for (const holds of ['grain', 'fan', 'plenum', 'weather'] as const) {
    findings.push(...flagDuplicates(holds, builders.get(KEYS[holds].table)!));
  }
  onStage('checking the readings');
  const build = () =>
    Object.fromEntries([...builders].map(([name, builder]) => [name, builder.table()])) as SeasonTables;
  const checked = check(season, build());
  const flagged = joinFlags(builders, checked.flags);
  findings.push(...checked.findings);
  const sum = (key: 'rows' | 'cells' | 'missing' | 'rejected' | 'outside') =>
    files.reduce((all, file) => all + file[key], 0);
  const totals = {
    rows: sum('rows'),
    cells: sum('cells'),
    missing: sum('missing'),
    rejected: sum('rejected'),
    outside: sum('outside'),
    flagged,
  };
  return { season, tables: build(), load: { files, rejects, findings, totals } };
}

/** A file that cannot be read at all has no line of its own: where season.yaml names it. */
function namedIn(problem: Problem, { at }: FileSpec): Problem {
  return { ...problem, message: `${problem.message} It is named in season.yaml:${at.line}:${at.column}.` };
}
