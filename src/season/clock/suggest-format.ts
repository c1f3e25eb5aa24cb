/**
 * A `time_format` that a stamp looks like, for messages only: nothing is ever read by a guess.
 * Where day and month cannot be told apart, the month is put first, as the US writes it.
 */
export function suggestFormat(text: string): string | null {
  if (/^\d{10}$/.test(text)) return 'epoch seconds';
  if (/^\d{13}$/.test(text)) return 'epoch milliseconds';
  const match =
    /^(\d{1,2})([-/.])(\d{1,2})\2(\d{4}|\d{2})(?:(,?\s+)(\d{1,2}):\d{2}(:\d{2})?(\s*[AaPp]\.?[Mm]\.?)?)?$/.exec(text);
  if (match === null) return null;
  const [, first, slash, second, year, gap, hour, seconds, half] = match;
  const dayFirst = Number(first) > 12 || (slash === '.' && Number(second) <= 12);
  const date = [dayFirst ? 'dd' : 'MM', dayFirst ? 'MM' : 'dd', year.length === 4 ? 'yyyy' : 'yy'].join(slash);
  if (hour === undefined) return date;
  const time = `${half === undefined ? 'HH' : 'hh'}:mm${seconds === undefined ? '' : ':ss'}`;
  const end = half === undefined ? '' : `${/^\s/.test(half) ? ' ' : ''}a`;
  return `${date}${gap}${time}${end}`;
}
