import type { Problem } from '../../base/errors.ts';
import { stampParser } from '../clock/stamp-parser.ts';
import type { ColumnPlan } from './column-plan.ts';
import type { CsvRecords } from './csv-records.ts';
import { timeText } from './place-rows.ts';
import { shown } from './shown.ts';
import { isMissing } from './words.ts';

/** Of a whole season three days in five are above 12; a few odd rows are slips of their own. */
const LEAST_SHARE = 0.1;
/** So many of the rows that do not fit may be no time at all, and one always, as a line of totals. */
const MOST_NEITHER = 0.05;

/** `dd/MM/yyyy` of `MM/dd/yyyy` and the reverse; null where the format has not one of each in numbers. */
export function otherWayRound(format: string): string | null {
  const tokens = format.match(/'[^']*'|[A-Za-z]+|[^A-Za-z']+/g) ?? [];
  const places = (token: RegExp) => tokens.flatMap((one, i) => (token.test(one) ? [i] : []));
  const [days, months] = [places(/^dd?$/), places(/^MM?$/)];
  if (days.length !== 1 || months.length !== 1) return null;
  const [[day], [month]] = [days, months];
  return tokens.map((one, i) => tokens[i === day ? month : i === month ? day : i] ?? one).join('');
}

/**
 * A file whose day and month stand the other way round than `time_format` says: days above 12 do not fit it, and all other rows fit it
 * and would be read as other days, up to eleven months off. A few rows may be no time in either order.
 *
 * @returns  null where that is not so
 */
export function dayAndMonth(
  path: string,
  format: string | null,
  needsTime: boolean,
  records: CsvRecords,
  { times: [time] }: Pick<ColumnPlan, 'times'>,
): Problem | null {
  const other = format === null ? null : otherWayRound(format);
  if (format === null || other === null) return null;
  const rows = records.fields.length - 1;
  const texts = Array.from({ length: rows }, (_, row) => timeText(records.fields[row + 1], time).trim());
  const stated = stampParser(format, needsTime);
  const unfit = [...texts.keys()].filter((row) => !isMissing(texts[row]) && typeof stated(texts[row]) === 'string');
  if (unfit.length === 0 || unfit.length < LEAST_SHARE * rows) return null;
  const swapped = stampParser(other, needsTime);
  const isUnfitSwapped = texts.map((text) => !isMissing(text) && typeof swapped(text) === 'string');
  const odd = unfit.filter((row) => !isUnfitSwapped[row]);
  const neither = unfit.length - odd.length;
  // A row that fits as it is stated alone says that the format is right there.
  const isSwapped = isUnfitSwapped.filter((one) => one).length === neither;
  if (!isSwapped || odd.length < LEAST_SHARE * rows || neither > Math.max(1, MOST_NEITHER * odd.length)) return null;
  const few = odd.length === 1 ? 'row has' : 'rows have';
  const all = neither === 0 ? 'all of its times fit' : `all of its times but ${neither} fit`;
  const message = `${odd.length} of its ${rows} ${few} a time that does not fit time_format ${format}, first ${shown(texts[odd[0]])}, while ${all} ${other}: day and month stand the other way round, and the rows that do fit would be read as other days. Set time_format: ${other}.`;
  return { code: 'FILE_ROWS', file: path, line: records.lines[odd[0] + 1], message };
}
