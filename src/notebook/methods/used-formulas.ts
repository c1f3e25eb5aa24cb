import { ISOTHERM_FORMULA_IDS } from '../../grain/formulas.ts';
import { isothermOf } from '../../grain/isotherm.ts';
import { ISOTHERM_EQUATIONS } from '../../grain/isotherm-equations.ts';
import type { Season } from '../../season/season.ts';

type Given = Pick<Season, 'bins' | 'files' | 'prices' | 'sensors' | 'tariffs'>;

const hasCables = ({ bins }: Given) => bins.some((bin) => bin.cables.length > 0);
const hasTariff = ({ tariffs }: Given) => tariffs.length > 0;
const holds =
  (what: string) =>
  ({ files }: Given) =>
    files.some((file) => file.holds === what);
const comesAs =
  (format: string) =>
  ({ files }: Given) =>
    files.some((file) => file.format === format);

/** Equations by which the season's cables turn humidity into moisture. */
function cableEquations({ bins, sensors }: Given): string[] {
  return bins
    .filter((bin) => bin.cables.length > 0)
    .map(({ grain }) => isothermOf(grain.crop, sensors.moisture.isotherm ?? grain.isotherm ?? undefined).equation);
}

/**
 * When a season's review works with a formula, by the formula's id; those that are not here are only offered.
 * A test holds this list against what the analysis and the loader import.
 */
export const USED_WHEN: Readonly<Record<string, (season: Given) => boolean>> = {
  ...Object.fromEntries(
    ISOTHERM_EQUATIONS.map((equation) => [
      ISOTHERM_FORMULA_IDS[equation],
      (season: Given) => cableEquations(season).includes(equation),
    ]),
  ),
  'sensor-shares': hasCables,
  'energy-cost': hasTariff,
  demand: ({ tariffs }) => tariffs.some((tariff) => tariff.demand.length > 0),
  connected: ({ tariffs }) =>
    tariffs.some((tariff) => tariff.connectedPerHpYear !== null || tariff.minimumPerMonth !== null),
  // The market's base moisture, else the target.
  overdrying: ({ bins, prices }) =>
    bins.some(({ grain }) => (prices[grain.crop]?.baseMoistureWb ?? grain.targetMoistureWb) !== null),
  // Weather that has only one of humidity and dew point is completed.
  'dew-point': holds('weather'),
  'saturation-over-water': holds('weather'),
  'station-pressure': comesAs('isd-lite'),
  'standard-pressure': comesAs('isd-lite'),
  altimeter: comesAs('asos'),
};

/** Ids of the formulas that this season's review worked with. */
export function usedFormulas(season: Given): ReadonlySet<string> {
  return new Set(Object.keys(USED_WHEN).filter((id) => USED_WHEN[id](season)));
}
