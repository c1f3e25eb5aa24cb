import type { SensitivityStep, StepOutcome } from '../analysis/strategies/sensitivity.ts';
import type { Units } from '../report/units.ts';
import { small } from './swept-bins.ts';
import { daySaid } from './swept-tables.ts';
import { capital, counted } from './words.ts';

/** A rule of a bin with one thing moved. */
export interface Moved {
  name: string;
  rule: string;
  /** by step */
  steps: readonly SensitivityStep[];
}

const AIRS: ReadonlyMap<number, string> = new Map([
  [0.5, 'with half the air'],
  [0.75, 'with three quarters of the air'],
  [1.25, 'with a quarter more air'],
  [1.5, 'with half as much air again'],
  [2, 'with twice the air'],
]);

/** A change of less than this part of the cost is none. Our choice. */
const TELLING = 0.02;
/** A step is no plain gain that comes to the target more days later than this, or makes so many times the loss. Our choice. */
export const LATE_DAYS = 14;
export const MORE_LOSS = 1.25;

/** `with twice the air`, `filled 14 days earlier`, `put in 2 points drier`. */
export function stepSaid({ varied, step }: SensitivityStep): string {
  if (varied === 'airflow') return AIRS.get(step) ?? `with ${step} times the air`;
  const by = Math.abs(step);
  if (varied === 'fill-date') return `filled ${counted(by, 'day')} ${step < 0 ? 'earlier' : 'later'}`;
  return `put in ${counted(by, 'point')} ${step < 0 ? 'drier' : 'wetter'}`;
}

/** `10 Nov to 21 Nov`; null where the target is never reached. */
export function daysSaid({ reachedOn }: StepOutcome): string | null {
  if (reachedOn === null) return null;
  const [first, last] = [reachedOn.first, reachedOn.last].map(daySaid);
  return first === last ? first : `${first} to ${last}`;
}

/** Share of its years in which a step reaches the target. */
const share = ({ reached, years }: StepOutcome) => (years === 0 ? 0 : reached / years);

/** 0 where it is not known, too. */
const changeOf = ({ costChange, cost: { mean } }: SensitivityStep) =>
  Math.abs(Number(costChange)) < TELLING * Math.abs(mean ?? 0) ? 0 : Number(costChange);

/** So many times what the bin as it is loses: dry matter, or storage time where that is not known or goes faster. */
function lossOf(step: SensitivityStep): { times: number; what: string } | null {
  const times = (of: 'dryMatterLossPct' | 'storageLifeUsed') => Number(step[of].mean) / Number(step.base[of].mean);
  const [dry, life] = [times('dryMatterLossPct'), times('storageLifeUsed')];
  if (dry > MORE_LOSS || (Number.isFinite(dry) && !(life > MORE_LOSS)))
    return { times: dry, what: 'the dry-matter loss' };
  return Number.isFinite(life) ? { times: life, what: 'the storage time used' } : null;
}

/** Whether it comes to the target weeks later, or loses clearly more of the grain. */
function harms(step: SensitivityStep): boolean {
  return Number(step.daysLater) > LATE_DAYS || Number(lossOf(step)?.times) > MORE_LOSS;
}

/**
 * The step that does better than the bin as it is: one that does no harm before all others, then in most years, then for the
 * least; null where none does.
 */
function better({ steps }: Moved): SensitivityStep | null {
  const ranked = steps.filter(
    (one) => share(one) > share(one.base) || (share(one) === share(one.base) && share(one) > 0 && changeOf(one) < 0),
  );
  ranked.sort(
    (a, b) => Number(harms(a)) - Number(harms(b)) || share(b) - share(a) || Number(a.costChange) - Number(b.costChange),
  );
  return ranked[0] ?? null;
}

/** The step that misses most often against the bin as it is, and of these the dearest; null where none is worse. */
function worse({ steps }: Moved): SensitivityStep | null {
  const ranked = steps
    .filter((one) => share(one) < share(one.base) || (share(one) === share(one.base) && changeOf(one) > 0))
    .sort((a, b) => share(a) - share(b) || Number(b.costChange) - Number(a.costChange));
  return ranked[0] ?? null;
}

