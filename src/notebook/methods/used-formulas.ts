import type { SeasonReview } from '../../analysis/types.ts';
import type { LoadedSeason } from '../../season/loaded.ts';

type Season = Pick<LoadedSeason, 'season'> & { review: SeasonReview };
const hasCables = ({ season }: Season) => season.bins.some((bin) => bin.cables.length > 0);
const hasTariff = ({ season }: Season) => season.tariffs.length > 0;
const holds =
  (what: string) =>
  ({ season }: Season) =>
    season.files.some((file) => file.holds === what);

/**
 * When a season's review works with a formula, by the formula's id; those that are not here are only offered.
 * A test holds this list against what the analysis and the loader import.
 */
export const USED_WHEN: Readonly<Record<string, (season: Season) => boolean>> = {
  'sensor-shares': hasCables,
  'energy-cost': hasTariff,
  demand: ({ season }) => season.tariffs.some((tariff) => tariff.demand.length > 0),
  connected: ({ season }) =>
    season.tariffs.some((tariff) => tariff.connectedPerHpYear !== null || tariff.minimumPerMonth !== null),
  overdrying: ({ season, review }) =>
    review.bins.length > 0 && Object.values(season.prices).some((price) => price.baseMoistureWb !== null),
  // Weather that has only one of humidity and dew point is completed.
  'dew-point': holds('weather'),
  'saturation-over-water': holds('weather'),
  'station-pressure': ({ season }) => season.files.some((file) => file.format === 'isd-lite'),
  'standard-pressure': ({ season }) => season.files.some((file) => file.format === 'isd-lite'),
};

/** Ids of the formulas that this season's review worked with. */
export function usedFormulas(season: Season): ReadonlySet<string> {
  return new Set(Object.keys(USED_WHEN).filter((id) => USED_WHEN[id](season)));
}
