import { HEAT_DRY_AIR_J_KGK } from '../../air/enthalpy.ts';
import type { Blower } from '../../simulation/run/blower.ts';
import { POWER_TO_AIR } from '../fan/power-to-air.ts';
import { HOUR_MS } from '../fronts/front-limits.ts';
import type { BinLog } from './bin-log.ts';
import { fansPower, type HeaterPart, heatersOf } from './fans-power.ts';

/** By which power airflow falls as a bed gets deeper: between a fan of one airflow and one of one pressure. Working assumption, as for the airflow through time. */
export const DEPTH_POWER = 0.4;

/**
 * The bin's fans with the grain at a depth.
 *
 * @param flowM3S    airflow at full depth, m3/s of the air that the fan takes in
 * @param heatedM3S  of which the power of fans and heaters is taken to warm so much
 */
export function blowerOf(log: BinLog, flowM3S: number, depthM: number, heatedM3S = flowM3S): Blower {
  const { bin, floorAreaM2 } = log;
  const byDepth = (log.depthM / depthM) ** DEPTH_POWER;
  const { powerW } = fansPower(log);
  const perKelvin = ((heatedM3S * byDepth) / log.meanVolumeM3Kg) * HEAT_DRY_AIR_J_KGK;
  const heaters = heatersOf(log);
  const heatW = heaters.reduce((sum, { heater, part }) => sum + part * heater.outputW, 0);
  // With a heater the plenum's warming is the heater's too: the fan's own then comes from its power.
  const logged = heaters.length === 0 ? log.warmingK : null;
  return {
    airM3M2S: (flowM3S * byDepth) / floorAreaM2,
    warmingK: bin.air === 'down' ? 0 : (logged ?? (POWER_TO_AIR * powerW) / perKelvin),
    powerW,
    heaterK: heatW / perKelvin,
    heaterW: heaters.reduce((sum, one) => sum + (onTariff(one) ? inputW(one) : 0), 0),
    heaterFuelPerHour: heaters.reduce(
      (sum, one) => sum + (onTariff(one) ? 0 : (inputW(one) * HOUR_MS * (one.heater.pricePerJ ?? Number.NaN)) / 1000),
      0,
    ),
  };
}

const inputW = ({ heater, part }: HeaterPart): number => (part * heater.outputW) / heater.efficiency;

/** Whether the tariff's own prices are those of a heater's current: one on the fan's meter, or one without a price of its own. */
function onTariff({ heater, inPower }: HeaterPart): boolean {
  return heater.fuel === 'electric' && (inPower || heater.pricePerJ === null);
}
