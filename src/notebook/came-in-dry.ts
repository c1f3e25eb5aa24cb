import { baseMoisture } from '../analysis/moisture/wanted-moisture.ts';
import type { BinReview } from '../analysis/types.ts';
import type { Season } from '../season/season.ts';

/** Grain that lay at or below the market's base (else the target) when it came in: no fan dried it there. */
export function cameInDry({ bin, moisture }: BinReview, season: Pick<Season, 'prices'>): boolean {
  const base = baseMoisture(season, bin);
  return base !== null && moisture.start.value !== null && moisture.start.value <= base;
}
