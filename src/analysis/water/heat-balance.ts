import { HEAT_DRY_AIR_J_KGK, HEAT_VAPOUR_J_KGK } from '../../air/enthalpy.ts';
import { Z95 } from '../../base/estimate.ts';
import { heatOfVaporisationJKg } from '../../grain/heat-of-vaporisation.ts';
import type { Isotherm } from '../../grain/isotherm.ts';
import { grainHeatJKgK } from '../airflow/wave-ratio.ts';
import { ASSUMED_ACCURACY_K } from '../moisture/temperature-interval.ts';
import type { Cause } from './joined-causes.ts';

/** Thermometers that both ways to the water lean on: in plenum and cables. */
export const ENTERING_AIR = 'temperature of the entering air';
export const LEAVING_AIR = 'temperature of the leaving air';

/** A stretch of fan running with what is known of its heat. */
export interface HeatPiece {
  hours: number;
  /** kg of dry air */
  airKg: number;
  enteringC: number;
  enteringRatio: number;
  /** the plenum told the entering temperature; else it is the outdoor one and the usual warming */
  logged: boolean;
  leavingC: number;
  outdoorC: number;
  /** by how much the mean of the grain warmed in the stretch, K, times the share of the bin that it lay in */
  grainWarmedK: number;
}

export interface HeatBalance {
  /** water that the heat which went missing has taken out, kg */
  waterKg: number;
  /** the part of it that rises with the airflow: what the air gave up */
  ofAirKg: number;
  parts: Cause[];
  hours: number;
}

/** Fixed error of a plenum's thermometer, K (sd), as that of a cable's, and of outdoor air with the usual warming. Working assumptions. */
export const PLENUM_SD_K = ASSUMED_ACCURACY_K / Z95;
const OUTDOOR_SD_K = 1.2;
/** Isotherms part on how firmly grain holds its water, share of the heat of vaporisation (sd). */
const BINDING_SD = 0.04;
/** Change of the grain's mean temperature between its sensors, share (sd). Working assumption. */
const GRAIN_SHARE_SD = 0.08;
/** Heat through the wall while the fan runs, W for each m2 and K between grain and outdoors: a rim of grain, film and sun together (sd). Working assumption. */
const WALL_SD_W_M2K = 0.3;

/**
 * Water by the balance of heat: what the air loses in temperature on its way through the grain, and what the grain gives up
 * beside, goes into vapour. Needs no humidity at all, and so errs in other ways than the account by humidities.
 *
 * @param pieces        those with all temperatures
 * @param grain         dry matter, kg, and mean moisture, wet basis, fraction
 * @param wallM2        wall along the grain
 * @param cableSdK      fixed error of the mean of the leaving sensors, K (sd)
 * @source              first law; heat of vaporisation by rodriguez-arias-1963 on the isotherm in use
 */
export function heatBalance(
  pieces: readonly HeatPiece[],
  isotherm: Isotherm,
  crop: string,
  grain: { dryMatterKg: number; moistureWb: number },
  wallM2: number,
  cableSdK: number,
): HeatBalance {
  const heatJK = (grain.dryMatterKg / (1 - grain.moistureWb)) * grainHeatJKgK(crop, grain.moistureWb);
  let waterKg = 0;
  let grainKg = 0;
  let perKPlenum = 0;
  let perKOutdoor = 0;
  let wallKg = 0;
  let hours = 0;
  const [coldest, hottest] = isotherm.tempRangeC;
  for (const one of pieces) {
    const tempC = Math.min(hottest, Math.max(coldest, one.leavingC));
    const vaporisation = heatOfVaporisationJKg(isotherm, tempC, grain.moistureWb);
    const airHeat = HEAT_DRY_AIR_J_KGK + HEAT_VAPOUR_J_KGK * one.enteringRatio;
    const perK = (one.airKg * airHeat) / vaporisation;
    const given = (heatJK * -one.grainWarmedK) / vaporisation;
    waterKg += perK * (one.enteringC - one.leavingC) + given;
    grainKg += given;
    if (one.logged) perKPlenum += perK;
    else perKOutdoor += perK;
    const apartK = Number.isNaN(one.outdoorC) ? 5 : Math.abs(one.leavingC - one.outdoorC);
    wallKg += (WALL_SD_W_M2K * wallM2 * Math.max(2, apartK) * one.hours * 3600) / vaporisation;
    hours += one.hours;
  }
  return {
    waterKg,
    ofAirKg: waterKg - grainKg,
    hours,
    parts: [
      { cause: ENTERING_AIR, sdKg: perKPlenum * PLENUM_SD_K },
      { cause: 'outdoor air in the place of the entering air', sdKg: perKOutdoor * OUTDOOR_SD_K },
      { cause: LEAVING_AIR, sdKg: -(perKPlenum + perKOutdoor) * cableSdK },
      { cause: 'heat that the grain gave up', sdKg: Math.abs(grainKg) * GRAIN_SHARE_SD },
      { cause: 'heat through the wall', sdKg: wallKg },
      { cause: 'heat that binds water to grain', sdKg: Math.abs(waterKg) * BINDING_SD },
    ],
  };
}
