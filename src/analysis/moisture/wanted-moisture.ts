import type { Bin, Season } from '../../season/season.ts';

/** Moisture below which a buyer pays for no weight: the market's base, else the bin's target; wet basis, null where neither is stated. */
export function baseMoisture({ prices }: Pick<Season, 'prices'>, { grain }: Pick<Bin, 'grain'>): number | null {
  return prices[grain.crop]?.baseMoistureWb ?? grain.targetMoistureWb;
}

/** The same, or the bin's target where that is lower: what is lost down to it was wanted. */
export function wantedMoisture(season: Pick<Season, 'prices'>, bin: Pick<Bin, 'grain'>): number | null {
  const base = baseMoisture(season, bin);
  return base === null ? null : Math.min(base, bin.grain.targetMoistureWb ?? base);
}
