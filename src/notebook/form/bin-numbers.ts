import type { BinReview } from '../../analysis/types.ts';
import { withheld } from '../../base/estimate.ts';
import { cropOf } from '../../grain/crops.ts';
import type { OwnNumber } from '../../report/page.ts';
import type { Units } from '../../report/units.ts';
import type { Goal } from '../../season/season.ts';
import { momentEstimate } from '../bin-table.ts';
import { airflowPerGrain, grainAmount, perGrain } from '../per-grain.ts';
import { amount } from './amount.ts';

/** A bin as a notebook tells of it: every number with its kind and, where it has one, its interval; or why it is missing. */
export interface NotebookBin {
  id: string;
  name: string;
  crop: string;
  goal: Goal;
  /** how it was run, as season.yaml says */
  managedAs: string;
  /** bushels or tonnes as filled */
  grain: OwnNumber;
  moistureIn: OwnNumber;
  moistureOut: OwnNumber;
  /** points removed; below 0 where the grain took some up */
  points: OwnNumber;
  temperatureIn: OwnNumber;
  temperatureOut: OwnNumber;
  fanHours: OwnNumber;
  /** hours without a log */
  unknownHours: OwnNumber;
  energy: OwnNumber;
  cost: OwnNumber;
  /** for a bushel or tonne, and for one of its points */
  costPerGrain: OwnNumber;
  costPerPoint: OwnNumber;
  pointsPer100Hours: OwnNumber;
  airflow: OwnNumber;
  overdrying: OwnNumber;
  /** everything else that the kit says of the bin, in SI and fractions */
  review: BinReview;
}

/** The bin's numbers under short names. */
export function binNumbers(review: BinReview, units: Units): NotebookBin {
  const { bin, moisture, temperature, fan, unitCosts, airflow } = review;
  const unknown = fan.unknownHours ?? withheld(fan.why ?? 'Not known.');
  return {
    id: bin.id,
    name: bin.name,
    crop: cropOf(bin.grain.crop).name,
    goal: bin.goal,
    managedAs: bin.managedAs ?? 'not stated',
    grain: amount('grain', grainAmount(review, units)),
    moistureIn: amount('moisture', momentEstimate(moisture.start, moisture.why)),
    moistureOut: amount('moisture', momentEstimate(moisture.end, moisture.why)),
    points: amount('points', moisture.pointsRemoved),
    temperatureIn: amount('temperature', momentEstimate(temperature.start, temperature.why)),
    temperatureOut: amount('temperature', momentEstimate(temperature.end, temperature.why)),
    fanHours: amount('hours', fan.hours),
    unknownHours: amount('hours', unknown),
    energy: amount('energy', fan.energyKwh),
    cost: amount('money', fan.cost),
    costPerGrain: amount('money per grain', perGrain(fan.costPerBushel, review, units)),
    costPerPoint: amount('money per grain point', perGrain(unitCosts.perBushelPoint, review, units)),
    pointsPer100Hours: amount('points per hundred hours', moisture.perHundredFanHours),
    airflow: amount('airflow per grain', airflowPerGrain(airflow.cfmPerBushel, units)),
    overdrying: amount('money', moisture.overdryingLoss),
    review,
  };
}

/** The middle of a number with its kind; null where it is missing. */
export function middle({ amount: of }: OwnNumber): number | null {
  return typeof of === 'number' ? of : of.value;
}
