import type { BinReview, SeasonReview } from '../analysis/types.ts';
import { type BinWhatIf, NO_PRICE, type StrategyOutcome } from '../analysis/what-if/what-if-types.ts';
import { type Estimate, withheld } from '../base/estimate.ts';
import { listed } from '../base/listed.ts';
import type { Units } from '../report/units.ts';
import { hindsightSaid } from './hindsight-words.ts';

/** A bin with its what-if. */
export interface Played {
  review: BinReview;
  whatIf: BinWhatIf;
  /** what the kit would run: null where nothing reaches the target, or there are no runs */
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
    return [{ review: of, whatIf, pick, rivals: rivalsOf(whatIf), saving: savingOf(of, whatIf, pick) }];
  });
}

/** No more are named beside the pick. */
const MOST_RIVALS = 2;

function rivalsOf({ strategies, near, pick, clear }: BinWhatIf): StrategyOutcome[] {
  if (pick === null || clear) return [];
  return strategies
    .map((one, k) => ({ one, near: near[k] }))
    .filter((each) => each.one.id !== pick && each.near > 0)
    .sort((a, b) => b.near - a.near)
    .slice(0, MOST_RIVALS)
    .map(({ one }) => one);
}

/** `Night hours`, or `Night hours, daytime hours or always on` where the log leaves open which is the cheapest. */
export function ruleSaid({ pick, rivals }: Pick<Played, 'pick' | 'rivals'>): string | null {
  if (pick === null) return null;
  return listed([pick.title, ...rivals.map(({ title }) => title.toLowerCase())], 'or');
}

/** What the log leaves open of the rule named; nothing where it is clearly the cheapest. */
function openSaid({ whatIf: { strategies, near }, pick, rivals }: Played): string {
  if (pick === null || rivals.length === 0) return '';
  const runsOf = (id: string) => near[strategies.findIndex((one) => one.id === id)];
  const others = rivals.map(({ id, title }) => `${title.toLowerCase()} in ${runsOf(id)}`);
  return ` Which rule costs least the log leaves open: this one does, or comes within 5 % of it, in ${runsOf(pick.id)} of ${pick.runs} runs, ${listed(others)}.`;
}

/**
 * Whether the season as run costs clearly more with the bin's fans alone on the tariff than by its share of the farm's peak:
 * the farm then saves no more than that share for sure, and all of it only where no other fan sets the peak.
 */
export function dearerAlone({ review, whatIf }: Pick<Played, 'review' | 'whatIf'>): boolean {
  const share = shareByLog(review);
  const alone = whatIf.logged?.cost.value ?? null;
  return share !== null && alone !== null && alone > share.most;
}

/** Cost by the log without the charges on connected horsepower, which no run counts; money. */
function shareByLog({ fan: { cost, connectedCost } }: BinReview): { usual: number; most: number } | null {
  if (cost.value === null) return null;
  const connected = connectedCost.value ?? 0;
  return { usual: cost.value - connected, most: (cost.interval?.[1] ?? cost.value) - connected };
}

/** What the table must say of the bins whose saving hangs on the other fans' peak. */
export function aloneNotes(bins: readonly Played[]): string[] {
  const names = bins.filter(dearerAlone).map(({ review }) => review.bin.name);
  if (names.length === 0) return [];
  return [
    `In ${listed(names)} the season as run costs more with its fans alone on the tariff than its share of the farm’s demand came to: what is told as saved is held against that share, its upper end against the whole.`,
  ];
}

/** A logged season costs the same whatever the grain does: the difference is unsure as the strategy's cost is. */
function savingOf(review: BinReview, whatIf: BinWhatIf, pick: StrategyOutcome | null): Estimate {
  const { logged, why } = whatIf;
  if (logged === null) return withheld(why ?? 'There are no runs.');
  if (pick === null) return withheld('No strategy reaches the target.');
  const { value, interval } = pick.cost;
  if (logged.cost.value === null || value === null || interval === null) {
    return withheld(NO_PRICE);
  }
  const alone = logged.cost.value;
  const share = dearerAlone({ review, whatIf }) ? shareByLog(review) : null;
  const of = share?.usual ?? alone;
  return { value: of - value, interval: [of - interval[1], alone - interval[0]], why: null };
}

/** `15.0 %` or `40 °F`: what a bin was to reach. */
export function targetSaid({ review: { bin } }: Played, units: Units): string {
  const { targetMoistureWb, targetTempC } = bin.grain;
  if (bin.goal === 'cool' && targetTempC !== null) return units.say('temperature', targetTempC);
  return targetMoistureWb === null ? 'its target' : units.say('moisture', targetMoistureWb);
}

/** What a grower would do next fall, for one bin. */
export function adviceFor(one: Played, units: Units): string {
  const { review, whatIf, pick, saving } = one;
  const { logged, hindsight } = whatIf;
  if (whatIf.why !== null || logged === null) return `Withheld. ${whatIf.why ?? ''}`;
  if (pick === null) {
    return 'None of the strategies brings this bin to its target in the season’s weather: look at airflow, start moisture and fill date before the switch.';
  }
  const doubt = whatIf.sure
    ? openSaid(one)
    : `${openSaid(one)} It reaches the target in ${pick.reaching} of ${pick.runs} runs.`;
  const best = hindsightSaid(hindsight, pick, units);
  const reached = pick.reachedMs === null ? '' : ` by ${units.date(pick.reachedMs)}`;
  const start = `${pick.title} would have brought it to ${targetSaid(one, units)}${reached} for ${units.say('money', pick.cost)}`;
  if (!logged.outcome.reachedTarget) {
    return `${start}; as run it cost ${units.say('money', logged.cost.value)} by the model and did not come there.${doubt}${best}`;
  }
  if (saving.value === null) return `${start}.${doubt}${best}`;
  if (saving.interval !== null && saving.interval[0] <= 0 && saving.interval[1] >= 0) {
    return `${start}, no clear difference to how it was run (${units.say('money', logged.cost.value)} by the model).${doubt}${best}`;
  }
  return saving.value > 0
    ? `${start}, ${units.say('money', saving)} less than as it was run.${doubt}${best}`
    : `As it was run (${units.say('money', logged.cost.value)} by the model) was cheaper than every strategy of the kit; ${review.bin.name} needs no other rule.${best}`;
}
