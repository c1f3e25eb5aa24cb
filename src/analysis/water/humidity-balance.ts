import { Z90 } from '../../base/estimate.ts';
import type { AirPiece } from './air-pieces.ts';
import { ENTERING_AIR, LEAVING_AIR, PLENUM_SD_K } from './heat-balance.ts';
import type { Cause } from './joined-causes.ts';
import { MOISTURE_STEP_WB, TEMP_STEP_K } from './leaving-air.ts';

/** Humidity sensors, fraction of relative humidity (sd). Working assumption: 3 % that 95 % keep in a plenum, 4 % outdoors. */
const PLENUM_RH_SD = 0.015;
const OUTDOOR_RH_SD = 0.02;

export interface HumidityBalance {
  waterKg: number;
  parts: Cause[];
  hours: number;
  airKg: number;
  /** kg of water in the entering and the leaving air */
  enteringKg: number;
  leavingKg: number;
}

/**
 * Water by humidities: dry air times the humidity ratio of the leaving air, in balance with the grain that it leaves, less
 * that of the entering air. Where the cable's isotherm is not stated, the value is the middle of the published ones.
 *
 * @param moistureSd  of the last sensors' mean, fraction (sd)
 * @param tempSdK     of their mean temperature, K (sd)
 */
export function humidityBalance(pieces: readonly AirPiece[], moistureSd: number, tempSdK: number): HumidityBalance {
  let water = 0;
  let wetter = 0;
  let warmer = 0;
  let plenumRh = 0;
  let plenumK = 0;
  let outdoorRh = 0;
  const others: number[] = [];
  const sums = { hours: 0, airKg: 0, enteringKg: 0, leavingKg: 0 };
  for (const { hours, airKg, entering, leaving } of pieces) {
    if (entering === null || leaving === null) continue;
    sums.hours += hours;
    sums.airKg += airKg;
    sums.enteringKg += airKg * entering.ratio;
    sums.leavingKg += airKg * leaving.ratio;
    water += airKg * (leaving.ratio - entering.ratio);
    wetter += airKg * (leaving.wetter - leaving.ratio);
    warmer += airKg * (leaving.warmer - leaving.ratio);
    if (entering.plenum) {
      plenumRh += airKg * entering.perRh;
      plenumK += airKg * entering.perK;
    } else outdoorRh += airKg * entering.perRh;
    leaving.others.forEach((ratio, i) => {
      others[i] = (others[i] ?? 0) + airKg * (ratio - leaving.ratio);
    });
  }
  const least = Math.min(0, ...others);
  const most = Math.max(0, ...others);
  const lean = (least + most) / 2;
  return {
    ...sums,
    waterKg: water + lean,
    leavingKg: sums.leavingKg + lean,
    parts: [
      { cause: 'moisture of the last sensors', sdKg: Math.abs(wetter) * (moistureSd / MOISTURE_STEP_WB) },
      { cause: LEAVING_AIR, sdKg: warmer * (tempSdK / TEMP_STEP_K) },
      // A plenum that is cooler than its thermometer says holds less water at its relative humidity.
      { cause: ENTERING_AIR, sdKg: -plenumK * PLENUM_SD_K },
      {
        cause: 'humidity of the entering air',
        sdKg: Math.hypot(plenumRh * PLENUM_RH_SD, outdoorRh * OUTDOOR_RH_SD),
      },
      { cause: 'choice of isotherm for the cables', sdKg: (most - least) / 2 / Z90 },
    ],
  };
}
