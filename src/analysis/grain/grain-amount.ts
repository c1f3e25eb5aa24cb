import { BUSHEL_M3 } from '../../base/bushel.ts';
import { cropOf } from '../../grain/crops.ts';
import type { Bin } from '../../season/season.ts';
import type { BinGrainAmount } from '../types.ts';
import { fillTimes } from './fill-times.ts';

/**
 * Relative standard error of bushels told from depth and test weight: levelling, packing under the column's own weight and
 * a test weight taken on a cup. A working assumption, from memory.
 */
export const BUSHELS_REL_SD = 0.025;

/**
 * How much grain the bin held when it was full.
 *
 * Volume is that of the levelled cylinder, weight its bulk density times that, dry matter the weight less its water.
 *
 * @param startMoistureWb  moisture as filled, wet basis, fraction; null where not known
 * @source  bushel of 1.2445 ft3 and legal bushel weights: US weights and measures, as the crop table cites them
 */
export function grainAmount(bin: Bin, startMoistureWb: number | null): BinGrainAmount {
  const { depthM } = fillTimes(bin);
  if (depthM === null || !(depthM > 0)) {
    const why = `No depth of the grain in ${bin.name} is stated, so its amount cannot be told.`;
    return { dryMatterKg: null, weightKg: null, volumeM3: null, bushels: null, volumeBushels: null, depthM: null, why };
  }
  const volumeM3 = (Math.PI / 4) * bin.diameterM ** 2 * depthM;
  const weightKg = volumeM3 * bin.grain.bulkDensityKgM3;
  return {
    dryMatterKg: startMoistureWb === null ? null : weightKg * (1 - startMoistureWb),
    weightKg,
    volumeM3,
    bushels: weightKg / cropOf(bin.grain.crop).legalBushelKg,
    volumeBushels: volumeM3 / BUSHEL_M3,
    depthM,
    why: startMoistureWb === null ? 'The moisture at filling is not known, so the dry matter cannot be told.' : null,
  };
}
