import { type Estimate, withheld } from '../../base/estimate.ts';
import { differenceOf } from '../../base/stats/joined.ts';
import { type LoadSettlement, loadSettlement } from '../../money/load-settlement.ts';
import { priceSchedules } from '../../season/price-schedules.ts';
import type { Season } from '../../season/season.ts';
import type { BinReview } from '../types.ts';
import { fullBushels, moistureValue } from './moisture-value.ts';

/** From what the points spared at the scale to what was left, in money; costs and losses below zero. The parts add up to the middle of `left`. */
export interface ValueSteps {
  /** shrink and discounts that the grain as it went in would have taken, less those as it came out */
  shrinkSpared: number;
  discountSpared: number;
  /** the weight of the water gone (or taken up) down to the market's base moisture, at the price */
  waterToBase: number;
  /** the same beyond the base: given away, or won back */
  waterBeyondBase: number;
  /** energy of the fans */
  energy: number;
  /** all other charges on them: demand, connected load */
  charges: number;
  /** fuel or current of heaters that is not in the energy; 0 without one */
  heat: number;
}

export interface BinValueSteps {
  /** null where `left` is withheld */
  steps: ValueSteps | null;
  /** gained by moisture less what the fans cost */
  left: Estimate;
}

/** One bin's steps; withheld with the reason of `moistureValue` or of the fans' cost. */
export function valueSteps(review: BinReview, season: Season): BinValueSteps {
  const { bin, moisture, fan } = review;
  const { gained } = moistureValue(review, season);
  const left = differenceOf(gained, fan.cost);
  const none = (why: Estimate): BinValueSteps => ({ steps: null, left: why });
  if (left.value === null) return none(left);
  if (fan.energyCost.value === null) return none(withheld(fan.energyCost.why ?? 'The energy has no price.'));
  const heat = fan.heatCost.value ?? 0;
  const price = season.prices[bin.grain.crop];
  const inWb = Number(moisture.start.value);
  const outWb = inWb - Number(moisture.pointsRemoved.value) / 100;
  const wet = Number(fullBushels(review)?.value);
  const at = (wb: number) => (wet * (1 - inWb)) / (1 - wb);
  const schedules = priceSchedules(price).map(({ schedule }) => schedule);
  const sold = [inWb, outWb].map((wb) => loadSettlement(at(wb), wb, price.pricePerBushel, schedules));
  const [asIn, asOut] = sold as [LoadSettlement, LoadSettlement];
  const shrunk = (of: LoadSettlement, bushels: number) => (bushels - of.paidBushels) * price.pricePerBushel;
  const charged = (of: LoadSettlement) => of.charges.reduce((a, b) => a + b, 0);
  const base = price.baseMoistureWb;
  // Without a base, and where the grain went in below it, all of the water is beyond.
  const clamped = base !== null && inWb > base ? Math.max(outWb, base) : inWb;
  const worth = (fromWb: number, toWb: number) => (at(toWb) - at(fromWb)) * price.pricePerBushel;
  return {
    steps: {
      shrinkSpared: shrunk(asIn, wet) - shrunk(asOut, at(outWb)),
      discountSpared: charged(asIn) - charged(asOut),
      waterToBase: worth(inWb, clamped),
      waterBeyondBase: worth(clamped, outWb),
      energy: -fan.energyCost.value,
      charges: -(Number(fan.cost.value) - fan.energyCost.value - heat),
      heat: -heat,
    },
    left,
  };
}
