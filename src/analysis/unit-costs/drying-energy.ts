import type { Season } from '../../season/season.ts';
import { binsOnFan } from '../energy/bins-on-fan.ts';
import { bushelsOf } from '../grain/per-bushel.ts';
import type { BinReview } from '../types.ts';
import { plausibleEnergy } from './plausible-energy.ts';
import { unitEnergy } from './unit-energy.ts';
import type { UnitEnergy } from './unit-energy-types.ts';

/** A bin's energy for what drying did, and how that stands beside published figures. */
export function dryingEnergy(review: BinReview, season: Pick<Season, 'fans' | 'bins'>): UnitEnergy {
  const { bin, fan, moisture, temperature, water, airflow, useful, grain } = review;
  const own = unitEnergy(bin, fan, moisture, water, bushelsOf(grain));
  return {
    ...own,
    plausible: plausibleEnergy({
      bin,
      fans: season.fans.filter((one) => bin.fanIds.includes(one.id)),
      fan,
      moisture,
      temperature,
      water,
      airflow,
      useful: useful ?? null,
      kwhPerBushelPoint: own.kwhPerBushelPoint,
      users: Math.max(1, ...bin.fanIds.map((id) => binsOnFan(season, id))),
    }),
  };
}
