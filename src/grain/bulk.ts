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

/** Porosities as tables give them, fractions, with no density beside them. D241 after Thompson and Isaacs 1967, memory. */
export const POROSITY_RANGES: Readonly<Record<string, readonly [low: number, high: number]>> = {
  corn: [0.4, 0.44],
  soybean: [0.34, 0.36],
  wheat: [0.4, 0.43],
  'soft-wheat': [0.4, 0.43],
  durum: [0.4, 0.43],
  sorghum: [0.37, 0.37],
  barley: [0.4, 0.58],
  oats: [0.48, 0.56],
  rice: [0.47, 0.5],
};

/**
 * Range of porosity of a crop, for those too whose kernel density is not known.
 *
 * @returns  fractions
 * @source   asae-d241; memory
 * @valid    throws RangeError for other crops, with those that there are
 */
export function porosityRangeOf(crop: string): readonly [low: number, high: number] {
  const range = POROSITY_RANGES[crop];
  if (range === undefined) {
    throw new RangeError(`no porosity for crop "${crop}"; there is one for ${Object.keys(POROSITY_RANGES).join(', ')}`);
  }
  return range;
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
