import * as z from 'zod';
import { exampleOf, linearUnit, unitsOf } from '../../base/units.ts';
import { COLUMN_KEYS, constantsOf, KEYS, keysOf, type MeasuredKey } from '../column-keys.ts';
import { impliedUnit } from '../implied-unit.ts';
import type { ColumnSpec } from '../season.ts';
import type { Check } from './check.ts';
import type { Draft } from './draft.ts';
import { fail, list, map, text } from './fields.ts';
import type { FileText } from './file.ts';
import { unknownKey } from './issues.ts';
import { nearest } from './nearest.ts';
import type { YamlPath } from './path-text.ts';
import { show } from './show.ts';

const TAKES = 'the header of a column, or { column: header, unit: … }';
const TWO_TAKES = 'two headers, that of the date and that of the time of day, e.g. [Date, Time]';

const columnSchema = () =>
  z.union(
    [
      text('header of the column'),
      map(
        {
          column: text('header of the column').optional(),
          headers: text('wide files: headers of all sensors, with {cable} and {sensor}').optional(),
          unit: text('unit of the column').optional(),
        },
        'a column and its unit',
      ),
      list(
        text('header of the column'),
        'times only: the columns of the date and of the time of day',
        TWO_TAKES,
      ).superRefine((headers, ctx) => {
        if (headers.length !== 2) fail(ctx, 'SEASON_TYPE', `has ${headers.length} entries; it takes ${TWO_TAKES}.`);
      }),
    ],
    { error: TAKES },
  );

/** Which keys a file may have hangs on what it holds, so checkColumns looks at them. */
export const columnsSchema = () =>
  z.record(z.string(), columnSchema(), { error: 'a map of columns, e.g. { time: Stamp, bin: Bin }' }).meta({
    description: 'which column holds what; headers may be left out when they are these keys',
    propertyNames: { anyOf: [{ enum: COLUMN_KEYS }, { pattern: '^x-' }] },
  });

type ColumnText = z.infer<ReturnType<typeof columnSchema>>;
export type ColumnsText = z.infer<ReturnType<typeof columnsSchema>>;

export function checkColumns(file: Draft<FileText>, path: YamlPath, check: Check): void {
  const { holds, columns } = file;
  const { report, bad } = check;
  // Which columns a file has to have hangs on its shape.
  if (holds === undefined || columns === undefined || bad.under([...path, 'shape'])) return;
  const at = [...path, 'columns'];
  const { times, places, measured, required = [], oneOf = measured.map((one) => one.key) } = KEYS[holds];
  const wide = file.shape === 'wide' && holds === 'grain';
  const known = keysOf(holds).filter((key) => !(wide && (key === 'cable' || key === 'sensor')));
  for (const [key, column] of Object.entries(columns)) {
    if (column === undefined) continue;
    if (wide && (key === 'cable' || key === 'sensor')) {
      const text = `is no column of a wide file; write {${key}} in headers instead, e.g. headers: "T {cable}-{sensor}".`;
      report('SEASON_CONFLICT', [...at, key], text, 'key');
    } else if (!known.includes(key)) report('SEASON_KEY', [...at, key], unknownKey(key, known), 'key');
    else if (Array.isArray(column)) {
      if (!times.includes(key)) {
        report(
          'SEASON_TYPE',
          [...at, key],
          `is a list; only ${times.join(' and ')} may stand in two columns. It takes ${TAKES}.`,
        );
      }
    } else {
      const measure = measured.find((one) => one.key === key) ?? null;
      checkColumn(column, measure, wide, 'cable' in file, [...at, key], check);
    }
  }
  const headers = Object.values(columns).map((one) =>
    typeof one === 'object' && !Array.isArray(one) ? one.headers : undefined,
  );
  const inHeaders = (key: string) => wide && key === 'bin' && headers.some((one) => one?.includes('{bin}'));
  // A misspelt key is told already; the column that it means is not missing.
  const misspelt = Object.keys(columns).filter((key) => columns[key] !== undefined && !known.includes(key));
  const meant = new Set(misspelt.map((key) => nearest(key, known)));
  const has = (key: string) =>
    columns[key] !== undefined || bad.under([...at, key]) || inHeaders(key) || meant.has(key);
  const constants = constantsOf(holds);
  for (const key of [...times, ...places, ...required].filter((one) => known.includes(one) && !has(one))) {
    const constant = constants.find((one) => one === key);
    if (constant !== undefined && (file[constant] !== undefined || bad.under([...path, constant]))) continue;
    const or = constant === undefined ? '' : `, or \`${key}: …\` for the whole file`;
    report('SEASON_MISSING', [...at, key], `is missing; a ${holds} file needs its column${or}.`, 'parent');
  }
  if (oneOf.length > 0 && !oneOf.some(has) && misspelt.length === 0) {
    report('SEASON_MISSING', at, `name no measurement; a ${holds} file takes at least one of ${oneOf.join(', ')}.`);
  }
  for (const key of constants.filter((one) => file[one] !== undefined && columns[one] !== undefined)) {
    const text = 'is given for the whole file and as a column. Keep one of them.';
    report('SEASON_CONFLICT', [...path, key], text, 'key');
  }
}

