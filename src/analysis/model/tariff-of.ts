import type { Tariff } from '../../money/tariff.ts';
import type { Bin, Season } from '../../season/season.ts';

/** The tariff of a bin's fans: where they are on several, that of the largest fan. */
export function tariffOf(season: Season, bin: Bin): Tariff | null {
  const fans = season.fans
    .filter((fan) => bin.fanIds.includes(fan.id) && fan.tariffId !== null)
    .sort((a, b) => b.nameplateW - a.nameplateW);
  return season.tariffs.find((tariff) => tariff.id === fans[0]?.tariffId) ?? null;
}
