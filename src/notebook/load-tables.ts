import { onceFor } from '../base/once-for.ts';
import type { Entry, Table } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { CHECK_RULES } from '../season/checks/rules.ts';
import type { Finding, LoadedSeason } from '../season/loaded.ts';
import { integers, numbers } from '../tables/arrow.ts';
import { TABLES } from '../tables/columns.ts';
import { readingsByCable } from '../tables/readings-by-cable.ts';
import { capital, counted, sentence } from './words.ts';

const byCable = onceFor(readingsByCable);

const KINDS: Readonly<Record<Finding['kind'], string>> = {
  stuck: 'Stuck',
  spike: 'Spike',
  headspace: 'Above the grain',
  duplicate: 'Logged twice',
  clock: 'Clock',
  unit: 'Other unit',
  gap: 'Gap',
  silent: 'Never heard',
  reject: 'Could not be read',
  'meter-reset': 'Meter reset',
  contradicted: 'Contradicted',
};
/** A finding that asks for something; `Nothing, if …` does not. */
export function isToDo({ advice }: Finding): boolean {
  return advice !== null && !advice.startsWith('Nothing');
}

/** Values that were read and are not believed, each counted once. */
export const notBelieved = onceFor(({ tables }: LoadedSeason): number => {
  let sum = byCable(tables.readings).reduce((all, one) => all + one.flagged, 0);
  for (const name of ['fan', 'plenum', 'weather', 'tickets', 'probes'] as const) {
    const flags = integers(tables[name], 'flags');
    const values = TABLES[name]
      .filter((column) => column.type === 'number')
      .map(({ name: of }) => numbers(tables[name], of));
    flags.forEach((bits, row) => {
      if (bits !== 0) sum += values.filter((of) => !Number.isNaN(of[row])).length;
    });
  }
  return sum;
});

/** More of a kind than this are told as a count; all are in the table's file. */
const FIRST = 12;

/** Cells of every file: kept, missing, rejected, outside the season's bounds. They add up. */
export function fileTable(loaded: LoadedSeason): Table {
  const { files, totals } = loaded.load;
  const kept = files.reduce((sum, file) => sum + file.kept, 0);
  return {
    id: 'files',
    caption: 'Cells of each file: kept, empty, not to be read, and outside the season add up',
    columns: [
      { key: 'path', label: 'File', quantity: null },
      { key: 'holds', label: 'Holds', quantity: null },
      { key: 'rows', label: 'Rows', quantity: 'count' },
      { key: 'cells', label: 'Cells', quantity: 'count' },
      { key: 'kept', label: 'Kept', quantity: 'count' },
      { key: 'missing', label: 'Empty', quantity: 'count' },
      { key: 'rejected', label: 'Not read', quantity: 'count' },
      { key: 'outside', label: 'Outside', quantity: 'count' },
    ],
    rows: files.map((file) => ({
      ...file,
      holds: file.role === 'history' ? `${file.holds}, history` : file.holds,
    })) as never,
    total: {
      path: 'All files',
      rows: totals.rows,
      cells: totals.cells,
      kept,
      missing: totals.missing,
      rejected: totals.rejected,
      outside: totals.outside,
    },
    empty: 'none.',
  };
}

/** What each cable gave, and how much of it is believed. */
export function cableTable(loaded: LoadedSeason): Table {
  const nameOf = new Map(loaded.season.bins.map((bin) => [bin.id, bin.name]));
  return {
    id: 'cables',
    caption: 'Readings of each cable, and how many are not believed',
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'cable', label: 'Cable', quantity: null },
      { key: 'sensors', label: 'Sensors heard', quantity: 'count' },
      { key: 'temperatures', label: 'Temperatures', quantity: 'count' },
      { key: 'moistures', label: 'Moistures', quantity: 'count' },
      { key: 'flagged', label: 'Not believed', quantity: 'count' },
      { key: 'share', label: 'Share not believed', quantity: 'share', known: 'counted' },
    ],
    rows: byCable(loaded.tables.readings).map(({ bin, cable, sensors, temperatures, moistures, flagged }) => {
      const cells = temperatures + moistures;
      const share = cells === 0 ? { value: null, why: 'The cable gave no reading.' } : flagged / cells;
      return { bin: nameOf.get(bin) ?? bin, cable, sensors, temperatures, moistures, flagged, share };
    }),
    empty: 'No cable was read.',
  };
}

/** Flagged cells by flag, and how many findings stand behind them. */
export function flagTable(loaded: LoadedSeason): Table {
  const { findings, totals } = loaded.load;
  return {
    id: 'flags',
    caption: 'Values that can be read but are not believed, by reason; one with two reasons counts under both',
    columns: [
      { key: 'flag', label: 'Reason', quantity: null },
      { key: 'cells', label: 'Values', quantity: 'count' },
      { key: 'findings', label: 'Findings', quantity: 'count' },
    ],
    rows: Object.entries(totals.flagged).map(([flag, cells]) => ({
      flag: KINDS[flag as Finding['kind']],
      cells,
      findings: findings.filter((one) => one.kind === flag).length,
    })),
  };
}

