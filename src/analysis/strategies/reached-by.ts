import type { SweepRow } from './sweep-columns.ts';
import { wilsonInterval } from './wilson.ts';

/** How often a strategy had reached the target by a date. */
export interface ReachedBy {
  /** local calendar day, `11-15`; null: the end of the season */
  by: string | null;
  years: number;
  reached: number;
  chance: number | null;
  /** 90 %, for so many years */
  chanceInterval: [low: number, high: number] | null;
}

/**
 * The chance of having reached the target for good by a day.
 *
 * @param rows     one a year
 * @param startOn  local date on which the season's own run begins; a day of the year before it belongs to the next year
 * @param by       `MM-DD`, inclusive; null: by the end
 */
export function reachedBy(rows: readonly SweepRow[], startOn: string, by: string | null): ReachedBy {
  const told = rows.filter((row) => row.reachedTarget !== null);
  const startDay = startOn.slice(5);
  const ownYear = startOn.slice(0, 4);
  const limitOf = ({ weather }: SweepRow) => {
    const year = Number(weather === 'season' ? ownYear : weather);
    return `${by! >= startDay ? year : year + 1}-${by}`;
  };
  const there = (row: SweepRow) =>
    row.reachedTarget === true && (by === null || (row.reachedOn !== null && String(row.reachedOn) <= limitOf(row)));
  const years = told.length;
  const reached = told.filter(there).length;
  return {
    by,
    years,
    reached,
    chance: years === 0 ? null : reached / years,
    chanceInterval: years === 0 ? null : wilsonInterval(reached, years),
  };
}
