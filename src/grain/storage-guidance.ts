/** What is published of how moist a crop may be stored. A mean of all the grain; the wettest of it counts in the bin. */
export interface StorageGuidance {
  crop: string;
  /** fractions, wet basis: up to about six months, and longer; null where none was read for so short a time */
  shortWb: number | null;
  longWb: number;
  /** what the source says besides; units of both systems */
  also: string | null;
  sourceKeys: readonly string[];
}

const of = (
  crop: string,
  shortWb: number | null,
  longWb: number,
  sourceKeys: readonly string[],
  also: string | null = null,
): StorageGuidance => ({ crop, shortWb, longWb, also, sourceKeys });

/** Sorted as the crops. Sources differ by a point; warmer places need drier grain. */
export const STORAGE_GUIDANCE: readonly StorageGuidance[] = [
  of('corn', 0.15, 0.13, ['msu-grain-monitoring']),
  of('soybean', 0.13, 0.11, ['msu-grain-monitoring']),
  of('wheat', null, 0.135, ['ndsu-2019-drying', 'osu-cr-1741'], 'in the south below 12.5 %'),
  of('soft-wheat', null, 0.135, ['ndsu-2019-drying', 'osu-cr-1741'], 'in the south below 12.5 %'),
  of('durum', null, 0.135, ['ndsu-2019-drying', 'osu-cr-1741'], 'in the south below 12.5 %'),
  of('sorghum', 0.14, 0.13, ['mwps-13']),
  of('barley', null, 0.12, ['ndsu-2019-drying']),
  of('rice', 0.14, 0.13, ['irri-storage-moisture'], 'longer meaning 8 to 12 months'),
  of('canola', null, 0.08, ['canola-council-storage'], 'and colder than 15 °C (59 °F)'),
  of('sunflower', null, 0.08, ['ndsu-2019-drying'], 'oil types, better 7 %'),
];

/** @returns  null where none was read (oats, rapeseed) */
export function storageGuidanceOf(crop: string): StorageGuidance | null {
  return STORAGE_GUIDANCE.find((one) => one.crop === crop) ?? null;
}
