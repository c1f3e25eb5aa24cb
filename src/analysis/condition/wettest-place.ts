import { estimate, Z90, Z95 } from '../../base/estimate.ts';
import { storageGuidanceOf } from '../../grain/storage-guidance.ts';
import type { Bin, SensorErrors } from '../../season/season.ts';
import { ASSUMED_ACCURACY, ASSUMED_BIAS } from '../moisture/reading-parts.ts';
import type { BinMoisture, SensorShare } from '../types.ts';
import type { WettestPlace } from './condition-types.ts';

/**
 * A mean hides a wet core: the wettest place decides whether the grain keeps.
 *
 * @returns  null where no sensor tells the moisture at the end
 */
export function wettestPlace(
  bin: Bin,
  { shares }: Pick<BinMoisture, 'shares'>,
  errors: SensorErrors['moisture'],
): WettestPlace | null {
  const ended = shares.filter((one): one is SensorShare & { endWb: number } => one.endWb !== null);
  if (ended.length === 0) return null;
  const most = ended.reduce((wettest, one) => (one.endWb > wettest.endWb ? one : wettest));
  const half =
    (Z90 / Z95) * Math.hypot(errors.accuracyWb ?? ASSUMED_ACCURACY / 100, errors.biasWb ?? ASSUMED_BIAS / 100);
  const { cable, sensor, heightM, endWb } = most;
  const guidance = storageGuidanceOf(bin.grain.crop);
  const limit = guidance === null ? null : (guidance.shortWb ?? guidance.longWb);
  const above = limit !== null && endWb - half > limit && bin.grain.unloadedMs === null;
  return {
    cable,
    sensor,
    heightM,
    endWb: estimate(endWb, Math.max(0, endWb - half), endWb + half),
    aboveWb: above ? limit : null,
  };
}
