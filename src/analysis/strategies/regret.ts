import { IN_HINDSIGHT } from './run-strategy.ts';
import type { SweepRow } from './sweep-columns.ts';

/** What a strategy that reached its target cost over the yardstick in the same year; null where either is not known. */
export interface Regret {
  weather: string;
  money: number | null;
  why: string | null;
}

/** What regret is told against: the best schedule in hindsight where the sweep ran it, else the cheapest of its strategies that reached. */
export type Yardstick = typeof IN_HINDSIGHT | 'cheapest strategy that reached the target';

export function yardstickOf(strategies: readonly string[]): Yardstick {
  return strategies.includes(IN_HINDSIGHT) ? IN_HINDSIGHT : 'cheapest strategy that reached the target';
}

/**
 * @param row   a strategy in a year
 * @param same  all strategies of that bin in that year
 */
export function regretOf(row: SweepRow, same: readonly SweepRow[], yardstick: Yardstick): Regret {
  const weather = String(row.weather);
  const none = (why: string): Regret => ({ weather, money: null, why });
  if (row.cost === null || row.reachedTarget === null) return none(String(row.why ?? 'Its cost is not known.'));
  if (row.reachedTarget === false) return none('It did not reach the target.');
  const able = same.filter((one) => one.reachedTarget === true && one.cost !== null);
  const costs = able
    .filter((one) => yardstick !== IN_HINDSIGHT || one.strategy === IN_HINDSIGHT)
    .map((one) => Number(one.cost));
  if (costs.length === 0) return none('No schedule to hold it against reached the target.');
  return { weather, money: Number(row.cost) - Math.min(...costs), why: null };
}
