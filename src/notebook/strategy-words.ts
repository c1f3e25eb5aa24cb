import { reachedDay } from '../analysis/strategies/reached-day.ts';
import type { BinReview, SeasonReview } from '../analysis/types.ts';
import type { BinWhatIf, StrategyOutcome } from '../analysis/what-if/what-if-types.ts';
import type { Estimate } from '../base/estimate.ts';
import { listed } from '../base/listed.ts';
import type { Units } from '../report/units.ts';
import { hindsightSaid, ruleAgesSaid } from './hindsight-words.ts';
import { noRule, reachingSaid } from './no-rule.ts';
import { asRunSaid, lessSaid, savingOf } from './strategy-saving.ts';
import { drierSaid, runBetterSaid } from './weight-words.ts';
import { counted, quoted } from './words.ts';

/** A bin with its what-if. */
export interface Played {
  review: BinReview;
  whatIf: BinWhatIf;
  /** what the kit would run: null where nothing reaches the target, no cost is known, or there are no runs; see `noRule` */
  pick: StrategyOutcome | null;
  /** the others that may be the cheapest, where the pick is not clearly so, likeliest first */
  rivals: readonly StrategyOutcome[];
  /** what it would have saved against the season as run, by the model, money */
  saving: Estimate;
}

/** The bins whose models were made, in the season's order. */
export function playedBins(review: SeasonReview): Played[] {
  return (review.whatIf ?? []).flatMap((whatIf) => {
    const of = review.bins.find(({ bin }) => bin.id === whatIf.binId);
    if (of === undefined) return [];
    const pick = whatIf.strategies.find(({ id }) => id === whatIf.pick) ?? null;
    return [{ review: of, whatIf, pick, rivals: rivalsOf(whatIf), saving: savingOf({ review: of, whatIf }, pick) }];
  });
}

/** No more are named beside the pick. */
export const MOST_RIVALS = 2;

function rivalsOf({ strategies, near, pick, clear }: BinWhatIf): StrategyOutcome[] {
  if (pick === null || clear) return [];
  return strategies
    .map((one, k) => ({ one, near: near[k] }))
    .filter((each) => each.one.id !== pick && each.near > 0)
    .sort((a, b) => b.near - a.near)
    .slice(0, MOST_RIVALS)
    .map(({ one }) => one);
}

/** `Night hours`, or `“Night hours”, “daytime hours” or “always on”` where the log leaves open which is the cheapest. */
export function ruleSaid({ pick, rivals }: Pick<Played, 'pick' | 'rivals'>): string | null {
  if (pick === null) return null;
  if (rivals.length === 0) return pick.title;
  return listed([pick.title, ...rivals.map(({ title }) => title.toLowerCase())].map(quoted), 'or');
}

/** `5 of 12 runs`, `1 of 1 run`. */
export function ofRuns(some: number, runs: number): string {
  return `${some} of ${counted(runs, 'run')}`;
}

/** What the log leaves open of the rule named; nothing where it is clearly the cheapest. */
function openSaid({ whatIf: { strategies, near }, pick, rivals }: Played): string {
  if (pick === null || rivals.length === 0) return '';
  const runsOf = (id: string) => near[strategies.findIndex((one) => one.id === id)];
  const others = rivals.map(({ id, title }) => `${quoted(title.toLowerCase())} in ${runsOf(id)}`);
  return ` Which rule costs least the log leaves open: this one does, or comes within 5 % of it, in ${ofRuns(runsOf(pick.id), pick.runs)}, ${listed(others)}.`;
}

/** `15.0 %` or `40 °F`: what a bin was to reach. */
export function targetSaid({ review: { bin } }: Played, units: Units): string {
  const { targetMoistureWb, targetTempC } = bin.grain;
  if (bin.goal === 'cool' && targetTempC !== null) return units.say('temperature', targetTempC);
  return targetMoistureWb === null ? 'its target' : units.say('moisture', targetMoistureWb);
}

/** How good a bin's model is, for the head of its runs. */
export function modelSaid({ review, whatIf: { model } }: Played): string {
  const { name } = review.bin;
  return model.trusted ? `The model of ${name} is trusted. ${model.why}` : model.why;
}

/** What a grower would do next season, for one bin. */
export function adviceFor(one: Played, units: Units): string {
  const { review, whatIf, pick, saving } = one;
  const { logged, hindsight } = whatIf;
  if (whatIf.why !== null || logged === null) return `Withheld. ${whatIf.why ?? ''}`;
  if (pick === null) return unpickedSaid(one, units);
  const open = `${drierSaid(one, units)}${ruleAgesSaid(pick, logged, units)}${openSaid(one)}`;
  const doubt = whatIf.sure ? open : `${open} It reaches the target in ${ofRuns(pick.reaching, pick.runs)}.`;
  const best = hindsightSaid(hindsight, pick, units);
  const reached = pick.reachedMs === null ? '' : ` by ${units.date(reachedDay(pick.reachedMs))}`;
  const start = `${quoted(pick.title)} would have brought it to ${targetSaid(one, units)}${reached} for ${units.say('money', pick.cost)}`;
  if (!logged.outcome.reachedTarget) {
    const told = logged.cost.value;
    const cost = told === null ? asRunSaid(one, units) : `${units.say('money', told)} by the model`;
    return `${start}; as run it cost ${cost} and did not come there.${doubt}${best}`;
  }
  if (saving.value === null)
    return `${start}. What that is less than as it was run can’t be told: ${saving.why}${doubt}${best}`;
  if (saving.interval !== null && saving.interval[0] <= 0 && saving.interval[1] >= 0) {
    return `${start}, no clear difference to how it was run (${asRunSaid(one, units)}).${doubt}${best}`;
  }
  return saving.value > 0
    ? `${start}, ${units.say('money', saving)} ${lessSaid(one, units)}.${doubt}${best}`
    : `As it was run (${asRunSaid(one, units)}) was cheaper than every strategy of the kit; ${runBetterSaid(one, units) ?? `${review.bin.name} needs no other rule.`}${best}`;
}

/** What is told of a bin that has runs and no rule named. */
function unpickedSaid(one: Played, units: Units): string {
  const { logged } = one.whatIf;
  const none = noRule(one);
  switch (none?.kind) {
    case 'held': {
      const cost = logged?.cost.value ?? null;
      return `${none.why}${cost === null ? '' : ` As run it cost ${units.say('money', cost)} by the model.`}`;
    }
    case 'unpriced':
      return `${reachingSaid(one.whatIf)}; which is cheapest can’t be told: ${none.why}`;
    default:
      return 'None of the strategies brings this bin to its target in the season’s weather: look at airflow, start moisture and fill date before the switch.';
  }
}
