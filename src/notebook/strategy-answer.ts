import { MOST_K, MOST_POINTS } from '../analysis/model/verdict-of.ts';
import { DOUBTS, RUNS } from '../analysis/what-if/doubts.ts';
import { isAboveNothing } from '../base/estimate.ts';
import { listed } from '../base/listed.ts';
import type { KeyNumber } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { HELD, noRule, reachingSaid } from './no-rule.ts';
import { lessSaid } from './strategy-saving.ts';
import { type Played, targetSaid } from './strategy-words.ts';
import { moreDriedAway, savingCounted, weightTells } from './weight-sums.ts';
import { capital, counted } from './words.ts';

/** The bin in which another way would have saved most, for sure above zero first. */
function mostSaved(bins: readonly Played[]): Played | null {
  const known = bins.filter((one) => one.saving.value !== null && one.pick !== null);
  const clear = known.filter((one) => isAboveNothing(one.saving) && isAboveNothing(savingCounted(one) ?? one.saving));
  const of = clear.length > 0 ? clear : known;
  return of.reduce<Played | null>((best, one) => (best === null || left(one) > left(best) ? one : best), null);
}

/** A saving less the weight that the rule dries away beyond the season as run, money. */
const left = (one: Played) => Number(one.saving.value) - Math.max(0, moreDriedAway(one));

/** What a saving does not count. */
function driedAwaySaid(one: Played, units: Units): string {
  if (!weightTells(one)) return '';
  const more = moreDriedAway(one);
  const eaten = isAboveNothing(one.saving) && left(one) <= 0;
  const beside = isAboveNothing(one.saving) ? ', which is not in it' : ', which is in no rule’s cost';
  return ` Over-drying takes ${units.say('money', Math.abs(more))} ${more < 0 ? 'less' : 'more'} of the grain’s weight than as run${eaten ? ': more than it saves' : beside}.`;
}

/** In how many bins a rule would clearly have cost less, in this season's weather. */
export function nextSeasonLead(bins: readonly Played[]): string {
  const another = 'Another year is another weather.';
  const told = bins.filter(({ pick, saving }) => pick !== null && saving.value !== null);
  if (told.length === 0) return `No bin has a saving that can be told. ${another}`;
  const clear = told.filter(({ saving }) => isAboveNothing(saving));
  const names = clear.length === 0 || clear.length > 3 ? '' : `, ${listed(clear.map(({ review }) => review.bin.name))}`;
  const of = counted(told.length, 'bin');
  return clear.length === 0
    ? `In this season’s weather no rule would clearly have cost less than as it was run, in ${told.length === 1 ? 'the one bin' : `any of ${of}`} of which it can be told. ${another}`
    : `In this season’s weather another rule would clearly have cost less than as it was run in ${clear.length} of ${of} of which it can be told${names}. ${another}`;
}

export function strategiesAnswer(bins: readonly Played[], units: Units): string {
  if (bins.length === 0) return 'Can’t tell: models were left out of this review.';
  const trusted = bins.filter(({ whatIf }) => whatIf.why === null);
  if (trusted.length === 0) {
    const [{ review, whatIf }] = bins;
    const others = bins.length === 1 ? '' : ' The others’ reasons stand under Next season.';
    return `Can’t tell: no bin’s model can be trusted. ${review.bin.name}: ${whatIf.why ?? 'not known'}${others}`;
  }
  const first = mostSaved(trusted) ?? trusted.find(({ pick }) => pick !== null) ?? null;
  if (first === null || first.pick === null) return unpickedAnswer(trusted);
  const start = `Run by the rule “${first.pick.title.toLowerCase()}”, ${first.review.bin.name} would have come to ${targetSaid(first, units)} for ${units.say('money', first.pick.cost)}`;
  const { value, why } = first.saving;
  if (value === null) return `${start}. What that is less than as it was run can’t be told: ${why}`;
  if (!isAboveNothing(first.saving)) {
    const elsewhere = trusted.some((one) => one.pick !== null && isAboveNothing(one.saving));
    return `${start}, not clearly less than as it was run; no bin shows a clear saving${elsewhere ? ' that over-drying leaves' : ''}.${driedAwaySaid(first, units)}`;
  }
  return `${start}, ${units.say('money', first.saving)} ${lessSaid(first, units)}.${driedAwaySaid(first, units)}`;
}

