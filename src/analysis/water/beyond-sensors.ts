import { dryFromWet } from '../../grain/moisture-basis.ts';
import type { Bin } from '../../season/season.ts';
import type { BinGrainAmount, BinMoisture } from '../types.ts';

/**
 * Grain beyond the last sensors: the air passes them before it leaves, and what that layer gave off is not in their air. Its
 * dry matter times the change of the nearest sensors, kg.
 */
export function beyondSensors(bin: Bin, moisture: BinMoisture, grain: BinGrainAmount): number {
  if (grain.dryMatterKg === null || grain.depthM === null) return 0;
  let sum = 0;
  let weight = 0;
  for (const cable of bin.cables) {
    const own = moisture.shares.filter((one) => one.cable === cable.id && one.startWb !== null && one.endWb !== null);
    if (own.length === 0) continue;
    const last = own.reduce((a, b) => ((bin.air === 'up') === a.heightM > b.heightM ? a : b));
    const beyondM = bin.air === 'up' ? grain.depthM - last.heightM : last.heightM;
    const share = own.reduce((total, one) => total + one.share, 0);
    sum += share * (beyondM / grain.depthM) * (dryFromWet(last.startWb!) - dryFromWet(last.endWb!));
    weight += share;
  }
  return weight > 0 ? (grain.dryMatterKg * sum) / weight : 0;
}
