import { bushelsOf } from '../analysis/grain/per-bushel.ts';
import type { BinReview } from '../analysis/types.ts';
import { BUSHEL_M3 } from '../base/bushel.ts';
import { type Estimate, scaled, withheld } from '../base/estimate.ts';
import { HP_W } from '../bin/fan-power.ts';
import { cropOf } from '../grain/crops.ts';
import type { Units } from '../report/units.ts';

const KWH_BTU = 3412.14163;
const KG_LB = 2.2046226;
/** m3/s to L/s per m3 or cfm per bushel, as shown; from cfm per bushel of 1.2445 ft3. */
const LITRES_PER_CFM_BU = 13.392;

/** A number per bushel in the shown unit of grain: per bushel, or per tonne (1000 kg over the crop's legal bushel). */
export function perGrain(of: Estimate, review: BinReview, units: Units): Estimate {
  return perGrainOf(review.bin.grain.crop, of, units);
}

/** The same of a crop by its id. */
export function perGrainOf(crop: string, of: Estimate, units: Units): Estimate {
  return units.system === 'us' ? of : scaled(of, 1000 / cropOf(crop).legalBushelKg);
}

/** Bushels in the shown unit of grain: bushels, or tonnes of the crop. */
export function asGrain(bushels: Estimate, review: BinReview, units: Units): Estimate {
  return units.system === 'us' ? bushels : scaled(bushels, cropOf(review.bin.grain.crop).legalBushelKg / 1000);
}

/** How much grain lay in the bin, in the shown unit. */
export function grainAmount(review: BinReview, units: Units): Estimate {
  const bushels = bushelsOf(review.grain);
  return bushels === null ? withheld(review.grain.why ?? 'Not known.') : asGrain(bushels, review, units);
}

/** Airflow for each measure of grain in the shown unit. */
export function airflowPerGrain(of: Estimate, units: Units): Estimate {
  return units.system === 'us' ? of : scaled(of, LITRES_PER_CFM_BU);
}

/** Nameplate for each measure of grain in the shown unit: hp per 1,000 bushels of 1.2445 ft3, or W per m3. */
export function nameplatePerGrain(hpPerThousandBushels: number, units: Units): number {
  return units.system === 'us' ? hpPerThousandBushels : (hpPerThousandBushels * HP_W) / (1000 * BUSHEL_M3);
}

/** kWh for a kilogram in the shown unit of energy for water. */
export function perWater(of: Estimate, units: Units): Estimate {
  return units.system === 'us' ? scaled(of, KWH_BTU / KG_LB) : of;
}
