import type { Bin } from '../../season/season.ts';

/** Levelling, the bin's size and a test weight taken on a cup: relative sd. A working assumption, from memory. */
const LEVEL_REL_SD = 0.02;
/** Test weights of a crop about its legal one (corn about 2 of 56 lb): relative sd, where none is stated. From memory. */
const UNSTATED_TEST_WEIGHT_REL_SD = 0.035;
/**
 * Grain packs under its own weight: pack factors of farm bins run from nothing to about 5 % over test weight times volume
 * (from memory of pack-factor tables, not read for this kit). It is not put in the value, for want of a source read; the
 * interval reaches so far up.
 */
export const PACKING_MOST = 0.05;

/** The weight that depth and test weight make. */
export interface WeightByVolume {
  volumeM3: number;
  weightKg: number;
  /** relative standard error without packing */
  levelRelSd: number;
  /** by how much more packing may make it, fraction */
  packingMost: number;
}

/**
 * Volume of the levelled cylinder and its weight by test weight.
 *
 * @param depthM  levelled depth; null where none is stated
 * @returns       null without a depth above zero
 */
export function weightByVolume(bin: Bin, depthM: number | null): WeightByVolume | null {
  if (depthM === null || !(depthM > 0)) return null;
  const volumeM3 = (Math.PI / 4) * bin.diameterM ** 2 * depthM;
  const stated = bin.grain.bulkDensityFrom === 'stated';
  return {
    volumeM3,
    weightKg: volumeM3 * bin.grain.bulkDensityKgM3,
    levelRelSd: stated ? LEVEL_REL_SD : Math.hypot(LEVEL_REL_SD, UNSTATED_TEST_WEIGHT_REL_SD),
    packingMost: PACKING_MOST,
  };
}
