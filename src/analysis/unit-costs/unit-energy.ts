import { withheld } from '../../base/estimate.ts';
import { ratioInterval } from '../../base/stats/ratio-interval.ts';
import type { Bin } from '../../season/season.ts';
import { ofOneFilling } from '../grain/one-filling.ts';
import type { Bushels } from '../grain/per-bushel.ts';
import type { BinFan, BinMoisture, BinWater } from '../types.ts';
import { perPoint } from './per-point.ts';
import type { UnitEnergy } from './unit-energy-types.ts';
import { ofLoggedTime } from './unlogged-time.ts';

/**
 * The fans' kWh for each point removed, for each bushel-point and for each kilogram of water, with the errors of energy,
 * points, bushels and dry matter joined. For bins whose goal is dry; withheld where the points or the water reach zero.
 */
export function unitEnergy(
  bin: Bin,
  fan: Pick<BinFan, 'energyKwh'> & Partial<Pick<BinFan, 'spans'>>,
  moisture: Pick<BinMoisture, 'pointsRemoved'> & Partial<Pick<BinMoisture, 'start' | 'end'>>,
  water: Pick<BinWater, 'bySensors'>,
  bushels: Bushels | null,
): Omit<UnitEnergy, 'plausible'> {
  const energy = ofOneFilling(ofLoggedTime(fan.energyKwh, fan, moisture), bin);
  const { each, perBushel } = perPoint(bin, 'dry', 'energy', energy, moisture.pointsRemoved, bushels);
  const none = `The water that left ${bin.name} cannot be told from none: its interval reaches zero.`;
  const reaches = water.bySensors.interval !== null && water.bySensors.interval[0] <= 0;
  const kwhPerKgWater =
    each.value === null
      ? withheld(each.why ?? none)
      : reaches
        ? withheld(none)
        : ratioInterval(energy, water.bySensors, none);
  return {
    kwhPerPoint: each,
    kwhPerBushelPoint: perBushel,
    kwhPerKgWater,
    why: each.why ?? perBushel.why ?? kwhPerKgWater.why,
  };
}
