import { IN_HINDSIGHT } from '../analysis/strategies/run-strategy.ts';
import type { StrategyYears } from '../analysis/strategies/strategy-years.ts';
import type { LeftOut, SweepSummary } from '../analysis/strategies/sweep-summary.ts';
import type { BinReview } from '../analysis/types.ts';
import { NO_PRICE } from '../analysis/what-if/what-if-types.ts';
import { listed } from '../base/listed.ts';
import type { Entry } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { readWay } from '../simulation/strategies/chosen-way.ts';
import { STRATEGIES } from '../simulation/strategies/strategies.ts';
import { MOST_RIVALS } from './strategy-words.ts';
import {
  chanceOf,
  moneyOf,
  rulesIn,
  type Surest,
  type SweptBin,
  small,
  surest,
  titleOf,
  usualCost,
  weatherSaid,
  yearsIn,
} from './swept-bins.ts';
import { daySaid } from './swept-tables.ts';
import { capital, counted } from './words.ts';

/** A rule that misses some years is told of where it costs less than this part of the surest. Our choice. */
const LESS = 0.9;

/** What could not be run: a year that no bin has, once, with one bin's reason. */
export function leftOutSaid({ plan, leftOut }: SweepSummary): string[] {
  const name = ({ bin }: LeftOut) => plan.bins.find(({ id }) => id === bin)?.name ?? bin;
  const weathers = [...new Set(leftOut.map(({ weather }) => weather))];
  return weathers.flatMap((weather) => {
    const all = leftOut.filter((one) => one.weather === weather);
    const when = weather === 'all' ? '' : ` in ${weatherSaid(weather)}`;
    if (weather !== 'all' && all.length > 1 && all.length === plan.bins.length)
      return [`No bin could be run${when}. ${name(all[0])}: ${all[0].why}`];
    return all.map((one) => `${name(one)}${when}: ${one.why}`);
  });
}

/** Bins and rules that the sweep leaves out, so that a part is not taken for the whole; empty where it has all. */
export function notSweptSaid({ plan }: SweepSummary, reviews: readonly BinReview[], units: Units): string {
  const bins = reviews.filter(({ bin }) => !plan.bins.some(({ id }) => id === bin.id)).map(({ bin }) => bin.name);
  const swept = plan.strategies.flatMap((name) => {
    const read = readWay(name);
    return read.ok ? [read.strategy.id] : [];
  });
  const rules = STRATEGIES.filter(({ id }) => !swept.includes(id)).map(({ id }) => small(titleOf(id, units)));
  return `${bins.length === 0 ? '' : ` Not swept: ${listed(bins)}.`}${rules.length === 0 ? '' : ` Rules not swept: ${listed(rules)}.`}`;
}

/** What the sweep finds, in a sentence, and what it holds. */
export function sweptLead(run: readonly SweptBin[], { regretAgainst }: SweepSummary, units: Units): string {
  const picks = run.flatMap((bin) => {
    const pick = surest(bin);
    return pick === null ? [] : [{ bin, pick }];
  });
  const named = listed(picks.map(({ bin, pick }) => `${bin.planned.name} by ${namesOf(pick, units)}`));
  const found =
    picks.length === 0 ? 'No strategy reaches its target in any year.' : `${startOf(run, picks)}: ${named}.`;
  const unpriced =
    picks.length > 0 && picks.every(({ pick }) => !pick.priced) ? ` What they cost can’t be told. ${NO_PRICE}` : '';
  const held = regretAgainst === IN_HINDSIGHT ? ', each held against the best schedule in hindsight of its year' : '';
  return `${found}${unpriced} By the sweep beside this season: ${counted(run.length, 'bin')} in the weather of ${counted(yearsIn(run), 'year')}${held}.`;
}

function startOf(run: readonly SweptBin[], picks: readonly { pick: Surest }[]): string {
  const when = yearsIn(run) === 1 ? 'in the one year that could be run' : 'over the years';
  if (run.every((bin) => rulesIn(bin).length === 1)) return `At target ${when}, by the one rule that was swept`;
  const least = picks.some(({ pick }) => pick.priced) ? ', and of these for the least' : '';
  return `${yearsIn(run) === 1 ? 'At' : 'Most surely at'} target ${when}${least}`;
}

