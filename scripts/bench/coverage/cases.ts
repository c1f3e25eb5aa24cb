import type { BinReview } from '../../../src/analysis/types.ts';
import type { Estimate } from '../../../src/base/estimate.ts';
import type { BinDraw } from './plan.ts';
import type { BinTrace } from './run-bin.ts';
import type { BinTruth } from './season-truth.ts';

export const QUANTITIES = [
  'points removed',
  'cost per point',
  'water by sensors',
  'water by air',
  'airflow by pressure',
  'airflow by front',
] as const;
export type Quantity = (typeof QUANTITIES)[number];

/** One number of one bin beside its truth. */
export interface Case {
  quantity: Quantity;
  season: number;
  crop: string;
  goal: string;
  cables: number;
  running: string;
  truth: number;
  /** null: withheld */
  value: number | null;
  low: number;
  high: number;
  /** in which unit-free measure errors of like bins are alike */
  scale: number;
  /** like bins: what the estimator that knows the error structure treats alike */
  group: string;
  /** error variance of this very bin's readings by the generator's own account, in units of the truth squared */
  readingVariance: number;
  /** of the draw and of the review, for the search of causes */
  draw: BinDraw;
  parts: BinReview['moisture']['errorParts'];
}

/** All numbers of one bin that the kit gives or withholds. */
export function casesOf(season: number, trace: BinTrace, truth: BinTruth, review: BinReview): Case[] {
  const { draw } = trace;
  // A bin that was to change and hardly did is like those that were to be kept.
  const changes = (draw.goal === 'dry' || draw.goal === 'condition') && Math.abs(truth.points) >= 0.5;
  const cables = draw.cables.length;
  const layout = cables <= 3 ? String(cables) : cables <= 5 ? '4 to 5' : '6 to 7';
  const what = changes ? 'changed' : 'kept';
  const base = { season, crop: draw.crop, goal: draw.goal, cables, running: draw.running, draw };
  const parts = review.moisture.errorParts;
  const out: Case[] = [];
  const add = (
    quantity: Quantity,
    told: Estimate | null,
    truly: number,
    scale: number,
    group: string,
    readingVariance: number,
  ) => {
    if (told === null) return;
    const [low, high] = told.interval ?? [Number.NaN, Number.NaN];
    const value = told.interval === null ? null : told.value;
    out.push({ ...base, parts, quantity, truth: truly, value, low, high, scale, group, readingVariance });
  };
  const pointScale = changes ? Math.abs(truth.points) : 1;
  const reading = readingVariance(trace, review);
  add('points removed', review.moisture.pointsRemoved, truth.points, pointScale, `${layout} ${what}`, reading);
  if (draw.goal === 'dry') {
    const each = truth.cost / truth.points;
    add(
      'cost per point',
      review.unitCosts.costPerPoint,
      each,
      Math.abs(each),
      layout,
      (reading * each ** 2) / truth.points ** 2,
    );
  }
  const kgPerPoint = truth.waterKg / truth.points;
  const told = beside(review);
  const waterScale = Math.abs(kgPerPoint) * pointScale;
  add('water by sensors', told.bySensors, truth.waterKg, waterScale, `${layout} ${what}`, reading * kgPerPoint ** 2);
  add('water by air', told.byAir, truth.carriedKg, waterScale, `${draw.crop} ${what}`, 0);
  add(
    'airflow by pressure',
    told.byPressure,
    truth.flowM3S,
    truth.flowM3S,
    draw.statedPacking === null ? draw.crop : 'stated',
    0,
  );
  add('airflow by front', told.byFront, truth.flowM3S, truth.flowM3S, `${draw.crop} ${what}`, 0);
  return out;
}

interface Told {
  bySensors: Estimate | null;
  byAir: Estimate | null;
  byPressure: Estimate | null;
  byFront: Estimate | null;
}

/** Water and airflow, where the review has them. */
function beside(review: BinReview): Told {
  const { water, airflow } = review as unknown as {
    water?: { bySensors?: Estimate; byAir?: Estimate };
    airflow?: { byPressure?: Estimate; byFront?: Estimate };
  };
  return {
    bySensors: water?.bySensors ?? null,
    byAir: water?.byAir ?? null,
    byPressure: airflow?.byPressure ?? null,
    byFront: airflow?.byFront ?? null,
  };
}

/** Error variance of the points that drift and noise leave, by the generator's own error model and the kit's weights, points squared. */
function readingVariance({ draw }: BinTrace, review: BinReview): number {
  const { drift, driftCablePart } = draw.moistureErrors;
  const shares = review.moisture.shares;
  const own = shares.reduce((sum, one) => sum + one.share ** 2, 0);
  const byCable = draw.cables.reduce((sum, cable) => {
    const share = shares.filter((one) => one.cable === cable.id).reduce((all, one) => all + one.share, 0);
    return sum + share ** 2;
  }, 0);
  return drift ** 2 * ((1 - driftCablePart) * own + driftCablePart * byCable);
}
