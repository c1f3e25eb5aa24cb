import type { ColumnTable } from 'arquero';
import * as aq from 'arquero';
import { toLocalMs } from '../../base/zone.ts';
import type { Units } from '../../report/units.ts';
import type { LoadedSeason } from '../../season/loaded.ts';
import { integers, numbers, texts } from '../../tables/arrow.ts';
import { type ColumnDef, TABLES, type TableName } from '../../tables/columns.ts';
import { shownColumn } from './named-units.ts';

export interface DataOptions {
  /** `reader` (the default): feet, °F, percent, kWh, or metres, °C …, as the season's `show_units`; `stored`: SI, fractions, as `data/*.arrow` */
  units?: 'reader' | 'stored';
  /** true: readings that a check does not believe stay in, with the columns of flags; else they are missing */
  doubted?: boolean;
  /** id (on a sheet also the name) of a bin: its rows alone; of `fan`, those of its fans */
  bin?: string;
  /** weather alone: past years instead of this season's */
  history?: boolean;
}

/** What was left out on the way, for the page to say. */
export interface LeftOut {
  table: TableName;
  doubted: number;
  of: number;
}

/** Tables that were asked for before; they do not change. */
const made = new WeakMap<LoadedSeason, Map<string, SeasonData>>();

export interface SeasonData {
  table: ColumnTable;
  leftOut: LeftOut;
}

/** What has been asked of a season so far, to be ready for the next time. */
export function askedData(loaded: LoadedSeason): { name: TableName; options: DataOptions }[] {
  return [...(made.get(loaded)?.keys() ?? [])].map(
    (key) => JSON.parse(key) as { name: TableName; options: DataOptions },
  );
}

/**
 * A table of the loaded season for arquero's verbs. Every table has `day` (`2024-10-04`), `month` (`2024-10`) and `hour` (0 to 23) by
 * the site's clock beside `time`; tables with a bin have its name. Missing numbers are null.
 *
 * @throws RangeError for a table that is not there, with those that are
 */
export function seasonData(loaded: LoadedSeason, units: Units, name: TableName, options: DataOptions = {}): SeasonData {
  const key = JSON.stringify({ name, options, shown: [units.system, units.zone.name] });
  const before = made.get(loaded) ?? new Map<string, SeasonData>();
  made.set(loaded, before);
  const found = before.get(key) ?? makeData(loaded, units, name, options);
  before.set(key, found);
  return found;
}

function makeData(loaded: LoadedSeason, units: Units, name: TableName, options: DataOptions): SeasonData {
  const defs: readonly ColumnDef[] | undefined = TABLES[name];
  if (defs === undefined) {
    throw new RangeError(`there is no table "${name}"; there are ${Object.keys(TABLES).join(', ')}`);
  }
  const source = loaded.tables[name];
  const rows = rowsOf(loaded, name, options);
  const pick = <T>(from: ArrayLike<T>): T[] => rows.map((row) => from[row]);
  const flagsOf = (def: ColumnDef) => {
    const flags = defs.find(({ type, name: of }) => type === 'flags' && isFor(of, def.name));
    return flags === undefined ? null : pick(integers(source, flags.name));
  };
  const columns: Record<string, unknown[]> = {};
  const leftOut: LeftOut = { table: name, doubted: 0, of: 0 };
  for (const def of defs) {
    if (def.type === 'time') Object.assign(columns, timeColumns(def.name, pick(numbers(source, def.name)), units));
    else if (def.type === 'integer') columns[def.name] = pick(integers(source, def.name));
    else if (def.type === 'flags') {
      if (options.doubted === true) columns[def.name] = pick(integers(source, def.name));
    } else if (def.type === 'text') {
      columns[def.name] = pick(texts(source, def.name));
      if (def.name === 'bin') columns.bin_name = namesOf(columns.bin as string[], loaded);
    } else {
      const shown = options.units === 'stored' ? null : shownColumn(def.name, def.unit, units.system);
      const flags = isPlace(def) ? null : flagsOf(def);
      const values = pick(numbers(source, def.name));
      columns[shown?.name ?? def.name] = values.map((value, i) => {
        if (Number.isNaN(value)) return null;
        if (!isPlace(def)) leftOut.of += 1;
        if (flags !== null && flags[i] !== 0 && options.doubted !== true) {
          leftOut.doubted += 1;
          return null;
        }
        return shown === null ? value : shown.shown(value);
      });
    }
  }
  return { table: aq.table(columns), leftOut };
}

/** Which rows were asked for. @throws RangeError for a bin of a table that knows none */
function rowsOf({ season, tables }: LoadedSeason, name: TableName, { bin, history = false }: DataOptions): number[] {
  const source = tables[name];
  const all = Array.from({ length: source.numRows }, (_, row) => row);
  if (bin === undefined) {
    if (name !== 'weather') return all;
    const role = texts(source, 'role');
    return all.filter((row) => (role[row] === 'history') === history);
  }
  const column = name === 'fan' ? 'fan' : TABLES[name].some((def) => def.name === 'bin') ? 'bin' : null;
  if (column === null) throw new RangeError(`${name} is not of single bins; leave "bin" out`);
  const wanted = name === 'fan' ? (season.bins.find(({ id }) => id === bin)?.fanIds ?? []) : [bin];
  const of = texts(source, column);
  return all.filter((row) => wanted.includes(of[row]));
}

/** Where a sensor hangs was stated, not measured. */
const isPlace = ({ name }: ColumnDef) => name === 'height_m' || name === 'from_centre_m';

/** `temp_flags` are of the temperature alone, `flags` of the whole row. */
function isFor(flags: string, column: string): boolean {
  return flags === 'flags' || column.startsWith(flags.replace('flags', ''));
}

function timeColumns(name: string, utcMs: readonly number[], units: Units): Record<string, unknown[]> {
  const at = utcMs.map((ms) => new Date(ms));
  if (name !== 'time') return { [name]: at };
  const days = new Map<number, string>();
  const day: string[] = [];
  const month: string[] = [];
  const hour: number[] = [];
  for (const ms of utcMs) {
    const local = toLocalMs(units.zone, ms);
    const number = Math.floor(local / DAY_MS);
    let text = days.get(number);
    if (text === undefined) {
      text = new Date(number * DAY_MS).toISOString().slice(0, 10);
      days.set(number, text);
    }
    day.push(text);
    month.push(text.slice(0, 7));
    hour.push(Math.floor((local - number * DAY_MS) / HOUR_MS));
  }
  return { time: at, day, month, hour };
}

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;

function namesOf(ids: readonly string[], { season }: LoadedSeason): string[] {
  const names = new Map(season.bins.map(({ id, name }) => [id, name]));
  return ids.map((id) => names.get(id) ?? id);
}
