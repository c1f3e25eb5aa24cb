import { mean, sampleStandardDeviation } from 'simple-statistics';
import { type PercentileYears, percentileYears, type YearValue } from './percentile-years.ts';
import { type ReachedBy, reachedBy } from './reached-by.ts';
import { type Regret, regretOf, type Yardstick } from './regret.ts';
import type { SweepRow } from './sweep-columns.ts';

/** A number over the years: mean, and how far years lie apart. */
export interface Spread {
  years: number;
  mean: number | null;
  /** standard deviation between years; null for fewer than three */
  sd: number | null;
  least: number | null;
  most: number | null;
}

/** A strategy in a bin over all years that could be run. */
export interface StrategyYears {
  bin: string;
  strategy: string;
  /** years with an outcome */
  years: number;
  byCost: PercentileYears;
  byEndMoisture: PercentileYears;
  cost: Spread;
  costPerBushel: Spread;
  fanHours: Spread;
  reached: ReachedBy[];
  /** over the years in which it reached the target; `notComparable` counts the others */
  regret: Spread & { notComparable: number };
  /** the least and the most storage life that the worst layer used */
  storageLifeUsed: Spread;
  why: string | null;
}

/**
 * What a strategy's rows say together.
 *
 * @param rows     one a year, of one bin and strategy, as the bin is
 * @param all      the rows of all strategies of that bin, as it is
 * @param byDates  days by which to tell the chance of being there, `MM-DD`
 */
export function strategyYears(
  rows: readonly SweepRow[],
  all: readonly SweepRow[],
  startOn: string,
  byDates: readonly string[],
  yardstick: Yardstick,
): StrategyYears {
  const told = rows.filter((row) => row.fanHours !== null);
  const regrets: Regret[] = told.map((row) =>
    regretOf(
      row,
      all.filter((one) => one.weather === row.weather),
      yardstick,
    ),
  );
  const money = regrets.flatMap((one) => (one.money === null ? [] : [one.money]));
  const lacking = rows.find((row) => row.fanHours === null);
  return {
    bin: String(rows[0].bin),
    strategy: String(rows[0].strategy),
    years: told.length,
    byCost: percentileYears(valuesOf(told, 'cost')),
    byEndMoisture: percentileYears(valuesOf(told, 'endMoisturePct')),
    cost: spreadOf(valuesOf(told, 'cost')),
    costPerBushel: spreadOf(valuesOf(told, 'costPerBushel')),
    fanHours: spreadOf(valuesOf(told, 'fanHours')),
    reached: [null, ...byDates].map((by) => reachedBy(told, startOn, by)),
    regret: {
      ...spreadOf(money.map((value) => ({ weather: '', value }))),
      notComparable: told.length - money.length,
    },
    storageLifeUsed: spreadOf(valuesOf(told, 'storageLifeUsed')),
    why: told.length === 0 ? String(lacking?.why ?? 'No year could be run.') : null,
  };
}

export function valuesOf(rows: readonly SweepRow[], column: string): YearValue[] {
  return rows.flatMap((row) =>
    typeof row[column] === 'number' ? [{ weather: String(row.weather), value: row[column] }] : [],
  );
}

export function spreadOf(values: readonly YearValue[]): Spread {
  const numbers = values.map(({ value }) => value);
  const years = numbers.length;
  if (years === 0) return { years, mean: null, sd: null, least: null, most: null };
  return {
    years,
    mean: mean(numbers),
    sd: years < 3 ? null : sampleStandardDeviation(numbers),
    least: Math.min(...numbers),
    most: Math.max(...numbers),
  };
}
