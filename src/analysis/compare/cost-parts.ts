import type { Estimate } from '../../base/estimate.ts';
import { bushelsOf } from '../grain/per-bushel.ts';
import type { BinReview } from '../types.ts';
import { measureOf } from './cost-measure.ts';

/** The numbers that a bin's cost per bushel, or per bushel and point, is made of. */
export interface CostParts {
  /** money, all charges */
  cost: number;
  /** money, energy alone */
  energyCost: number;
  energyKwh: number;
  hours: number;
  bushels: number;
  /** 1 where the measure is per bushel */
  points: number;
}

/** One thing that is unsure about the parts: how they stand together at either end of its 90 % interval. */
export interface UnsurePart {
  low: CostParts;
  high: CostParts;
  /** true: not an error but time that nobody knows, added whole instead of as a square */
  whole: boolean;
}

export interface UnsureParts {
  middle: CostParts;
  unsure: readonly UnsurePart[];
}

/**
 * A bin's parts and what is unsure about them, each cause apart, so that what cancels in a ratio cancels: an ammeter that
 * reads high raises energy and every charge on it, and leaves the price per kWh alone.
 *
 * @returns the reason, a sentence, where a part is not known or not above zero
 */
export function costParts(review: BinReview): UnsureParts | string {
  const { bin, fan, moisture, grain } = review;
  const bushels = bushelsOf(grain);
  const points = measureOf(bin.goal) === 'costPerBushel' ? null : moisture.pointsRemoved;
  const sign = bin.goal === 'condition' ? -1 : 1;
  const lacking = [fan.hours, fan.energyKwh, fan.energyCost, fan.cost, points].find((of) => of?.value === null);
  if (lacking) return lacking.why ?? 'Part of its cost is not known.';
  if (bushels?.value == null) return grain.why ?? 'Its bushels are not known.';
  const middle: CostParts = {
    cost: Number(fan.cost.value),
    energyCost: Number(fan.energyCost.value),
    energyKwh: Number(fan.energyKwh.value),
    hours: Number(fan.hours.value),
    bushels: bushels.value,
    points: points === null ? 1 : sign * Number(points.value),
  };
  if (!Object.values(middle).every((value) => value > 0)) {
    return 'Hours, energy, price, bushels and points must all be above zero to be parted.';
  }
  const unsure = [...fanErrors(review, middle)];
  const ends = (key: 'bushels' | 'points', of: Estimate, turn = 1) => {
    if (of.interval === null) return;
    const [low, high] = of.interval.map((end) => end * turn).sort((a, b) => a - b);
    if (low > 0) unsure.push({ low: { ...middle, [key]: low }, high: { ...middle, [key]: high }, whole: false });
  };
  ends('bushels', bushels);
  if (points !== null) ends('points', points, sign);
  return { middle, unsure };
}

/** Errors below the middle are those of measuring; what the upper ends reach beyond them is unknown time. */
function fanErrors({ fan }: BinReview, middle: CostParts): UnsurePart[] {
  const halfOf = ({ value, interval }: Estimate) => (interval === null ? 0 : Math.max(0, Number(value) - interval[0]));
  const moreOf = (of: Estimate) =>
    of.interval === null ? 0 : Math.max(0, of.interval[1] - Number(of.value) - halfOf(of));
  const hoursRel = halfOf(fan.hours) / middle.hours;
  const energyRel = halfOf(fan.energyKwh) / middle.energyKwh;
  const costHalf = halfOf(fan.cost);
  // A meter counts whatever the hours are; elsewhere energy is power x hours and carries their error.
  const carried = fan.energyFrom === 'meter' ? 0 : Math.min(hoursRel, energyRel);
  const powerRel = Math.sqrt(energyRel ** 2 - carried ** 2);
  const powerCost = Math.sqrt(Math.max(0, costHalf ** 2 - (carried * middle.energyCost) ** 2));
  const power = (turn: number): CostParts => ({
    ...middle,
    energyKwh: middle.energyKwh * (1 + turn * powerRel),
    energyCost: middle.energyCost * (1 + turn * powerRel),
    cost: middle.cost + turn * powerCost,
  });
  const hours = (turn: number): CostParts => ({
    ...middle,
    hours: middle.hours * (1 + turn * hoursRel),
    energyKwh: middle.energyKwh * (1 + turn * carried),
    energyCost: middle.energyCost * (1 + turn * carried),
    cost: middle.cost + turn * carried * middle.energyCost,
  });
  const unknown: CostParts = {
    ...middle,
    hours: middle.hours + moreOf(fan.hours),
    energyKwh: middle.energyKwh + moreOf(fan.energyKwh),
    energyCost: middle.energyCost + moreOf(fan.energyCost),
    cost: middle.cost + moreOf(fan.cost),
  };
  return [
    { low: power(-1), high: power(1), whole: false },
    { low: hours(-1), high: hours(1), whole: false },
    { low: middle, high: unknown, whole: true },
  ].filter(({ low }) => Object.values(low).every((value) => value > 0));
}
