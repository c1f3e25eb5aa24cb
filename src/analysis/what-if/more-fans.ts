import { withheld } from '../../base/estimate.ts';
import { listed } from '../../base/listed.ts';
import type { BinReview } from '../types.ts';
import type { StrategyOutcome } from './what-if-types.ts';

/** Energy by the log over that of the runs' fans alone in as many hours, from where on the runs are too cheap; powers wander by less. Our choice. */
const MORE_ENERGY = 1.05;

/**
 * What the runs of a bin leave out: they are reckoned with the fans that ran in most of its hours, and where others ran beside them for a
 * part of the season their energy is in the cost by log and in no run.
 *
 * @returns  the fans left out, and their part of the energy by log; null where the runs hold it all
 */
export function moreFans({ bin, fan, airflow }: BinReview): { names: string[]; share: number } | null {
  const set = airflow?.fanSet ? airflow.fanSet.split('+') : [];
  const others = (fan.fans ?? []).filter(({ fanId, onHours }) => !set.includes(fanId) && onHours > 0);
  const hours = fan.hours?.value ?? 0;
  if (set.length === 0 || others.length === 0 || set.length >= bin.fanIds.length || !(hours > 0)) return null;
  const mainKw = fan.fans
    .filter(({ fanId, onHours }) => set.includes(fanId) && onHours > 0)
    .reduce((sum, { energyKwh, onHours }) => sum + energyKwh / onHours, 0);
  const kwh = fan.energyKwh.value;
  if (kwh === null || !(kwh > MORE_ENERGY * mainKw * hours)) return null;
  return { names: others.map(({ fanId }) => fanId), share: 1 - (mainKw * hours) / kwh };
}

/** Why a bin whose runs leave fans out has no cost as run by the model, and no saving. */
export function moreFansWhy({ bin, airflow }: BinReview, { names }: { names: readonly string[] }): string {
  return `All runs of ${bin.name} are reckoned with ${listed(airflow.fanSet.split('+'))}; ${listed(names)} ran beside in a part of its hours, at a cost that is in none of them.`;
}

/** The season run as logged; its energy and cost are not told where the runs leave fans out, nor is what is subtracted from them. */
export function asLoggedTold(run: StrategyOutcome, review: BinReview): StrategyOutcome {
  const more = moreFans(review);
  if (more === null) return run;
  return {
    ...run,
    cost: withheld(moreFansWhy(review, more)),
    outcome: { ...run.outcome, energyKwh: Number.NaN },
  };
}
