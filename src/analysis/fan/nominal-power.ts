import type { Fan } from '../../bin/fan.ts';

const WATT_PER_HP = 745.6999;

/**
 * Electric power for each horsepower on the nameplate where neither load nor motor efficiency is stated, W/hp.
 * @source Univ. of Nebraska-Lincoln CropWatch, reconditioning too-dry soybeans, 14 Oct 2015: 1 kW per nominal horsepower
 */
export const PLANNING_W_PER_HP = 1000;

/** Where only one of the two is stated, the other: a motor at full load; 0.88, motors of 5 to 50 hp 0.80 to 0.94 (common practice, from memory). */
const DEFAULT_LOAD = 1;
export const DEFAULT_MOTOR_EFFICIENCY = 0.88;

/** Nameplate horsepower. */
export function nameplateHp(fan: Fan): number {
  return fan.nameplateW / WATT_PER_HP;
}

/**
 * Electric power that the nameplate lets expect, and by what reasoning.
 * nameplate x load / motor efficiency where at least one is stated, else 1 kW per horsepower.
 */
export function nominalPower(fan: Fan): { powerW: number; how: string } {
  const nameplate = `from the nameplate, ${round(fan.nameplateW / 1000, 2)} kW (${round(nameplateHp(fan), 1)} hp)`;
  if (fan.load === null && fan.motorEfficiency === null) {
    const powerW = nameplateHp(fan) * PLANNING_W_PER_HP;
    return {
      powerW,
      how: `${nameplate}, taken to draw ${round(powerW / 1000, 1)} kW by the extension planning figure`,
    };
  }
  const load = fan.load ?? DEFAULT_LOAD;
  const efficiency = fan.motorEfficiency ?? DEFAULT_MOTOR_EFFICIENCY;
  const parts = [
    `load ${round(load * 100, 0)} %${fan.load === null ? ' (assumed)' : ''}`,
    `motor efficiency ${round(efficiency * 100, 0)} %${fan.motorEfficiency === null ? ' (assumed)' : ''}`,
  ];
  return { powerW: (fan.nameplateW * load) / efficiency, how: `${nameplate}, ${parts.join(', ')}` };
}

/**
 * Electric power of the motor at its full load: what a fan runs at, where energy is to be told as hours and no log shows
 * the running power. The planning figure of 1 kW per horsepower is on the safe side for energy, and would make hours short.
 */
export function fullLoadPower(fan: Fan): { powerW: number; how: string } {
  if (fan.load !== null || fan.motorEfficiency !== null) return nominalPower(fan);
  return nominalPower({ ...fan, load: DEFAULT_LOAD });
}

/**
 * Electric power of a motor from the current of a line, W: sqrt(3) V I pf on three phases (V between lines), V I pf on one.
 * NaN without a stated supply.
 */
export function powerFromCurrent(fan: Fan, currentA: number): number {
  if (fan.supply === null) return Number.NaN;
  const { phases, volts, powerFactor } = fan.supply;
  return (phases === 3 ? Math.sqrt(3) : 1) * volts * currentA * powerFactor;
}

/**
 * Current at which the motor would draw its nominal power, A. Without a stated supply 1.2 A a horsepower, the least of
 * the usual farm supplies (460 V three-phase; NEC table 430.250 has 1.4 A/hp at 10 hp and 1.3 at 40, from memory): a
 * floor for "the motor runs", not a rating.
 */
export function fullLoadCurrentA(fan: Fan): number {
  const perAmp = powerFromCurrent(fan, 1);
  return Number.isNaN(perAmp) ? 1.2 * nameplateHp(fan) : nominalPower(fan).powerW / perAmp;
}

function round(value: number, digits: number): string {
  return String(Number(value.toFixed(digits)));
}
