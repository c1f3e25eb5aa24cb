import type { FuelUnit } from '../base/fuel-unit.ts';

export interface Heater {
  fuel: 'electric' | 'propane' | 'natural gas';
  outputW: number;
  /** money per joule of fuel */
  pricePerJ: number | null;
  /** unit by which its fuel is priced, and the heat in one, J; left out where no price is stated */
  sold?: { unit: FuelUnit; unitJ: number };
  /** fraction of the fuel's heat that reaches the air */
  efficiency: number;
}

/** A fan as season.yaml states it. */
export interface Fan {
  id: string;
  /** shaft power on the nameplate, W */
  nameplateW: number;
  supply: { phases: 1 | 3; volts: number; powerFactor: number } | null;
  /** fraction of nameplate at which the motor works, where only the nameplate tells the power */
  load: number | null;
  motorEfficiency: number | null;
  /** current above which the fan counts as running, A; else found from the log */
  runningAboveA: number | null;
  tariffId: string | null;
  /** static pressure (Pa) to airflow (m3/s), rising pressure; null where none is given */
  curve: readonly (readonly [pressurePa: number, flowM3S: number])[] | null;
  heater: Heater | null;
}