/** Of bins that have runs and no rule named: what is known of each. */
function unpickedAnswer(bins: readonly Played[]): string {
  const of = (kind: string) => bins.filter((one) => noRule(one)?.kind === kind);
  const names = (some: readonly Played[]) => listed(some.map(({ review }) => review.bin.name));
  const unpriced = of('unpriced');
  const held = of('held');
  const none = of('none reaches');
  return [
    ...(unpriced.length === 0
      ? []
      : [
          `Which strategy is cheapest can’t be told: ${noRule(unpriced[0])?.why} ${capital(unpriced.map(({ review, whatIf }) => `in ${review.bin.name}, ${reachingSaid(whatIf)}`).join('; '))}.`,
        ]),
    ...(none.length === 0
      ? []
      : [
          `None of the strategies would have brought ${none.length > 1 && none.length === bins.length ? 'these bins' : names(none)} to the target in this season’s weather.`,
        ]),
    ...(held.length === 0
      ? []
      : [`${names(held)} ${held.length === 1 ? 'is' : 'are'} to be held: there is nothing to reach.`]),
  ].join(' ');
}

export function strategyKeys(bins: readonly Played[]): KeyNumber[] {
  const trusted = bins.filter(({ whatIf }) => whatIf.why === null);
  const first = mostSaved(trusted);
  const none = first !== null && !(left(first) > 0);
  return [
    {
      label: 'Largest saving',
      quantity: 'money',
      amount: none ? null : (first?.saving ?? null),
      note: none ? noneLeft(trusted) : first === null ? noSaving(trusted) : ofBin(first, trusted),
    },
    {
      label: 'Models trusted',
      quantity: 'count',
      amount: trusted.length,
      note: `of ${counted(bins.length, 'bin')}`,
    },
  ];
}

/** Why no saving is shown where rules are named. */
function noneLeft(trusted: readonly Played[]): string {
  return trusted.some(({ saving }) => Number(saving.value) > 0)
    ? 'What a rule saves, its over-drying takes.'
    : 'No rule that reaches its target costs less than the season as run.';
}

/** The bin of the saving shown, and what over-drying has to do with it. */
function ofBin(first: Played, trusted: readonly Played[]): string {
  const { name } = first.review.bin;
  if (trusted.some(({ saving }) => Number(saving.value) > Number(first.saving.value)))
    return `${name}; what is more elsewhere may go with over-drying`;
  return weightTells(first) && moreDriedAway(first) > 0 ? `${name}; over-drying not counted` : name;
}

/** Why no saving is told. */
function noSaving(trusted: readonly Played[]): string {
  if (trusted.length === 0) return 'No bin has a model to run other ways by.';
  const nones = trusted.map((one) => noRule(one) ?? { kind: 'unpriced', why: one.saving.why });
  const unpriced = nones.find(({ kind }) => kind === 'unpriced');
  if (unpriced !== undefined) return unpriced.why ?? 'Not known.';
  if (nones.every(({ kind }) => kind === 'held')) return HELD;
  return 'No bin has a strategy that reaches its target.';
}

/** What the range of a cost by the model is. */
export const MODEL_RANGES = `Ranges of costs by the model are of ${RUNS} runs: ${DOUBTS}.`;

/**
 * How far the name of a rule carries: `npm run bench -- ranking-fits`, seasons drawn in another, finer bed, the rules then run in another
 * autumn; 30 November 2026, seeds 10566-10665, run once.
 */
const PICKS = {
  clear: { right: 17, bins: 18 },
  several: { right: 24, bins: 36 },
  ranges: { held: 200, all: 224 },
};

/** What was found of the rules that the kit names. */
export function picksSaid(): string {
  const { clear, several, ranges } = PICKS;
  return `In drawn seasons whose truth is known, a rule told as the cheapest reached the target at a cost within 5 % of the least in ${clear.right} of ${clear.bins} bins; where more than one is told, the first of them in ${several.right} of ${several.bins}. The range of a cost held the true one in ${ranges.held} of ${ranges.all}.`;
}

/** The runs that the ranges span, in words. */
export function doubtsSaid(): string {
  return `The ${RUNS} runs: in the bin as fitted, and in ${RUNS - 1} bins spread over what the log leaves open, where isotherm, airflow, entering air, moisture of the grain and of its sensors, their thermometers, drying rate, specific heat, respiration and exchange with the wall are off together as the fit’s errors say, and with them what no cable sees. Cost as run by log carries its 90 % interval.`;
}

/** From where on a model is not trusted. */
export function trustSaid(units: Units): string {
  return `Each bin’s bed was fitted to the first part of its log and judged on the rest, while the fan ran and for two days after. A bed that is off by more than the limits of ${units.say('temperature difference', MOST_K)} or ${MOST_POINTS} point, or that tickets, static pressure, fan curve, the fans’ power or the warming of their air contradict, is not trusted, and nothing is told from it.`;
}
