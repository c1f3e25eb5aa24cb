import type { SeasonReview } from '../../analysis/types.ts';
import type { SectionBody, Table } from '../../report/page.ts';
import type { Units } from '../../report/units.ts';
import type { FileLoad, Finding, LoadedSeason } from '../../season/loaded.ts';
import { allFindings } from '../all-findings.ts';
import { coverageFigure } from '../coverage-figure.ts';
import { findingEntries, flagTable, isToDo, notBelieved } from '../load-tables.ts';
import { capital, counted, sentence } from '../words.ts';

/** Findings that ask for something, those that leave most out first; no more than so many are told one by one. */
const MOST = 8;

/** What was read, what was left out, and what to mend. */
export function qualitySection(loaded: LoadedSeason, units: Units): SectionBody {
  const { files, totals } = loaded.load;
  const kept = files.reduce((sum, file) => sum + file.kept, 0);
  const doubted = notBelieved(loaded);
  const figure = kept === 0 ? null : coverageFigure(loaded, units);
  return {
    lead:
      kept === 0
        ? 'Can’t tell: no file holds a value.'
        : `Of ${units.say('count', kept)} values read from ${counted(files.length, 'file')}, ${units.say('count', doubted)} (${units.say('share', doubted / kept)}) are not believed and left out; ${totals.rejected === 0 ? 'all others' : `${units.say('count', totals.rejected)} more`} could ${totals.rejected === 0 ? '' : 'not '}be read. These are counts and carry no interval.`,
    table: holdsTable(files),
    figures: figure === null ? [] : [figure],
    tables: [flagTable(loaded)],
    notes: [
      'Every cell of a file is kept, empty, not to be read, or outside the season; none is dropped in silence. The page on data quality lists each finding and rule.',
    ],
  };
}

/** What asks for something to be done: the sensors, logs and clocks to mend. */
export function mendSection(loaded: LoadedSeason, review: SeasonReview, units: Units): SectionBody {
  const { season } = loaded;
  // A log that is contradicted takes hours, energy and cost with it: it stands first.
  const weight = ({ kind, cells }: Finding) => (kind === 'contradicted' ? Number.POSITIVE_INFINITY : cells);
  const todo = allFindings(loaded, review)
    .filter(isToDo)
    .sort((a, b) => (weight(a) === weight(b) ? 0 : weight(b) - weight(a)));
  const told = todo.slice(0, MOST);
  return {
    lead:
      todo.length === 0
        ? 'Nothing: the checks found no sensor, log or clock that asks for something.'
        : `${capital(counted(todo.length, 'finding'))} ${todo.length === 1 ? 'asks' : 'ask'} for something to be done${told.length < todo.length ? `; the ${told.length} that leave most out stand here` : ''}. Mended, ${todo.length === 1 ? 'it narrows' : 'they narrow'} intervals and ${todo.length === 1 ? 'brings' : 'bring'} back numbers that are withheld; what that saves in money can’t be told.`,
    entries: entriesOf(told, units, season.bins),
  };
}

function entriesOf(todo: readonly Finding[], units: Units, bins: LoadedSeason['season']['bins']) {
  return findingEntries(todo, units, bins).map(({ term, details }) => ({
    term,
    text: '',
    details: (details ?? []).map(sentence),
  }));
}

const HOLDS: Readonly<Record<FileLoad['holds'], string>> = {
  grain: 'Grain cables',
  fan: 'Fans',
  plenum: 'Plenums',
  weather: 'Weather',
  tickets: 'Scale tickets',
  probes: 'Hand samples',
  bills: 'Bills',
};

/** Cells by what the files hold. */
function holdsTable(files: readonly FileLoad[]): Table {
  const kinds = [...new Set(files.map((file) => `${file.holds}${file.role === 'history' ? ' history' : ''}`))];
  const rows = kinds.map((kind) => {
    const of = files.filter((file) => `${file.holds}${file.role === 'history' ? ' history' : ''}` === kind);
    const sum = (pick: (file: FileLoad) => number) => of.reduce((all, file) => all + pick(file), 0);
    return {
      holds: `${HOLDS[of[0].holds]}${of[0].role === 'history' ? ' of other years' : ''}`,
      files: of.length,
      rows: sum((file) => file.rows),
      kept: sum((file) => file.kept),
      missing: sum((file) => file.missing),
      rejected: sum((file) => file.rejected),
      outside: sum((file) => file.outside),
    };
  });
  return {
    id: 'holds',
    caption: 'Cells read, by what the files hold',
    columns: [
      { key: 'holds', label: 'Files of', quantity: null },
      { key: 'files', label: 'Files', quantity: 'count' },
      { key: 'rows', label: 'Rows', quantity: 'count' },
      { key: 'kept', label: 'Kept', quantity: 'count' },
      { key: 'missing', label: 'Empty', quantity: 'count' },
      { key: 'rejected', label: 'Not read', quantity: 'count' },
      { key: 'outside', label: 'Outside', quantity: 'count' },
    ],
    rows,
    empty: 'no file is listed.',
  };
}
