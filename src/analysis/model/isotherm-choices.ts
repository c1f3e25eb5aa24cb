import { isothermsInUse } from '../useful/isotherms-in-use.ts';
import type { BinLog } from './bin-log.ts';

/** The isotherms of a bin, by name: the grain's, and the one by which its cables make moisture of humidity. */
export interface IsothermChoice {
  grain: string;
  cable: string;
}

/**
 * What the isotherms of a bin may be, the usual first. A grain whose isotherm season.yaml does not name follows one of those in use
 * for its crop; cables of which nothing is stated work by the crop's usual one, or by the grain's own, as a maker does who
 * calibrates them on such grain.
 */
export function isothermChoices({ bin, cableIsotherm, cableStated }: BinLog): IsothermChoice[] {
  const { main, others } = isothermsInUse(bin.grain);
  const grains = bin.grain.isotherm === null ? [main, ...others] : [main];
  const cable = cableIsotherm.name;
  return grains.flatMap(({ name }) => [
    { grain: name, cable },
    ...(cableStated || name === cable ? [] : [{ grain: name, cable: name }]),
  ]);
}
