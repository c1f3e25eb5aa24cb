import { ISOTHERM_FORMULA_IDS } from '../../grain/formulas.ts';
import { isothermOf } from '../../grain/isotherm.ts';
import { ISOTHERM_EQUATIONS, type IsothermEquation } from '../../grain/isotherm-equations.ts';
import type { Season } from '../../season/season.ts';

type Given = Pick<Season, 'bins' | 'dryingAlternative' | 'files' | 'prices' | 'tariffs'>;

const hasCables = ({ bins }: Given) => bins.some((bin) => bin.cables.length > 0);
const hasTariff = ({ tariffs }: Given) => tariffs.length > 0;
const holds =
  (what: string) =>
  ({ files }: Given) =>
    files.some((file) => file.holds === what);
const comesAs =
  (...formats: string[]) =>
  ({ files }: Given) =>
    files.some((file) => file.format !== null && formats.includes(file.format));
/** Weather of a season in which a bin's crop has this isotherm: what its grain would settle at in the air at fill. */
const settlesBy = (equation: IsothermEquation) => (season: Given) =>
  holds('weather')(season) &&
  season.bins.some(({ grain }) => isothermOf(grain.crop, grain.isotherm ?? undefined).equation === equation);

/** Air whose water and grain whose temperature are logged: what each fan hour could do. */
const airMeetsGrain = (season: Given) => hasCables(season) && (holds('weather')(season) || holds('plenum')(season));

/** A fan's log beside cables in the grain: how fast temperatures are carried up, and what the air took off. */
const frontsTimed = (season: Given) => hasCables(season) && holds('fan')(season);

/** Static pressures beside a fan's log. */
const pressureRead = (season: Given) => holds('fan')(season) && holds('plenum')(season);

/**
 * When a season's review works with a formula, by the formula's id; those that are not here are only offered.
 * A test holds this list against what the analysis and the loader import.
 */
export const USED_WHEN: Readonly<Record<string, (season: Given) => boolean>> = {
  'sensor-shares': hasCables,
  // Water and points are reckoned on dry matter.
  'moisture-basis': (season) => hasCables(season) || holds('tickets')(season),
  // Where no test weight is stated.
  'bulk-density': ({ bins }) => bins.some(({ grain }) => grain.bulkDensityFrom === 'crop'),
  'energy-cost': hasTariff,
  demand: ({ tariffs }) => tariffs.some((tariff) => tariff.demand.length > 0),
  'demand-otherwise': ({ tariffs }) => tariffs.some((tariff) => tariff.demand.length > 0),
  connected: ({ tariffs }) =>
    tariffs.some((tariff) => tariff.connectedPerHpYear !== null || tariff.minimumPerMonth !== null),
  // The market's base moisture, else the target.
  overdrying: ({ bins, prices }) =>
    bins.some(({ grain }) => (prices[grain.crop]?.baseMoistureWb ?? grain.targetMoistureWb) !== null),
  // What a change of moisture was worth: a price with a base or a schedule, of a crop in a bin.
  schedule: ({ bins, prices }) =>
    bins.some(({ grain }) => {
      const price = prices[grain.crop];
      return price !== undefined && (price.baseMoistureWb !== null || (price.schedules ?? []).length > 0);
    }),
  'high-temperature-drying': ({ bins, dryingAlternative }) =>
    bins.length > 0 && (dryingAlternative?.highTemperature ?? null) !== null,
  'commercial-drying': ({ bins, dryingAlternative }) =>
    bins.length > 0 && (dryingAlternative?.commercialPerPoint ?? null) !== null,
  // Weather that has only one of humidity and dew point is completed.
  'dew-point': holds('weather'),
  'saturation-over-water': holds('weather'),
  // Archives that state pressures reduced to sea level.
  'station-pressure': comesAs('isd-lite', 'open-meteo', 'asos'),
  'standard-pressure': (season) => airMeetsGrain(season) || comesAs('isd-lite', 'open-meteo', 'asos')(season),
  'humidity-ratio': airMeetsGrain,
  'front-plateau': airMeetsGrain,
  'temperature-front': frontsTimed,
  'specific-heat': frontsTimed,
  'heat-of-vaporisation': frontsTimed,
  // The depth by the temperatures at rest, beside the outdoor air.
  conducted: (season) => hasCables(season) && holds('weather')(season),
  'grain-air': frontsTimed,
  'specific-volume': frontsTimed,
  'specific-airflow': (season) => frontsTimed(season) || pressureRead(season),
  'airflow-resistance': pressureRead,
  'operating-point': holds('fan'),
  'fan-power': ({ bins }) => bins.some((bin) => bin.fanIds.length > 0),
  altimeter: comesAs('asos'),
  // The air at fill, warmed by the fan, and the moisture it stands for.
  warming: holds('weather'),
  'other-isotherms': holds('weather'),
  ...Object.fromEntries(ISOTHERM_EQUATIONS.map((equation) => [ISOTHERM_FORMULA_IDS[equation], settlesBy(equation)])),
};

/** Ids of the formulas that this season's review worked with. */
export function usedFormulas(season: Given): ReadonlySet<string> {
  return new Set(Object.keys(USED_WHEN).filter((id) => USED_WHEN[id](season)));
}
