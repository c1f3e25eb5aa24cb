import { BUSHEL_M3 } from '../base/bushel.ts';
import { assertRange } from '../base/errors.ts';
import { cropOf } from './crops.ts';

/** Density of whole kernels, kg/m3. chang-1988, seen; soybean from memory. */
export const KERNEL_DENSITY_KG_M3: Readonly<Record<string, number>> = {
  corn: 1270,
  wheat: 1390,
  'soft-wheat': 1390,
  durum: 1390,
  sorghum: 1320,
  soybean: 1180,
};

/**
 * Bulk density of grain that weighs what the law calls a bushel.
 *
 * @param crop  id of the crop table
 * @returns     kg/m3
 * @source      test-weight: legal bushel weight over the bushel of 1.2445 ft3
 */
export function standardBulkDensityKgM3(crop: string): number {
  return cropOf(crop).legalBushelKg / BUSHEL_M3;
}

/**
 * Share of a heap that is air between the kernels.
 *
 * @param crop            one with a known kernel density
 * @param bulkDensityKgM3 of the heap, kg/m3, 200 to 1100
 * @returns               fraction
 * @source                chang-1988: 1 less bulk over kernel density
 * @valid                 throws RangeError outside and for other crops, with those that there are
 */
export function bulkPorosity(crop: string, bulkDensityKgM3: number): number {
  assertRange('bulkDensityKgM3', bulkDensityKgM3, 200, 1100);
  const kernel = KERNEL_DENSITY_KG_M3[crop];
  if (kernel === undefined) {
    const known = Object.keys(KERNEL_DENSITY_KG_M3).join(', ');
    throw new RangeError(`no kernel density for crop "${crop}"; there is one for ${known}`);
  }
  return 1 - bulkDensityKgM3 / kernel;
}

/**
 * Dry matter in a volume of grain.
 *
 * @param volumeM3         >= 0
 * @param bulkDensityKgM3  as it lies, with its water, kg/m3, 200 to 1100
 * @param moistureWb       fraction, wet basis, 0 to 0.6
 * @returns                kg
 * @source                 definition
 * @valid                  throws RangeError outside
 */
export function dryMatterKg(volumeM3: number, bulkDensityKgM3: number, moistureWb: number): number {
  assertRange('volumeM3', volumeM3, 0, 1e6);
  assertRange('bulkDensityKgM3', bulkDensityKgM3, 200, 1100);
  assertRange('moistureWb', moistureWb, 0, 0.6);
  return volumeM3 * bulkDensityKgM3 * (1 - moistureWb);
}
