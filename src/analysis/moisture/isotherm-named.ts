import { type Isotherm, isothermOf } from '../../grain/isotherm.ts';

/**
 * The isotherm of a crop by a name that season.yaml gives for all bins: another crop's bin lacks it.
 *
 * @param name  null or left out: the crop's default
 * @returns     null where the crop has none of that name
 */
export function isothermNamed(crop: string, name?: string | null): Isotherm | null {
  try {
    return isothermOf(crop, name ?? undefined);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}
