import { CROPS } from './crops.ts';
import { ISOTHERM_CONSTANTS, type IsothermConstants } from './isotherm-constants.ts';

/** An isotherm of a crop, by its name in season.yaml: `modified Henderson D245.5`. */
export interface Isotherm extends IsothermConstants {
  name: string;
  /** temperatures for which the equation is let speak, degC, both inclusive */
  tempRangeC: readonly [low: number, high: number];
}

const COLDEST_C = -40;
const HOTTEST_C = 60;
// Henderson and Chung-Pfost divide by T + C; near its zero the moisture runs off, far beyond what was ever measured.
const LEAST_T_PLUS_C_K = 10;

function toIsotherm(constants: IsothermConstants): Isotherm {
  const divides = constants.equation === 'modified Henderson' || constants.equation === 'modified Chung-Pfost';
  const low = divides ? Math.max(COLDEST_C, LEAST_T_PLUS_C_K - constants.c) : COLDEST_C;
  return { ...constants, name: `${constants.equation} ${constants.edition}`, tempRangeC: [low, HOTTEST_C] };
}

const ISOTHERMS: readonly Isotherm[] = ISOTHERM_CONSTANTS.map(toIsotherm);

/** Crops for which there are constants, in the order of the table. */
export const ISOTHERM_CROPS: readonly string[] = [...new Set(ISOTHERMS.map(({ crop }) => crop))];

/** All isotherms of a crop, in the order of the table. @throws RangeError that lists the crops */
export function isothermsOf(crop: string): Isotherm[] {
  const found = ISOTHERMS.filter((one) => one.crop === crop);
  if (found.length === 0) {
    throw new RangeError(`no isotherm for crop "${crop}"; there are constants for ${ISOTHERM_CROPS.join(', ')}`);
  }
  return found;
}

/**
 * The isotherm of a crop by name. D245.6 kept the constants of D245.5, so its names find those.
 *
 * @param crop  id of the crop table
 * @param name  `modified Henderson D245.5` and the like; left out: the default of the crop table
 * @throws      RangeError that lists the names that the crop has
 */
export function isothermOf(crop: string, name?: string): Isotherm {
  const known = isothermsOf(crop);
  const wanted = (name ?? CROPS.find((one) => one.id === crop)?.isotherm)?.replace(/ D245\.6$/, ' D245.5');
  const found = known.find((one) => one.name === wanted);
  if (found === undefined) {
    const asked = wanted === undefined ? 'no default isotherm' : `no isotherm "${name}"`;
    throw new RangeError(`${asked} for ${crop}; there are ${known.map((one) => one.name).join(', ')}`);
  }
  return found;
}
