import { median } from '../../base/stats/quantile.ts';
import { type Spread, spreadOf, valuesOf } from './strategy-years.ts';
import type { SweepRow } from './sweep-columns.ts';
import { SEASON_WEATHER } from './sweep-plan.ts';
import { AS_IT_IS, VARIED, type Varied } from './variant.ts';

/** What a strategy came to over some years. */
export interface StepOutcome {
  years: number;
  reached: number;
  /** local days `MM-DD` of the first and the last of the years that reached, as each lies in its run; null where none did */
  reachedOn: { first: string; last: string } | null;
  cost: Spread;
  endMoisturePct: Spread;
  dryMatterLossPct: Spread;
  /** share, of the worst layer */
  storageLifeUsed: Spread;
}

/** A strategy in a bin with one thing moved by a step, over the years in which both it and the bin as it is could be run. */
export interface SensitivityStep extends StepOutcome {
  bin: string;
  strategy: string;
  varied: Varied;
  /** airflow factor, days or points */
  step: number;
  /** the bin as it is, over the same years */
  base: StepOutcome;
  /** mean over the years of this step's cost less that of the bin as it is; null where a cost is not known */
  costChange: number | null;
  /** median over the years that reach both ways, days later than the bin as it is; null where none does */
  daysLater: number | null;
  why: string | null;
}

const DAY_MS = 86_400_000;
const MOVED = { airflow: 'airflowFactor', 'fill-date': 'fillDays', 'start-moisture': 'startPoints' } as const;

/**
 * @param rows     of one bin and strategy, all variants and years
 * @param startOn  local date on which the season's own run begins
 */
export function sensitivity(rows: readonly SweepRow[], startOn: string): SensitivityStep[] {
  const usual = rows.filter(isAsItIs);
  return (Object.keys(VARIED) as Varied[]).flatMap((varied) => {
    const key = MOVED[varied];
    const moved = rows.filter((row) => row[key] !== AS_IT_IS[key]);
    if (moved.length === 0) return [];
    return VARIED[varied].map((variant) => {
      const step = variant[key];
      const all = moved.filter((row) => row[key] === step);
      const pairs = all.flatMap((row) => {
        const same = usual.find((one) => one.weather === row.weather);
        return row.fanHours === null || same === undefined || same.fanHours === null ? [] : [{ row, same }];
      });
      const changes = pairs.flatMap(({ row, same }) =>
        typeof row.cost === 'number' && typeof same.cost === 'number' ? [row.cost - same.cost] : [],
      );
      const days = pairs.flatMap(({ row, same }) => daysBetween(same, row));
      return {
        bin: String(rows[0].bin),
        strategy: String(rows[0].strategy),
        varied,
        step,
        ...outcomeOf(
          pairs.map(({ row }) => row),
          startOn,
        ),
        base: outcomeOf(
          pairs.map(({ same }) => same),
          startOn,
        ),
        costChange:
          changes.length === 0 || changes.length < pairs.length
            ? null
            : changes.reduce((sum, one) => sum + one, 0) / changes.length,
        daysLater: days.length === 0 ? null : median(days),
        why: pairs.length > 0 ? null : String(all[0]?.why ?? 'No year could be run.'),
      };
    });
  });
}

function outcomeOf(rows: readonly SweepRow[], startOn: string): StepOutcome {
  const spread = (column: string) => spreadOf(valuesOf(rows, column));
  const reached = rows.filter((row) => row.reachedTarget === true);
  return {
    years: rows.length,
    reached: reached.length,
    reachedOn: firstAndLast(reached, startOn),
    cost: spread('cost'),
    endMoisturePct: spread('endMoisturePct'),
    dryMatterLossPct: spread('dryMatterLossPct'),
    storageLifeUsed: spread('storageLifeUsed'),
  };
}

/** By how long after New Year of the year in which each run begins. */
function firstAndLast(rows: readonly SweepRow[], startOn: string): StepOutcome['reachedOn'] {
  const days = rows.flatMap(({ weather, reachedOn }) => {
    if (typeof reachedOn !== 'string') return [];
    const begun = Number(weather === SEASON_WEATHER ? startOn.slice(0, 4) : weather);
    return [{ year: Number(reachedOn.slice(0, 4)) - begun, day: reachedOn.slice(5) }];
  });
  days.sort((a, b) => a.year - b.year || (a.day < b.day ? -1 : 1));
  return days.length === 0 ? null : { first: days[0].day, last: days[days.length - 1].day };
}

function daysBetween(from: SweepRow, to: SweepRow): number[] {
  if (from.reachedTarget !== true || to.reachedTarget !== true) return [];
  const days = (Date.parse(String(to.reachedOn)) - Date.parse(String(from.reachedOn))) / DAY_MS;
  return Number.isNaN(days) ? [] : [days];
}

export function isAsItIs(row: SweepRow): boolean {
  return row.airflowFactor === 1 && row.fillDays === 0 && row.startPoints === 0;
}