/** `daytime hours or humidity limit`: the surest with what costs about as much. */
function namesOf({ one, near, priced }: Surest, units: Units): string {
  if (!priced && near.length > MOST_RIVALS) return `any of ${counted(1 + near.length, 'rule')}`;
  return listed(
    [one, ...near.slice(0, MOST_RIVALS)].map(({ strategy }) => small(titleOf(strategy, units))),
    'or',
  );
}

/** A bin's surest rule: how often, by when, for how much. */
export function sweptEntry(bin: SweptBin, { regretAgainst }: SweepSummary, units: Units): Entry {
  const term = bin.planned.name;
  const pick = surest(bin);
  if (pick === null) return { term, text: `No strategy reaches the target ${noneSaid(bin)}.` };
  const { one, priced } = pick;
  const alone = rulesIn(bin).length === 1;
  const start = `reaches the target ${oftenSaid(one)}${soonSaid(one)}`;
  if (!priced) {
    const others = alone ? '' : ', no other more surely';
    return {
      term,
      text: `${capital(namesOf(pick, units))} ${start}${others}. What it costs can’t be told. ${NO_PRICE}`,
    };
  }
  const { p10, p90 } = one.byCost;
  const year = (of: { weather: string; value: number }) =>
    `${weatherSaid(of.weather)} (${units.say('money', of.value)})`;
  const ends = p10 === null ? '' : ` A good year was ${year(p10)}, a poor one ${year(p90)}.`;
  const regret =
    alone || one.regret.mean === null
      ? ''
      : one.regret.most === 0
        ? ` In ${one.regret.years === 1 ? 'that year no other came' : 'none of these years did another come'} there for less.`
        : ` On average it cost ${units.say('money', one.regret.mean)} over ${regretAgainst === IN_HINDSIGHT ? 'the best schedule in hindsight' : 'the cheapest that reached'}.`;
  const than = alone ? ', for' : ', more surely than the others or for less:';
  return {
    term,
    text: `${titleOf(one.strategy, units)} ${start}${than} ${costSaid(one, units)}.${ends}${regret}${nearSaid(pick, units)}${cheaperSaid(bin, one, units)}`,
  };
}

function noneSaid({ told }: SweptBin): string {
  const years = Math.max(...told.map((one) => one.years));
  return years === 1 ? 'in the one year that could be run' : 'in any year';
}

function oftenSaid({ reached: [{ reached, years }] }: StrategyYears): string {
  if (reached < years) return `in ${reached} of ${counted(years, 'year')}`;
  return years === 1 ? 'in the one year that could be run' : `in all ${years} years`;
}

/** By which of the days more than half of the years are there. */
function soonSaid({ reached: [end, ...days] }: StrategyYears): string {
  const half = days.find((one) => Number(one.chance) > 0.5);
  if (half?.by == null) return '';
  const by = daySaid(half.by);
  if (end.years === 1) return ` (by ${by})`;
  return ` (in ${half.reached === end.reached ? 'all' : half.reached} of them by ${by})`;
}

function costSaid(one: StrategyYears, units: Units): string {
  const money = units.say('money', moneyOf(one));
  const { p50 } = one.byCost;
  if (p50 !== null) return `${money} in the middle year, ${weatherSaid(p50.weather)}`;
  return one.cost.years === 1 ? money : `${money} on average, as two years are too few for a middle one`;
}

/** What costs about as much as the cheapest of the surest: which of them is cheaper the years leave open. */
function nearSaid({ near }: Surest, units: Units): string {
  if (near.length === 0) return '';
  const named = near
    .slice(0, MOST_RIVALS)
    .map((one) => `${small(titleOf(one.strategy, units))} for ${units.say('money', moneyOf(one))}`);
  return ` Within 5 % of that, and as often: ${listed(named)}; these years leave open which costs less.`;
}

/** The cheapest rule that reaches in most years, where it misses some and costs less: a reader may take that chance. */
function cheaperSaid(bin: SweptBin, pick: StrategyYears, units: Units): string {
  const middle = (one: StrategyYears) => usualCost(one) ?? Number.POSITIVE_INFINITY;
  const often = rulesIn(bin).filter((one) => chanceOf(one) > 0.5 && chanceOf(one) < chanceOf(pick));
  const [first] = often.filter((one) => middle(one) < LESS * middle(pick)).sort((a, b) => middle(a) - middle(b));
  if (first === undefined) return '';
  const [{ reached, years }] = first.reached;
  return ` ${titleOf(first.strategy, units)} does in ${reached} of ${years} years, for ${units.say('money', moneyOf(first))}.`;
}
