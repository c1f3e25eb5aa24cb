import { type Spread, spreadOf, valuesOf } from './strategy-years.ts';
import type { SweepRow } from './sweep-columns.ts';
import { AS_IT_IS, VARIED, type Varied } from './variant.ts';

/** A strategy in a bin with one thing moved by a step, over the years in which both it and the bin as it is could be run. */
export interface SensitivityStep {
  bin: string;
  strategy: string;
  varied: Varied;
  /** airflow factor, days or points */
  step: number;
  cost: Spread;
  endMoisturePct: Spread;
  years: number;
  reached: number;
  /** mean over the years of this step's cost less that of the bin as it is; null where a cost is not known */
  costChange: number | null;
  why: string | null;
}

const MOVED = { airflow: 'airflowFactor', 'fill-date': 'fillDays', 'start-moisture': 'startPoints' } as const;

/** @param rows  of one bin and strategy, all variants and years */
export function sensitivity(rows: readonly SweepRow[]): SensitivityStep[] {
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
      const own = pairs.map(({ row }) => row);
      return {
        bin: String(rows[0].bin),
        strategy: String(rows[0].strategy),
        varied,
        step,
        cost: spreadOf(valuesOf(own, 'cost')),
        endMoisturePct: spreadOf(valuesOf(own, 'endMoisturePct')),
        years: pairs.length,
        reached: own.filter((row) => row.reachedTarget === true).length,
        costChange:
          changes.length === 0 || changes.length < pairs.length
            ? null
            : changes.reduce((sum, one) => sum + one, 0) / changes.length,
        why: pairs.length > 0 ? null : String(all[0]?.why ?? 'No year could be run.'),
      };
    });
  });
}

export function isAsItIs(row: SweepRow): boolean {
  return row.airflowFactor === 1 && row.fillDays === 0 && row.startPoints === 0;
}