function checkColumn(
  column: Exclude<Draft<ColumnText>, unknown[]>,
  measure: MeasuredKey | null,
  wide: boolean,
  oneCable: boolean,
  path: YamlPath,
  check: Check,
): void {
  const { report, bad } = check;
  const form: { column?: string; headers?: string; unit?: string } = typeof column === 'string' ? { column } : column;
  if (wide && measure !== null) checkHeaders(form, oneCable, path, check);
  else if (form.headers !== undefined) {
    report(
      'SEASON_CONFLICT',
      [...path, 'headers'],
      'is for the sensors of a wide file (shape: wide); here write column.',
      'key',
    );
  } else if (form.column === undefined && !bad.under(path)) {
    report('SEASON_MISSING', [...path, 'column'], 'is missing; it takes the header of the column.', 'parent');
  }
  if (!bad.under([...path, 'unit'])) checkUnit(form, measure, path, check);
}

function checkHeaders(
  form: { column?: string; headers?: string },
  oneCable: boolean,
  path: YamlPath,
  { report, bad }: Check,
): void {
  if (form.headers === undefined) {
    if (bad.under([...path, 'headers'])) return;
    const text = 'takes headers in a wide file, e.g. { headers: "T {cable}-{sensor}", unit: degC }.';
    report('SEASON_MISSING', path, text);
    return;
  }
  if (form.column !== undefined) {
    report('SEASON_CONFLICT', [...path, 'column'], 'stands beside headers. A wide file takes headers only.', 'key');
  }
  const wanted = oneCable ? ['sensor'] : ['cable', 'sensor'];
  for (const name of wanted.filter((one) => form.headers?.split(`{${one}}`).length !== 2)) {
    const text = `is ${show(form.headers)}; it must hold {${name}} once, e.g. "T {cable}-{sensor}".`;
    report('SEASON_CHOICE', [...path, 'headers'], text);
  }
}

function checkUnit(
  form: { column?: string; headers?: string; unit?: string },
  measure: MeasuredKey | null,
  path: YamlPath,
  { report, currency }: Check,
): void {
  const { unit } = form;
  const kind = measure?.kind ?? null;
  if (measure === null || kind === null) {
    if (unit !== undefined) report('SEASON_UNIT', [...path, 'unit'], `is ${show(unit)}; this column takes no unit.`);
    return;
  }
  const units = unitsOf(kind, currency);
  if (unit === undefined) {
    if (impliedUnit(measure, kind, form.headers ?? form.column ?? '', currency) !== null) return;
    const [, example] = /^[\d.]+ ?(.*)$/.exec(exampleOf(kind, currency)) ?? ['', units[0]];
    const quoted = example === '%' ? '"%"' : example;
    const text = `has no unit; a column of ${kind} needs one (units: ${units.join(', ')}). Write e.g. { column: ${form.column ?? '…'}, unit: ${quoted} }.`;
    report('SEASON_UNIT', path, text);
  } else if (linearUnit(kind, unit, currency) === null) {
    report(
      'SEASON_UNIT',
      [...path, 'unit'],
      `is ${show(unit)}; that is no unit of ${kind} (units: ${units.join(', ')}).`,
    );
  }
}

export function toColumns(text: ColumnsText): Record<string, ColumnSpec> {
  return Object.fromEntries(
    Object.entries(text).map(([key, column]) => [
      key,
      typeof column === 'string'
        ? { header: column, unit: null }
        : Array.isArray(column)
          ? { header: column[0], clock: column[1], unit: null }
          : { header: (column.headers ?? column.column) as string, unit: column.unit ?? null },
    ]),
  );
}