function oftenSaid(one: SensitivityStep): string {
  return share(one) === share(one.base)
    ? `as often (${one.reached} of ${counted(one.years, 'year')})`
    : `in ${one.reached} of ${counted(one.years, 'year')} in place of ${one.base.reached} of ${one.base.years}`;
}

function costSaid(one: SensitivityStep, units: Units): string {
  const change = changeOf(one);
  const drier = one.varied === 'start-moisture' && one.step < 0 ? ', before what drying it first costs' : '';
  if (one.costChange === null) return 'at a cost that can’t be told';
  if (change === 0) return `for about as much${drier}`;
  return `for ${units.say('money', Math.abs(change))} a season ${change < 0 ? 'less' : 'more'} on average${drier}`;
}

/** `from 10 Jan to 7 Apr in place of 10 Nov to 21 Nov`; empty where it never reaches. */
function whenSaid(one: SensitivityStep): string {
  const [moved, usual] = [daysSaid(one), daysSaid(one.base)];
  if (moved === null) return '';
  const on = `${moved.includes(' to ') ? 'from' : 'on'} ${moved}`;
  return usual === null || moved === usual ? on : `${on} in place of ${usual}`;
}

/** `, with 1.80 times the dry-matter loss`, where it differs by a quarter. */
function lossSaid(one: SensitivityStep, units: Units): string {
  const loss = lossOf(one);
  if (loss === null || (loss.times <= MORE_LOSS && loss.times >= 1 / MORE_LOSS)) return '';
  return `, with ${units.say('times', loss.times)} ${loss.what}`;
}

function outcomeSaid(one: SensitivityStep, units: Units): string {
  const when = whenSaid(one);
  return `${oftenSaid(one)}${when === '' ? '' : `, ${when}`}${lossSaid(one, units)}, ${costSaid(one, units)}`;
}

/** The best that a step does for any bin; of one that does harm first what it costs in days and loss. */
export function movedLead(moved: readonly Moved[], units: Units): string {
  const found = moved.flatMap((one) => {
    const step = better(one);
    return step === null ? [] : [{ one, step, gain: share(step) - share(step.base) }];
  });
  found.sort(
    (a, b) =>
      Number(harms(a.step)) - Number(harms(b.step)) ||
      b.gain - a.gain ||
      Number(a.step.costChange) - Number(b.step.costChange),
  );
  const [first] = found;
  if (first === undefined) {
    const start = 'Nothing that was moved brings a bin to its target more often';
    return moved.some(({ steps }) => steps.some(({ costChange }) => costChange !== null))
      ? `${start}, or as often for less.`
      : `${start}; what it costs can’t be told.`;
  }
  const { one, step } = first;
  const start = `${capital(stepSaid(step))}, ${one.name} would come to its target`;
  if (!harms(step)) return `${start} ${outcomeSaid(step, units)}, by ${small(one.rule)}.`;
  const days = Math.round(Number(step.daysLater));
  const later = days > 0 ? `${counted(days, 'day')} later (${whenSaid(step)})` : whenSaid(step);
  const price = [later, lossSaid(step, units).replace(/^, /, '')].filter((part) => part !== '').join(', ');
  return `${start} ${price}: the price of reaching it ${oftenSaid(step)}, ${costSaid(step, units)}, by ${small(one.rule)}.`;
}

/** The best and the worst that the steps do for a bin. */
export function movedSaid(one: Moved, units: Units): string {
  const [up, down] = [better(one), worse(one)];
  const said = (step: SensitivityStep) => `${capital(stepSaid(step))}: at the target ${outcomeSaid(step, units)}.`;
  if (up === null && down === null) return `By ${small(one.rule)} nothing differs much.`;
  return [
    `By ${small(one.rule)}.`,
    ...(up === null ? ['No step does better than the bin as it is.'] : [said(up)]),
    ...(down === null ? [] : [said(down)]),
  ].join(' ');
}
