import { type Estimate, Z90 } from '../../base/estimate.ts';
import type { HourPieces } from './hour-pieces.ts';
import { sumOf, sumWhere } from './hour-sums.ts';
import { type Judged, type JudgedCases, mostOf, spanned } from './judged-hours.ts';

/** The time in which the fans ran, and that in which a silent log leaves it open. */
export interface FanTime {
  on: HourPieces;
  cases: JudgedCases;
  /** the log is silent: the fans may have run */
  silent: HourPieces;
  /** what those hours could have done */
  silentCases: JudgedCases;
  /** standard error of the hours on, h */
  sdH: number;
}

/** Whether a piece, so judged, is one to count. */
export type Is = (one: Judged, i: number) => boolean;

/** A part of the time: pieces on, and pieces of silence. */
export interface TimePart {
  on: (i: number) => boolean;
  silent: (i: number) => boolean;
}

const ALL: TimePart = { on: () => true, silent: () => true };

/**
 * Fan hours of a kind. The upper end holds the hours that nobody can tell, and of a log's silence those that would have been
 * of the kind; of the log's own error a part has its share, as the starts and stops do.
 *
 * @param untold  hours of which nobody can say whether they are of the kind
 */
export function countedHours(
  { on, cases, silent, silentCases, sdH }: FanTime,
  is: Is,
  untold: Is = () => false,
  part: TimePart = ALL,
): Estimate {
  const sum = (one: Judged) => sumWhere(on, (i) => part.on(i) && is(one, i));
  const maybe = (one: Judged) => sumWhere(silent, (i) => part.silent(i) && (is(one, i) || untold(one, i)));
  const more = sumWhere(on, (i) => part.on(i) && untold(cases.main, i)) + mostOf(silentCases, maybe);
  const all = sumOf(on.hours);
  const sd = (hours: number) => (all > 0 ? sdH * Math.sqrt(hours / all) : 0);
  const hours = sumWhere(on, part.on);
  return spanned(cases, sum, {
    most: hours + Z90 * sd(hours) + sumWhere(silent, part.silent),
    more,
    sd: sd(sum(cases.main)),
  });
}
