import { type Estimate, scaled, withheld } from '../../base/estimate.ts';
import { type PerGrain, perLegalBushel } from '../../base/per-grain.ts';
import { productOf } from '../../base/stats/joined.ts';
import { cropOf } from '../../grain/crops.ts';
import { commercialDrying } from '../../money/commercial-drying.ts';
import { highTemperatureDrying } from '../../money/high-temperature-drying.ts';
import type { Season } from '../../season/season.ts';
import { bushelsOf } from '../grain/per-bushel.ts';
import type { BinReview } from '../types.ts';

/** What the points that a bin's fans removed would have cost in other ways, as season.yaml prices them; money. */
export interface DryingElsewhere {
  commercial: Estimate;
  highTemperature: Estimate;
}

/** Proportional to bushel-points, so that their error carries over whole. */
export function dryingElsewhere(review: BinReview, season: Season): DryingElsewhere {
  const { bin, moisture, grain, fan } = review;
  const both = (why: string): DryingElsewhere => ({ commercial: withheld(why), highTemperature: withheld(why) });
  const stated = season.dryingAlternative;
  if (stated === null) return both('season.yaml states no drying_alternative.');
  if (bin.goal !== 'dry') return both(`The goal of ${bin.name} was not to dry.`);
  const bushels = bushelsOf(grain);
  if (bushels === null) return both(grain.why ?? 'The bushels are not known.');
  const points = moisture.pointsRemoved;
  if (points.value === null) return both(points.why ?? 'The points removed are not known.');
  if (!(points.value > 0)) return both('No points were removed.');
  const bushelPoints = productOf(bushels, points);
  const { commercialPerPoint, highTemperature } = stated;
  const { legalBushelKg } = cropOf(bin.grain.crop);
  const perBushel = (of: PerGrain | null) => (of === null ? 0 : perLegalBushel(of, legalBushelKg));
  const pricePerKwh =
    fan.energyCost.value !== null && (fan.energyKwh.value ?? 0) > 0
      ? fan.energyCost.value / Number(fan.energyKwh.value)
      : null;
  return {
    commercial:
      commercialPerPoint === null
        ? withheld('season.yaml states no commercial fee.')
        : scaled(bushelPoints, commercialDrying(1, 1, perBushel(commercialPerPoint))),
    highTemperature:
      highTemperature === null
        ? withheld('season.yaml states no high-temperature dryer.')
        : perBushel(highTemperature.electricityKwhPerPoint) > 0 && pricePerKwh === null
          ? withheld('The dryer’s electricity has no price.')
          : scaled(
              bushelPoints,
              highTemperatureDrying(1, 1, {
                fuelPerBushelPoint: perBushel(highTemperature.fuelM3PerPoint),
                fuelPrice: highTemperature.fuelPricePerM3,
                kwhPerBushelPoint: perBushel(highTemperature.electricityKwhPerPoint),
                pricePerKwh: pricePerKwh ?? 0,
              }).cost,
            ),
  };
}
