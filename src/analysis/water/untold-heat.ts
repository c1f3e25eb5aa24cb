import type { Heater } from '../../bin/fan.ts';
import type { Bin } from '../../season/season.ts';

/** Behind a heater outdoor readings tell neither how warm the entering air is nor, where fuel burns in it, how damp. */
const LEAST_PLENUM = 0.8;
const UNTOLD_HEAT = 'A heater warms the entering air, and no plenum log tells by how much.';
const UNTOLD_BURNER = 'A burner warms the entering air and may add water to it, and no plenum log tells how much.';

/**
 * Why the entering air behind heaters is not known; null where the plenum tells it. An electric heater adds no water: the
 * temperature of the plenum and the humidity outdoors are enough.
 *
 * @param plenumShare  share of the fan hours in which the plenum told the humidity of the entering air
 * @param warmthShare  the same of its temperature
 */
export function untoldHeat(
  air: Bin['air'],
  heaters: readonly Pick<Heater, 'fuel'>[],
  { plenumShare, warmthShare }: { plenumShare: number; warmthShare: number },
): string | null {
  // Air drawn down comes in at the top, past no heater.
  if (air === 'down' || heaters.length === 0) return null;
  if (heaters.some(({ fuel }) => fuel !== 'electric')) return plenumShare < LEAST_PLENUM ? UNTOLD_BURNER : null;
  return warmthShare < LEAST_PLENUM ? UNTOLD_HEAT : null;
}
