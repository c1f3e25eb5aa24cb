import { vapourPressurePa } from '../../air/humidity-ratio.ts';
import { saturationPressurePa } from '../../air/saturation.ts';
import { EQUILIBRIUM_RH_RANGE } from '../../grain/equilibrium.ts';
import { type Isotherm, isothermOf } from '../../grain/isotherm.ts';
import { isothermMoistureDb } from '../../grain/isotherm-equations.ts';
import { wetFromDry } from '../../grain/moisture-basis.ts';
import type { Blower } from './blower.ts';
import { enteringC, ofOneShape } from './played-bin.ts';
import type { RunSpec } from './run-spec.ts';

/** Air that would come into the grain in each hour were the fan on, [hours of the run]: the same for all strategies. */
export interface EnteringAir {
  tempC: Float64Array;
  /** fraction, at most 1: what is above is fog */
  rh: Float64Array;
  /** moisture of grain in balance with it, wet basis */
  emcWb: Float64Array;
  /** with the heater burning */
  heatedC: Float64Array;
  heatedRh: Float64Array;
}

const FOG_RH = 1;

/** One bin in one weather is run by many strategies. */
const KNOWN = new WeakMap<RunSpec, EnteringAir>();

export function enteringAir(spec: RunSpec): EnteringAir {
  const known = KNOWN.get(spec);
  if (known !== undefined) return known;
  const shaped = ofOneShape(spec);
  const { hours, endHour, bed } = shaped;
  const { pressurePa } = hours;
  const isotherm = isothermOf(bed.medium.crop, bed.medium.isotherm);
  const array = () => new Float64Array(endHour);
  const made: EnteringAir = { tempC: array(), rh: array(), emcWb: array(), heatedC: array(), heatedRh: array() };
  for (let hour = 0; hour < endHour; hour++) {
    const blower = blowerAt(shaped, hour);
    const vapourPa = vapourPressurePa(hours.humidityRatio[hour], pressurePa);
    const tempC = enteringC(shaped, blower, hour, false);
    const heatedC = enteringC(shaped, blower, hour, true);
    const rh = Math.min(FOG_RH, vapourPa / saturationPressurePa(tempC));
    made.tempC[hour] = tempC;
    made.rh[hour] = rh;
    made.emcWb[hour] = equilibriumWb(isotherm, tempC, rh);
    made.heatedC[hour] = heatedC;
    made.heatedRh[hour] = heatedC === tempC ? rh : Math.min(FOG_RH, vapourPa / saturationPressurePa(heatedC));
  }
  KNOWN.set(spec, made);
  return made;
}

function blowerAt({ levels }: RunSpec, hour: number): Blower {
  let at = 0;
  while (at + 1 < levels.length && levels[at + 1].hour <= hour) at += 1;
  return levels[at].blower;
}

/** As `equilibriumMoistureWb`, held at the ends of the isotherm's temperatures too, as the bed holds it; never below 0. */
function equilibriumWb({ equation, a, b, c, tempRangeC }: Isotherm, tempC: number, rh: number): number {
  const heldC = Math.min(tempRangeC[1], Math.max(tempRangeC[0], tempC));
  const heldRh = Math.min(EQUILIBRIUM_RH_RANGE[1], Math.max(EQUILIBRIUM_RH_RANGE[0], rh));
  return wetFromDry(Math.max(0, isothermMoistureDb(equation, a, b, c, heldC, heldRh)));
}
