import { assertRange } from '../base/errors.ts';
import { AS_WHEAT } from './crops.ts';
import { dryFromWet } from './moisture-basis.ts';

/** Specific heat of a grain as a straight line over moisture: base + slope M, J/(kg K) and per percent of moisture. */
export interface SpecificHeatLine {
  crop: string;
  name: string;
  baseJKgK: number;
  slopeJKgKPct: number;
  /** basis of the percent in the source */
  basis: 'wet' | 'dry';
  /** moistures that the source covers, percent of its basis, both inclusive */
  rangePct: readonly [low: number, high: number];
  sourceKey: string;
  provenance: 'seen' | 'memory';
}

const line = (
  crop: string,
  name: string,
  baseJKgK: number,
  slopeJKgKPct: number,
  basis: 'wet' | 'dry',
  rangePct: readonly [number, number],
  sourceKey: string,
  provenance: 'seen' | 'memory' = 'memory',
): SpecificHeatLine => ({ crop, name, baseJKgK, slopeJKgKPct, basis, rangePct, sourceKey, provenance });

// Where the source's own range is not known to us, 5 to 30 % wet basis stands in. The two lines for soybeans lie 20 %
// apart at 13 % wet basis; the default is the one of D243, the other was measured at 42 degC.
/** Each crop's default first. */
export const SPECIFIC_HEAT_LINES: readonly SpecificHeatLine[] = [
  line('corn', 'Kazarian and Hall', 1465, 35.6, 'wet', [1, 30], 'kazarian-hall-1965'),
  line('soybean', 'Alam and Shove', 1638, 19.3, 'dry', [5, 43], 'alam-shove-1973'),
  line('soybean', 'Deshpande and Bal', 1444, 1444 * 0.0406, 'dry', [8.1, 25], 'deshpande-bal-1999', 'seen'),
  line('wheat', 'Kazarian and Hall, soft white', 1398, 40.9, 'wet', [1, 20], 'kazarian-hall-1965'),
  line('sorghum', 'Sharma and Thompson', 1397, 32.2, 'wet', [5, 30], 'sharma-thompson-1973'),
  line('rice', 'Wratten, medium grain', 921, 54.5, 'wet', [5, 30], 'wratten-1969'),
  line('oats', 'Haswell', 1277, 32.7, 'wet', [5, 30], 'haswell-1954'),
];

/** All lines of a crop, its default first; none where none is published. */
export function specificHeatLinesOf(crop: string): SpecificHeatLine[] {
  return SPECIFIC_HEAT_LINES.filter((one) => one.crop === (AS_WHEAT[crop] ?? crop));
}

/**
 * The line of a crop, its default when no name is given.
 *
 * @throws RangeError that lists the crops or the crop's lines
 */
export function specificHeatLineOf(crop: string, name?: string): SpecificHeatLine {
  const known = specificHeatLinesOf(crop);
  if (known.length === 0) {
    const crops = [...new Set(SPECIFIC_HEAT_LINES.map((one) => one.crop))];
    throw new RangeError(`no specific heat for crop "${crop}"; there is one for ${crops.join(', ')}`);
  }
  const found = name === undefined ? known[0] : known.find((one) => one.name === name);
  if (found === undefined) {
    throw new RangeError(
      `no specific heat "${name}" for ${crop}; there are ${known.map((one) => one.name).join(', ')}`,
    );
  }
  return found;
}

/**
 * Specific heat of grain with the water in it.
 *
 * @param heat        from `specificHeatLineOf`
 * @param moistureWb  fraction, wet basis, within the line's range
 * @returns           J per kg of grain as it lies, and K
 * @source            of the line: `heat.sourceKey`
 * @valid             throws RangeError outside, in percent of the source's basis
 */
export function specificHeatJKgK(heat: SpecificHeatLine, moistureWb: number): number {
  assertRange('moistureWb', moistureWb, 0, 0.6);
  const percent = 100 * (heat.basis === 'wet' ? moistureWb : dryFromWet(moistureWb));
  assertRange(`moisture in percent, ${heat.basis} basis,`, percent, ...heat.rangePct);
  return heat.baseJKgK + heat.slopeJKgKPct * percent;
}
