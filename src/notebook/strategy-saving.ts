import { fanHoursBetween } from '../analysis/fan/spans.ts';
import type { BinReview } from '../analysis/types.ts';
import { NO_PRICE, type StrategyOutcome } from '../analysis/what-if/what-if-types.ts';
import { type Estimate, withheld } from '../base/estimate.ts';
import { listed } from '../base/listed.ts';
import type { Units } from '../report/units.ts';
import { missingRule, type Run } from './no-rule.ts';

/** Of the log's fan hours, before the model begins; fewer move no cost that is told. Our choice. */
const MEANINGFUL_SHARE = 0.01;

/**
 * Whether the season as run costs clearly more with the bin's fans alone on the tariff than by its share of the farm's peak:
 * the farm then saves no more than that share for sure, and all of it only where no other fan sets the peak.
 */
export function dearerAlone({ review, whatIf }: Run): boolean {
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

/**
 * What the cost of another way is subtracted from: the season as run by the model, or, where that is dearer alone, the bin's share
 * of the farm's bill, up to the whole; money.
 */
export function heldAgainst(one: Run): Estimate {
  const { logged, why } = one.whatIf;
  if (logged === null) return withheld(why ?? 'There are no runs.');
  const alone = logged.cost.value;
  if (alone === null) return withheld(logged.cost.why ?? NO_PRICE);
  const share = dearerAlone(one) ? shareByLog(one.review) : null;
  return share === null
    ? { value: alone, interval: null, why: null }
    : { value: share.usual, interval: [share.usual, alone], why: null };
}

/** A logged season costs the same whatever the grain does: the difference is unsure as the strategy's cost is. */
export function savingOf(one: Run, pick: StrategyOutcome | null): Estimate {
  if (pick === null) return withheld(missingRule(one) ?? heldAgainst(one).why ?? 'There are no runs.');
  return savingAt(one, pick.cost);
}

/** What a way would have saved that came to so much, money. */
export function savingAt(one: Run, { value, interval }: Estimate): Estimate {
  const against = heldAgainst(one);
  if (against.value === null || value === null || interval === null) return withheld(against.why ?? NO_PRICE);
  const [low, high] = against.interval ?? [against.value, against.value];
  return { value: against.value - value, interval: [low - interval[1], high - interval[0]], why: null };
}

/** `134 USD by the model`, `134 USD by its log` where the model tells none, or `92 USD as its share of the farm’s bill, 134 USD alone by the model` where that is what a saving is held against. */
export function asRunSaid(one: Run, units: Units): string {
  const asRun = one.whatIf.logged?.cost.value ?? null;
  if (asRun === null) return `${units.say('money', shareByLog(one.review)?.usual ?? null)} by its log`;
  const alone = `${units.say('money', asRun)}${dearerAlone(one) ? ' alone' : ''} by the model`;
  return dearerAlone(one)
    ? `${units.say('money', heldAgainst(one).value)} as its share of the farm’s bill, ${alone}`
    : alone;
}

/** `less than as it was run`, with what was subtracted from where that is not the cost by the model. */
export function lessSaid(one: Run, units: Units): string {
  return `less than as it was run${dearerAlone(one) ? ` (${asRunSaid(one, units)})` : ''}`;
}

/** What the table must say of the bins whose saving hangs on the other fans' peak. */
export function aloneNotes(bins: readonly Run[]): string[] {
  const names = bins.filter(dearerAlone).map(({ review }) => review.bin.name);
  if (names.length === 0) return [];
  return [
    `In ${listed(names)} the season as run costs more with its fans alone on the tariff than its share of the farm’s bill came to, connected charges left out: what is told as saved is “held against” less “its cost”. Held against is that share, its upper end the whole; the saving’s lower end takes the share and the rule’s dearest run, its upper end the whole and the rule’s cheapest.`,
  ];
}

/** Fan hours that the log's cost holds and no run by the model does: those before the bin was filled and its sensors read. */
export function beforeNotes(bins: readonly Run[], units: Units): string[] {
  return bins.flatMap(({ review: { bin, fan }, whatIf: { schedule } }) => {
    if (schedule === null) return [];
    const before = fanHoursBetween(fan.spans, Number.NEGATIVE_INFINITY, schedule.startMs);
    if (!(before > MEANINGFUL_SHARE * fanHoursBetween(fan.spans))) return [];
    return [
      `${bin.name}: the model begins on ${units.date(schedule.startMs)}; ${units.say('hours', before)} of the fan by the log before are in the cost by log and not in the costs by the model.`,
    ];
  });
}
