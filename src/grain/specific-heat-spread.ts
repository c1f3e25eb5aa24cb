import { SPECIFIC_HEAT_LINES, specificHeatJKgK } from './specific-heat.ts';

/**
 * What the published lines of all crops say at one moisture: the bounds to work with where a crop has no line of its own.
 * Dry matter differs less from crop to crop than the lines do; water, the larger part of the difference, is counted by each.
 *
 * @param moistureWb  fraction, wet basis, 0.09 to 0.2, where every line speaks
 * @returns           lowest and highest, J per kg of grain as it lies, and K
 * @source            of each line
 * @valid             throws RangeError outside a line's own range
 */
export function specificHeatSpreadJKgK(moistureWb: number): readonly [low: number, high: number] {
  const said = SPECIFIC_HEAT_LINES.map((line) => specificHeatJKgK(line, moistureWb));
  return [Math.min(...said), Math.max(...said)];
}
