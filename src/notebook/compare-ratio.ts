import type { CostFactor, CostRatio, FactorRatio } from '../analysis/compare/comparison.ts';
import { cropOf } from '../grain/crops.ts';
import type { Units } from '../report/units.ts';
import { scaled } from './compare-scale.ts';
import type { Compared } from './compare-words.ts';

/** Bins that have another to be held against. */
export function held(bins: readonly Compared[]): Compared[] {
  return bins.filter(({ beside }) => beside.ratio !== null);
}

/** A ratio of numbers per bushel as one of numbers in the shown unit of grain: crops differ in the weight of a bushel. */
export function ratioShown({ review, beside }: Compared, all: readonly Compared[], units: Units): CostRatio {
  const ratio = beside.ratio as CostRatio;
  const other = all.find((one) => one.beside.binId === ratio.againstId)?.review;
  if (units.system === 'us' || other === undefined) return ratio;
  const scale = cropOf(other.bin.grain.crop).legalBushelKg / cropOf(review.bin.grain.crop).legalBushelKg;
  const turned = (of: FactorRatio): FactorRatio => ({ ...of, times: scaled(of.times, scale) });
  const factors: Record<CostFactor, FactorRatio> = { ...ratio.factors, power: turned(ratio.factors.power) };
  return { ...ratio, times: scaled(ratio.times, scale), energy: turned(ratio.energy), factors };
}