/** `, most for “above the grain” (9,432)`; nothing where all is believed. */
export function mostlyFor({ load }: LoadedSeason, units: Units): string {
  const [first] = Object.entries(load.totals.flagged).sort(([, a], [, b]) => b - a);
  if (first === undefined || first[1] === 0) return '';
  const [flag, cells] = first;
  return `, most for “${KINDS[flag as Finding['kind']].toLowerCase()}” (${units.say('count', cells)})`;
}

/** Every finding with what to do about it. */
export function findingTable(findings: readonly Finding[]): Table {
  return {
    id: 'findings',
    caption: 'All findings',
    // On paper the findings stand once: by kind, where that tells all of them.
    folded: isToldByKind(findings) ? 'on screen' : true,
    columns: [
      { key: 'kind', label: 'Kind', quantity: null },
      { key: 'where', label: 'Where', quantity: null },
      { key: 'from', label: 'From', quantity: 'day' },
      { key: 'to', label: 'To', quantity: 'day' },
      { key: 'cells', label: 'Cells', quantity: 'count' },
      { key: 'text', label: 'What was found', quantity: null },
      { key: 'advice', label: 'What to do', quantity: null },
    ],
    rows: findings.map((one) => ({
      kind: KINDS[one.kind],
      where: one.where,
      from: one.fromMs ?? '',
      to: one.toMs ?? '',
      cells: one.cells,
      text: one.text,
      advice: one.advice ?? '',
    })),
    empty: 'none.',
  };
}

interface Named {
  id: string;
  name: string;
}

/** `B3 C4` as `Creek 33 (B3) C4`: readers know their bins by name. */
function placeText(where: string, bins: readonly Named[]): string {
  const bin = bins.find(({ id, name }) => name !== id && (where === id || where.startsWith(`${id} `)));
  return bin === undefined ? where : `${bin.name} (${bin.id})${where.slice(bin.id.length)}`;
}

/** A finding's text without the place that stands before it. */
function withoutPlace({ text, where }: Finding): string {
  return text.startsWith(`${where}: `) ? text.slice(where.length + 2) : text;
}

/** Findings by kind, the largest first, each with what to do. */
export function findingEntries(findings: readonly Finding[], units: Units, bins: readonly Named[]): Entry[] {
  return (Object.keys(KINDS) as Finding['kind'][]).flatMap((kind) => {
    const of = findings.filter((one) => one.kind === kind).sort((a, b) => b.cells - a.cells);
    if (of.length === 0) return [];
    const when = (one: Finding) => (one.fromMs === null ? '' : `From ${units.date(one.fromMs)}: `);
    return [
      {
        term: `${KINDS[kind]}: ${counted(of.length, 'finding')}`,
        text: of.length > FIRST ? `The ${FIRST} largest; all stand in the table.` : '',
        details: of
          .slice(0, FIRST)
          .map(
            (one) =>
              `${startText(one.where, bins)}. ${when(one)}${sentence(capital(withoutPlace(one)))}${one.advice === null ? '' : ` ${sentence(one.advice)}`}`,
          ),
      },
    ];
  });
}

/** A fan begins a sentence in capitals; a file's name stays as it is. */
function startText(where: string, bins: readonly Named[]): string {
  const place = placeText(where, bins);
  return place.startsWith('fan ') ? capital(place) : place;
}

/** Whether no kind has more findings than are told of it in words. */
function isToldByKind(findings: readonly Finding[]): boolean {
  return (Object.keys(KINDS) as Finding['kind'][]).every(
    (kind) => findings.filter((one) => one.kind === kind).length <= FIRST,
  );
}

/** The rules of the checks, in words. */
export function checkEntries(): Entry[] {
  return CHECK_RULES.map(({ title, rule, flag }) => ({
    term: title,
    text: rule,
    details: [`Told as: ${KINDS[flag].toLowerCase()}.`],
  }));
}

/** The first cells and rows that could not be read, as they stood. */
export function rejectTable(loaded: LoadedSeason): Table {
  const { rejects } = loaded.load;
  const first = rejects.slice(0, 20);
  return {
    id: 'rejects',
    caption:
      rejects.length > first.length
        ? `The first ${first.length} of ${rejects.length}; all are in rejects.csv`
        : 'What could not be read; also in rejects.csv',
    columns: [
      { key: 'place', label: 'File and line', quantity: null },
      { key: 'column', label: 'Column', quantity: null },
      { key: 'text', label: 'As it stood', quantity: null },
      { key: 'reason', label: 'Why', quantity: null },
    ],
    rows: first.map(({ file, line, column, text, reason }) => ({
      place: `${file}:${line}`,
      column: column ?? 'whole row',
      text: text.length > 60 ? `${text.slice(0, 60)}…` : text,
      reason,
    })),
    empty: 'everything could be read.',
  };
}
