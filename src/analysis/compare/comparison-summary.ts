import type { z } from 'zod';
import { type Estimate, withheld } from '../../base/estimate.ts';
import { both, pair, plain, reason } from '../summary-numbers.ts';
import type { SeasonReview } from '../types.ts';
import type { CostRatio, FactorRatio } from './comparison.ts';
import type { COMPARISON_SHAPE } from './comparison-shape.ts';

type ComparisonSummary = z.infer<typeof COMPARISON_SHAPE>;

/** A bin's place, factors and air at fill as `summary.json` tells them; all null with the reason where the comparison broke. */
export function comparisonSummary({ compared }: SeasonReview, binId: string): ComparisonSummary {
  const found = compared?.bins.find((one) => one.binId === binId);
  const none = withheld(found?.factorsWhy ?? 'The bins could not be compared.');
  const { price, charges, power, hours } = found?.factors ?? { price: none, charges: none, power: none, hours: none };
  const air = found?.conditions.air;
  const settles = air?.equilibriumWb ?? none;
  return {
    measure: found?.measure ?? null,
    rank: found?.rank ?? null,
    ...both('pricePerKwh', price),
    ...both('chargesOverEnergy', charges),
    ...both('kwPerBushel', power),
    ...both('fanHours', hours),
    against: found?.ratio == null ? null : againstSummary(found.ratio),
    airAtFill: {
      outdoorC: plain(air?.outdoorC),
      outdoorRhPct: plain(air?.outdoorRh, 100),
      equilibriumPct: plain(settles.value, 100),
      equilibriumPctInterval: pair(settles.interval, 100),
      why: reason(air?.why ?? null, settles),
    },
    why: whyOf(found?.why ?? null, [price, charges, power, hours], found?.ratio == null),
  };
}

/** The cheapest of its group lacks nothing but somebody cheaper; that is a reason too. */
function whyOf(own: string | null, factors: readonly Estimate[], noOther: boolean): string | null {
  const told = reason(own, ...factors);
  return told === null && noOther ? 'It is the cheapest, so it is held against no other.' : told;
}

function againstSummary({ againstId, sameCrop, times, factors }: CostRatio): ComparisonSummary['against'] {
  const factor = ({ times: of, share }: FactorRatio) => ({ ...both('times', of), ...both('share', share) });
  const { price, charges, power, hours } = factors;
  return {
    bin: againstId,
    sameCrop,
    ...both('times', times),
    price: factor(price),
    charges: factor(charges),
    power: factor(power),
    hours: factor(hours),
    why: reason(null, price.share),
  };
}
