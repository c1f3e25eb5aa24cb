import type { BinReview } from '../../analysis/types.ts';
import { type Estimate, isAboveNothing } from '../../base/estimate.ts';
import { ratioInterval } from '../../base/stats/ratio-interval.ts';
import type { MeasureKind, StatedMeasure } from '../../season/season.ts';

/** Something that could be done another year, what it would save, and how that is known. */
export interface Measure {
  kind: MeasureKind;
  /** `Lane 42: stop at the target` */
  title: string;
  /** the bins it is for */
  bins: readonly BinReview[];
  /** what was seen, whole sentences with number and interval */
  seen: string;
  /** what to do, whole sentences */
  todo: string;
  /** money a year, in this season's weather and at its prices; withheld with its reason */
  saving: Estimate;
  /** money that `seen` tells, where that is a loss larger than what the measure would save */
  tells?: Estimate;
  /** kWh a year; withheld where it was not worked out */
  energy: Estimate;
  /** where the saving comes from */
  from: 'by the logs' | 'by the model';
  cautions: readonly string[];
}

/** Above nothing with its whole interval. */
export function isClear({ saving }: Measure): boolean {
  return isAboveNothing(saving);
}

/** Savings under this share of what the fans cost are named in the table of measures and nowhere else. */
export const WORTH = 0.005;

/** Clear savings that are worth telling by themselves. */
export function worthTelling(measures: readonly Measure[], bins: readonly BinReview[]): Measure[] {
  const cost = bins.reduce((sum, { fan }) => sum + (fan.cost.value ?? 0), 0);
  return measures.filter((one) => isClear(one) && (one.saving.value ?? 0) >= WORTH * cost);
}

/** Clear ones by money, then those that may be nothing, then those that cannot be told. */
export function bySaving(measures: readonly Measure[]): Measure[] {
  const rank = (one: Measure) => (isClear(one) ? 0 : one.saving.value === null ? 2 : 1);
  return [...measures].sort((a, b) => rank(a) - rank(b) || (b.saving.value ?? 0) - (a.saving.value ?? 0));
}

/** Does a stated price hold for a measure? */
export function isPriced(stated: StatedMeasure, one: Measure): boolean {
  return (
    stated.measure === one.kind &&
    (stated.binIds === null || one.bins.some(({ bin }) => stated.binIds?.includes(bin.id)))
  );
}

/** Years until a saving has paid a price, without interest. */
export function payback(price: number, saving: Estimate): Estimate {
  return ratioInterval(
    { value: price, interval: null, why: null },
    saving,
    'The saving may be none, so that it may never pay back.',
  );
}

/** Whether an amount lies above nothing with its whole interval. */
export const surely = (of: Estimate | undefined): of is Estimate =>
  of !== undefined && Number(of.value) >= 0.5 && isAboveNothing(of);
