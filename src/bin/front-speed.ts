import { specificVolumeM3Kg } from '../air/volume.ts';
import { assertRange } from '../base/errors.ts';
import { grainHumidityRatio } from '../grain/grain-air.ts';
import type { Isotherm } from '../grain/isotherm.ts';
import { dryFromWet, wetFromDry } from '../grain/moisture-basis.ts';
import { bedWaveRatio, moisturePerKInWave } from './bed-waves.ts';

/** A front of temperature in a bed: grain of one state ahead of it, of another temperature behind. */
export interface TemperatureFront {
  isotherm: Isotherm;
  /** specific heat of the grain with its water, J per kg as it lies, 1000 to 4000 */
  heatJKgK: number;
  /** of the grain ahead, fraction, wet basis, 0.05 to 0.4 */
  moistureWb: number;
  /** of the grain ahead, degC */
  aheadC: number;
  /** of the grain behind, degC; not the air's that enters: a drying or wetting zone at the inlet lies between, see `frontPlateauC` */
  behindC: number;
  /** total pressure, Pa, 30000 to 120000 */
  pressurePa: number;
}

/** Dry grain that parts of a front pass for each kg of dry air, kg/kg. */
export interface FrontRatios {
  /** where the front begins to change the grain */
  lead: number;
  /** where half of the change is done */
  middle: number;
  /** where the change is done */
  tail: number;
  /** moisture behind less moisture ahead, fraction, wet basis: below 0 where grain is cooled */
  moistureChangeWb: number;
}

const STEPS = 32;

/**
 * How far a front moves for the air that is sent. Evaporation makes warm grain change faster than cold: so a cooling front
 * spreads, its lead running ahead of its tail, and a warming front stays sharp, all of it at one speed.
 *
 * @param front  within the ranges of its fields, temperatures within `isotherm.tempRangeC`, at least 0.1 K apart
 * @returns      see `FrontRatios`
 * @source       sutherland-1971: balances of heat and water of air and grain in balance; memory
 * @valid        throws RangeError outside. Left out: conduction, walls, uneven air, air that leaves short of balance
 */
export function frontRatios(front: TemperatureFront): FrontRatios {
  const { isotherm, heatJKgK, moistureWb, aheadC, behindC, pressurePa } = front;
  assertRange('heatJKgK', heatJKgK, 1000, 4000);
  assertRange('moistureWb', moistureWb, 0.05, 0.4);
  assertRange('aheadC', aheadC, ...isotherm.tempRangeC);
  assertRange('behindC', behindC, ...isotherm.tempRangeC);
  assertRange('pressurePa', pressurePa, 30000, 120000);
  assertRange('|aheadC - behindC|', Math.abs(aheadC - behindC), 0.1, 100);
  const speedAt = (t: number, m: number) => bedWaveRatio('fast', isotherm, t, m, heatJKgK, pressurePa);
  const slopeAt = (t: number, m: number) => moisturePerKInWave(isotherm, t, m, heatJKgK, pressurePa);
  const step = (behindC - aheadC) / STEPS;
  const start = dryFromWet(moistureWb);
  const ratios = new Float64Array(STEPS + 1);
  let t = aheadC;
  let m = start;
  ratios[0] = speedAt(t, m);
  for (let i = 1; i <= STEPS; i++) {
    // the midpoint rule along the wave
    const half = m + (step / 2) * slopeAt(t, m);
    m += step * slopeAt(t + step / 2, half);
    t = aheadC + i * step;
    ratios[i] = speedAt(t, m);
  }
  const moistureChangeWb = wetFromDry(m) - moistureWb;
  if (behindC < aheadC) {
    return { lead: ratios[0], middle: ratios[STEPS / 2], tail: ratios[STEPS], moistureChangeWb };
  }
  // A sharp front moves at the mean of the speeds of the states that it joins (the trapezium rule over them).
  const sum = ratios.reduce((total, ratio) => total + ratio, 0) - (ratios[0] + ratios[STEPS]) / 2;
  const mean = sum / STEPS;
  return { lead: mean, middle: mean, tail: mean, moistureChangeWb };
}

/**
 * Speed at which a part of a front moves up.
 *
 * @param ratio            dry grain for each kg of dry air, kg/kg, from `frontRatios`, 0.01 to 20
 * @param velocityMS       superficial velocity of the air, m/s, 0 to 1
 * @param airVolumeM3Kg    volume of that air for each kg of dry air, m3/kg, 0.5 to 2
 * @param dryMatterKgM3    dry matter in the bed, kg/m3, 100 to 1100
 * @returns                m/s
 * @source                 definition of the ratio
 * @valid                  throws RangeError outside
 */
export function frontSpeedMS(ratio: number, velocityMS: number, airVolumeM3Kg: number, dryMatterKgM3: number): number {
  assertRange('velocityMS', velocityMS, 0, 1);
  return velocityMS * speedPerVelocity(ratio, airVolumeM3Kg, dryMatterKgM3);
}

/**
 * Superficial velocity of the air that moved a part of a front so fast: `frontSpeedMS` solved for the velocity.
 *
 * @param ratio          as there
 * @param speedMS        of the front, m/s, 0 to 0.01 (36 m/h)
 * @param airVolumeM3Kg  as there
 * @param dryMatterKgM3  as there
 * @returns              m/s; times the floor area the airflow, m3/s
 * @valid                throws RangeError outside
 */
export function velocityOfFrontMS(
  ratio: number,
  speedMS: number,
  airVolumeM3Kg: number,
  dryMatterKgM3: number,
): number {
  assertRange('speedMS', speedMS, 0, 0.01);
  return speedMS / speedPerVelocity(ratio, airVolumeM3Kg, dryMatterKgM3);
}

function speedPerVelocity(ratio: number, airVolumeM3Kg: number, dryMatterKgM3: number): number {
  assertRange('ratio', ratio, 0.01, 20);
  assertRange('airVolumeM3Kg', airVolumeM3Kg, 0.5, 2);
  assertRange('dryMatterKgM3', dryMatterKgM3, 100, 1100);
  return ratio / airVolumeM3Kg / dryMatterKgM3;
}

/** Volume of the air behind a front, in balance with the grain there, m3 per kg of dry air: what velocities are told in. */
export function airVolumeBehindM3Kg(front: TemperatureFront): number {
  const { isotherm, behindC, moistureWb, pressurePa } = front;
  const ratio = grainHumidityRatio(isotherm, behindC, moistureWb, pressurePa);
  return specificVolumeM3Kg(behindC, ratio, pressurePa);
}
