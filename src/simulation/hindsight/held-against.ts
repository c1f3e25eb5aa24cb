import type { Outcome } from '../run/outcome.ts';
import { runSeason } from '../run/run-season.ts';
import type { RunSpec } from '../run/run-spec.ts';
import type { Strategy } from '../strategies/strategy.ts';

/** What a schedule in hindsight must not be later, or harder on the grain, than. */
export interface HeldAgainst {
  /** hour of the run by which the bin was cold */
  byHour: number;
  /** share of the allowable storage time that the worst layer may have used at the run's end; 1 where no rule tells it */
  lifeUsed: number;
  /** mean dry matter lost by the run's end, fraction; NaN where no rule tells it */
  lossMean: number;
}

/**
 * What the best schedule of a bin to be cooled is held against: the log and the rule told beside it. It has to be cold no later
 * than the earlier of the two, its grain at the run's end no older than the harder of the two left it.
 *
 * Left alone every bin is cold some day in winter, its grain the older: cheap, and no answer to what a fan could have saved. The
 * earlier run itself keeps to both limits, so that there always is such a schedule and the best is no dearer than that one; to
 * ask for the milder wear of the other too could be more than any schedule gives. The rule is the one named, or where none is (a
 * sweep names none before all its years are run) the cheapest that reached: no rule's regret is then below zero but beside an
 * earlier log. The earliest of all rules would ask for more than the target does, and cost more than the rule it is told beside.
 * A log counts in its own weather alone: no other October can be asked for its date.
 *
 * @param rules   that could have been run, as they would be
 * @param named   the rule that is told beside the schedule; undefined: the cheapest that reaches
 * @param logged  as it was run; null where there is no log in this weather
 * @returns       null for another goal than to cool, and where none of them reaches
 */
export function heldAgainst(
  spec: RunSpec,
  rules: readonly Strategy[],
  { named, logged }: { named?: Strategy; logged: Strategy | null },
): HeldAgainst | null {
  if (spec.goal !== 'cool') return null;
  const reaching = (all: readonly Strategy[]) =>
    all.map((strategy) => runSeason(spec, strategy).outcome).filter(({ reachedTarget }) => reachedTarget);
  const rule = reaching(named === undefined ? rules : [named]).sort(cheaper)[0];
  const held = [...(rule === undefined ? [] : [rule]), ...reaching(logged === null ? [] : [logged])];
  if (held.length === 0) return null;
  const lifeUsed = Math.max(...held.map((one) => one.lifeUsed));
  return {
    byHour: Math.min(...held.map(({ reachedHour }) => reachedHour)),
    lifeUsed: Number.isNaN(lifeUsed) ? 1 : lifeUsed,
    lossMean: Math.max(...held.map(({ lossMean }) => lossMean)),
  };
}

/** Without prices: the earlier. */
function cheaper(a: Outcome, b: Outcome): number {
  return a.cost - b.cost || a.reachedHour - b.reachedHour;
}
