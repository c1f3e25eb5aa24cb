import { UsageError } from '../command-line.ts';
import type { PdfWish } from '../review/pdf-of.ts';

/** What a command line may ask of a year-end report. */
export interface YearEndWishes {
  /** folder of the report, or of all clients' reports; null: `year-end` in each season folder */
  out: string | null;
  /** folder of the consultant's summary; null: beside the folder that holds the clients */
  summary: string | null;
  previous: string | null;
  models: boolean;
  /** take what is kept of a season, and keep what is worked out */
  keep: boolean;
  preparedFor: string | null;
  preparedBy: string | null;
  /** `20 May 2025`, as the cover bears it */
  date: string | null;
  pdf: PdfWish | null;
  /** of the consultant's summary */
  units: 'us' | 'si';
}

const MONTHS = 'January February March April May June July August September October November December'.split(' ');

/** `2025-05-20` as `20 May 2025`. @throws UsageError for what is no day of the calendar */
export function coverDate(stated: string): string {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(stated) ?? [];
  const at = new Date(Date.UTC(Number(year), Number(month) - 1, Number(day)));
  if (day === undefined || at.getUTCMonth() !== Number(month) - 1 || at.getUTCDate() !== Number(day)) {
    const message = `--date is "${stated}"; it takes a day of the calendar as year-month-day, e.g. 2025-05-20.`;
    throw new UsageError([{ code: 'DATE', message }]);
  }
  return `${Number(day)} ${MONTHS[Number(month) - 1]} ${Number(year)}`;
}
