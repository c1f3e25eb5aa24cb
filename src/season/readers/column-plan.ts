import type { Problem } from '../../base/errors.ts';
import { linearUnit, unitsOf } from '../../base/units.ts';
import { KEYS, keysOf, type MeasuredKey } from '../column-keys.ts';
import { impliedUnit, nameAndUnit } from '../implied-unit.ts';
import type { ColumnSpec, FileSpec, Season } from '../season.ts';
import { keyName, matchHeader } from './match-header.ts';
import type { NumberColumn } from './number-cell.ts';
import { shown, shownList } from './shown.ts';
import { type WideSlot, wideColumns } from './wide-columns.ts';

/** A measured column found in a file. */
export interface MeasuredColumn {
  key: MeasuredKey;
  header: string;
  index: number;
  /** null: logged state */
  number: NumberColumn | null;
  /** wide: which sensor the column is, a position in `slots`; long: 0 */
  slot: number;
}

/** Where in a file each wanted thing stands. */
export interface ColumnPlan {
  headers: readonly string[];
  /** `clockIndex`: position of the time of day where it has a column of its own */
  times: { key: string; header: string; index: number; clockIndex: number | null }[];
  /** column positions of the keys that place a row */
  places: { key: string; index: number }[];
  /** constants that place every row */
  constants: Record<string, string>;
  measured: MeasuredColumn[];
  /** wide only: the sensors that the headers name */
  slots: WideSlot[] | null;
  /** the last position that a row must reach */
  lastIndex: number;
}

/**
 * Find the columns of a CSV file.
 *
 * @returns the plan, or every problem (FILE_COLUMNS, FILE_UNIT)
 */
export function columnPlan(
  season: Season,
  spec: FileSpec,
  path: string,
  headers: readonly string[],
): ColumnPlan | Problem[] {
  const keys = KEYS[spec.holds];
  const problems: Problem[] = [];
  const say = (message: string, code = 'FILE_COLUMNS') => problems.push({ code, file: path, line: 1, message });
  const columns = spec.columns ?? ownColumns(spec, headers);
  const wide = spec.holds === 'grain' && spec.shape === 'wide';
  const find = (key: string, wanted = columns[key].header): { header: string; index: number } | null => {
    const index = matchHeader(headers, wanted);
    if (typeof index === 'number') return { header: headers[index], index };
    say(`${key}: ${index}. Correct columns in season.yaml:${spec.at.line}.`);
    return null;
  };
  const constants = { ...spec.constants } as Record<string, string | undefined>;
  const plan: ColumnPlan = { headers, times: [], places: [], constants: {}, measured: [], slots: null, lastIndex: 0 };
  for (const key of keys.times) {
    if (columns[key] === undefined) say(missingKey(key, headers));
    else {
      const found = find(key);
      const { clock } = columns[key];
      const time = clock === undefined ? null : find(key, clock);
      if (found !== null && (clock === undefined || time !== null)) {
        const header = time === null ? found.header : `${found.header}, ${time.header}`;
        plan.times.push({ key, header, index: found.index, clockIndex: time?.index ?? null });
      }
    }
  }
  for (const key of keys.places) {
    if (wide && (key === 'cable' || key === 'sensor')) continue;
    if (columns[key] !== undefined) {
      const found = find(key);
      if (found !== null) plan.places.push({ key, index: found.index });
    } else if (constants[key] !== undefined) plan.constants[key] = constants[key];
    else if (!wide || !patternsHave(columns, '{bin}')) say(missingKey(key, headers));
  }
  const slots: WideSlot[] = [];
  for (const key of keys.measured) {
    const column = columns[key.key];
    if (column === undefined) continue;
    const number = key.kind === null ? null : numberColumn(season, key, column, say);
    if (number === undefined) continue;
    if (wide) {
      const bin = plan.constants.bin ?? null;
      const found = wideColumns(season, column.header, headers, bin, constants.cable ?? null, slots);
      for (const message of found.problems) say(`${key.key}: ${message}`);
      for (const one of found.columns) plan.measured.push({ key, number, ...one });
    } else {
      const found = find(key.key);
      if (found !== null) plan.measured.push({ key, number, ...found, slot: 0 });
    }
  }
  if (plan.measured.length === 0 && problems.length === 0) {
    const names = keys.measured.map((key) => key.key).join(', ');
    say(
      `has no measured column of ${spec.holds} (${names}); its headers are ${shownList(headers)}. Name them in columns.`,
    );
  }
  if (problems.length > 0) return problems;
  if (wide) plan.slots = slots;
  const clocks = plan.times.map((one) => one.clockIndex ?? 0);
  plan.lastIndex = Math.max(...clocks, ...[...plan.times, ...plan.places, ...plan.measured].map((one) => one.index));
  return plan;
}

const missingKey = (key: string, headers: readonly string[]) =>
  `there is no ${key} column: neither columns nor a constant names it and no header is "${key}"; the headers are ${shownList(headers)}. Add it to columns in season.yaml.`;

function patternsHave(columns: Readonly<Record<string, ColumnSpec>>, token: string): boolean {
  return Object.values(columns).some((column) => column.header.includes(token));
}

/** A file without `columns`: its headers are the keys, `temperature (degF)` with the unit. */
function ownColumns(spec: FileSpec, headers: readonly string[]): Record<string, ColumnSpec> {
  const wanted = keysOf(spec.holds);
  const out: Record<string, ColumnSpec> = {};
  for (const header of headers) {
    const { unit } = nameAndUnit(header);
    const key = wanted.find((one) => one === keyName(header));
    if (key !== undefined && out[key] === undefined) out[key] = { header, unit };
  }
  return out;
}

function numberColumn(
  season: Season,
  key: MeasuredKey,
  column: ColumnSpec,
  say: (message: string, code?: string) => void,
): NumberColumn | undefined {
  const kind = key.kind!;
  const unit = column.unit ?? impliedUnit(key, kind, column.header, season.currency) ?? nameAndUnit(column.header).unit;
  const allowed = unitsOf(kind, season.currency).join(', ');
  if (unit === null) {
    say(
      `${key.key} has no unit (allowed: ${allowed}). Write the header as "${key.key} (unit)", or give column and unit in columns.`,
      'FILE_UNIT',
    );
    return undefined;
  }
  const line = linearUnit(kind, unit, season.currency);
  if (line === null) {
    say(`${key.key} has the unit ${shown(unit)}; allowed are ${allowed}.`, 'FILE_UNIT');
    return undefined;
  }
  return { kind, unit, line, decimal: '.', currency: season.currency };
}
