import { RESISTANCE_CURVES, resistanceCurveOf } from '../../bin/resistance-curves.ts';
import { CROPS } from '../../grain/crops.ts';
import { ISOTHERM_CROPS, isothermOf } from '../../grain/isotherm.ts';
import type { Season } from '../../season/season.ts';

/** A crop of the page and the isotherm that stands for it: the one its bins name, else the crop's default. */
export interface CropIsotherm {
  crop: string;
  isotherm: string | null;
}

/** Crops with an isotherm: first those of the season with what its bins name, then the others with their defaults. */
export function isothermCrops(season: Pick<Season, 'bins'>): { used: CropIsotherm[]; others: CropIsotherm[] } {
  const used = new Map<string, CropIsotherm>();
  for (const { grain } of season.bins) {
    if (!ISOTHERM_CROPS.includes(grain.crop)) continue;
    const name = isothermOf(grain.crop, grain.isotherm ?? undefined).name;
    used.set(`${grain.crop} ${name}`, { crop: grain.crop, isotherm: name });
  }
  const crops = new Set([...used.values()].map((one) => one.crop));
  const others = ISOTHERM_CROPS.filter((crop) => !crops.has(crop) && CROPS.some((one) => one.id === crop));
  return { used: [...used.values()], others: others.map((crop) => ({ crop, isotherm: null })) };
}

/** The name that stands for a crop in the resistance table (durum is taken as wheat); null where it has none. */
export function resistanceCropOf(crop: string): string | null {
  try {
    return resistanceCurveOf(crop).crop;
  } catch {
    return null;
  }
}

/** Names of the resistance table: first those that stand for the season's crops, then the others. */
export function resistanceCrops(season: Pick<Season, 'bins'>): { used: string[]; others: string[] } {
  const all = [...new Set(RESISTANCE_CURVES.map((curve) => curve.crop))];
  const used = [...new Set(season.bins.map((bin) => resistanceCropOf(bin.grain.crop)))].filter((crop) => crop !== null);
  return { used, others: all.filter((crop) => !used.includes(crop)) };
}
