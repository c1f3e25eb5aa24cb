import { frontPlateauC } from '../../bin/front-plateau.ts';
import { equilibriumMoistureWb } from '../../grain/equilibrium.ts';
import type { Isotherm } from '../../grain/isotherm.ts';
import { moistureByOtherIsothermWb } from '../../grain/isotherm-spread.ts';
import type { MoistAir } from './entering-moist-air.ts';

/** Moisture that grain takes in the air in the long run, [pieces]; NaN where the air is not known or the isotherm does not speak. */
export function airMoistureWb(isotherm: Isotherm, { tempC, rh }: MoistAir): Float64Array {
  return tempC.map((t, i) => {
    if (Number.isNaN(t + rh[i]) || !within(t, isotherm)) return Number.NaN;
    try {
      return equilibriumMoistureWb(isotherm, t, rh[i]);
    } catch {
      // Chung-Pfost in hot, dry air gives no water at all: drier than any grain.
      return 0;
    }
  });
}

/**
 * Temperature that the air leads the grain to, [pieces]: behind its front, in balance with the grain's moisture. Where
 * the moisture of grain or air is not known, or no balance is found, the air's own temperature, without evaporation.
 */
export function plateausC(isotherm: Isotherm, air: MoistAir, grainWb: Float64Array, pressurePa: number): Float64Array {
  return air.tempC.map((t, i) => {
    const ratio = air.ratio[i];
    const moisture = grainWb[i];
    if (Number.isNaN(t + ratio + moisture) || !within(t, isotherm) || moisture < 0.05 || moisture > 0.4) return t;
    try {
      return frontPlateauC(isotherm, t, ratio, moisture, pressurePa);
    } catch {
      return t;
    }
  });
}

/** Moistures that cables told by one isotherm as they would have told them by another, [pieces]. */
export function toldByWb(from: Isotherm, to: Isotherm, tempC: Float64Array, moistureWb: Float64Array): Float64Array {
  if (from.name === to.name) return moistureWb;
  return moistureWb.map((moisture, i) => {
    const t = tempC[i];
    if (!(moisture >= 0.01 && moisture <= 0.6) || !within(t, from) || !within(t, to)) return Number.NaN;
    try {
      return moistureByOtherIsothermWb(from, to, t, moisture);
    } catch {
      return Number.NaN;
    }
  });
}

function within(tempC: number, { tempRangeC }: Isotherm): boolean {
  return tempC >= tempRangeC[0] && tempC <= tempRangeC[1];
}
