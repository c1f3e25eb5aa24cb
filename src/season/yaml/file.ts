import type * as z from 'zod';
import { CONSTANTS, constantsOf, HOLDS } from '../column-keys.ts';
import type { FileSpec, Holds } from '../season.ts';
import type { Check } from './check.ts';
import { checkColumns, columnsSchema, toColumns } from './columns.ts';
import type { Draft } from './draft.ts';
import { checked, choice, id, map, text } from './fields.ts';
import type { YamlPath } from './path-text.ts';
import { show } from './show.ts';
import { timeFormatProblem } from './time-format.ts';
import { isZone, zoneText } from './zone-name.ts';

const DELIMITER_TAKES = 'one character, e.g. ";", or tab';

export const fileSchema = () =>
  map(
    {
      path: text('path or pattern of the file or files, from the season folder, e.g. logs/cables-*.csv'),
      holds: choice(HOLDS as [Holds, ...Holds[]], 'what the file holds'),
      shape: choice(
        ['long', 'wide'],
        'grain only: one row for each sensor, or one column for each; long when left out',
      ).optional(),
      columns: columnsSchema().optional(),
      bin: id('the bin of the whole file').optional(),
      fan: id('the fan of the whole file').optional(),
      cable: id('the cable of the whole file').optional(),
      tariff: id('the tariff of the whole file').optional(),
      time_format: checked(
        'SEASON_TIME',
        'the form of the stamps, e.g. MM/dd/yyyy hh:mm a',
        (value) => {
          const reason = timeFormatProblem(value);
          return reason === null ? { ok: true } : { ok: false, reason };
        },
        { description: 'form of the stamps, e.g. MM/dd/yyyy hh:mm a; found when left out' },
      ).optional(),
      time_zone: checked(
        'SEASON_ZONE',
        'an IANA time zone, UTC or `local standard`',
        (name) =>
          name === 'local standard' || isZone(name)
            ? { ok: true }
            : { ok: false, reason: zoneText(name, ['local standard']) },
        { description: 'IANA name, UTC, or `local standard` (no daylight saving); the site’s when left out' },
      ).optional(),
      delimiter: checked(
        'SEASON_CHOICE',
        DELIMITER_TAKES,
        (value) =>
          readDelimiter(value) === null
            ? { ok: false, reason: `is ${show(value)}; it takes ${DELIMITER_TAKES}.` }
            : { ok: true },
        { description: 'what parts the columns, e.g. ";" or tab; found when left out', minLength: 1, maxLength: 3 },
      ).optional(),
      decimal: choice(['.', ','], 'decimal sign; found when left out').optional(),
      format: choice(
        ['epw', 'isd-lite', 'lcd', 'asos', 'open-meteo'],
        'public weather archive format; needs no columns',
      ).optional(),
      role: choice(
        ['season', 'history'],
        'weather only: of this season, or of past years; season when left out',
      ).optional(),
    },
    'files and what they hold',
  );

export type FileText = z.infer<ReturnType<typeof fileSchema>>;

function readDelimiter(text: string): string | null {
  if (text === 'tab' || text === '\\t') return '\t';
  return /^[^\p{L}\p{N}"'\r\n]$/u.test(text) && text.length === 1 ? text : null;
}

export function checkFile(file: Draft<FileText>, path: YamlPath, check: Check): void {
  const { report } = check;
  const { holds, format } = file;
  if (file.delimiter !== undefined && file.decimal !== undefined && file.delimiter === file.decimal) {
    report('SEASON_CONFLICT', [...path, 'decimal'], 'is the delimiter too; a number would fall apart. Change one.');
  }
  if (holds === undefined) return;
  const refuse = (keys: readonly (keyof FileText)[], why: string) => {
    for (const key of keys.filter((one) => file[one] !== undefined)) {
      report('SEASON_CONFLICT', [...path, key], `${why} Leave it out.`, 'key');
    }
  };
  refuse(
    CONSTANTS.filter((one) => !constantsOf(holds).includes(one)),
    `does not belong to a file that holds ${holds}.`,
  );
  if (holds !== 'weather') {
    refuse(['format'], 'is for files that hold weather.');
    if (file.role === 'history') refuse(['role'], 'is for files that hold weather.');
  }
  if (holds !== 'grain') refuse(['shape'], 'is for files that hold grain.');
  if (format !== undefined && holds === 'weather') {
    refuse(['columns', 'time_format', 'delimiter', 'decimal'], `is settled by the format ${format}.`);
    // Whoever downloads airport observations chooses the zone of their times, and not every download says it.
    if (format !== 'asos') refuse(['time_zone'], `is settled by the format ${format}.`);
    return;
  }
  if (file.shape === 'wide' && file.columns === undefined && !check.bad.under([...path, 'columns'])) {
    const text =
      'is missing; a wide file takes e.g. { time: Time, temperature: { headers: "T {cable}-{sensor}", unit: degC } }.';
    report('SEASON_MISSING', [...path, 'columns'], text, 'parent');
  }
  checkColumns(file, path, check);
}

export function toFile(text: FileText, at: FileSpec['at'], paths: readonly string[]): FileSpec {
  const { bin, fan, cable, tariff } = text;
  const constants = Object.fromEntries(
    Object.entries({ bin, fan, cable, tariff }).filter(([, value]) => value !== undefined),
  );
  return {
    pattern: text.path,
    at,
    paths,
    holds: text.holds,
    shape: text.shape ?? 'long',
    columns: text.columns === undefined ? null : toColumns(text.columns),
    constants,
    timeFormat: text.time_format ?? null,
    timeZone: text.time_zone ?? null,
    delimiter: text.delimiter === undefined ? null : readDelimiter(text.delimiter),
    decimal: text.decimal ?? null,
    format: text.format ?? null,
    role: text.role ?? 'season',
  };
}
