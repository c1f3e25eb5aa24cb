import { humidityRatio } from '../../../src/air/humidity-ratio.ts';
import { mediumOf } from '../../../src/simulation/bed/medium-of.ts';
import type { Blower } from '../../../src/simulation/run/blower.ts';
import type { Hours } from '../../../src/simulation/run/hours.ts';
import type { RunSpec } from '../../../src/simulation/run/run-spec.ts';

export const PRESSURE_PA = 98_000;

interface Weather {
  count: number;
  tempC?: (hour: number) => number;
  rh?: (hour: number) => number;
  price?: (hour: number) => number;
}

/** Hours of an invented October on a clock that never changes; what a test is about it sets. */
export function inventedHours(weather: Weather, other: Partial<Hours> = {}): Hours {
  const { count, tempC = () => 10, rh = () => 0.65, price = () => 0.1 } = weather;
  const array = (at: (hour: number) => number) => Float64Array.from({ length: count }, (_, hour) => at(hour));
  return {
    startMs: 0,
    tempC: array(tempC),
    rh: array(rh),
    humidityRatio: array((hour) => humidityRatio(tempC(hour), rh(hour), PRESSURE_PA)),
    pressurePa: PRESSURE_PA,
    localHour: Uint8Array.from({ length: count }, (_, hour) => hour % 24),
    localMonth: new Uint8Array(count).fill(10),
    localDay: Uint16Array.from({ length: count }, (_, hour) => Math.floor(hour / 24)),
    pricePerKwh: array(price),
    demand: [],
    ...other,
  };
}

/** A fan of 10 kW that warms by 2 K, with a heater of 4 K at 0.5 kW and 3 an hour for fuel. */
export const BLOWER: Blower = {
  airM3M2S: 0.084,
  warmingK: 2,
  powerW: 10_000,
  heaterK: 4,
  heaterW: 500,
  heaterFuelPerHour: 3,
};

interface Grain {
  crop?: string;
  tempC?: number;
  moistureWb?: number;
}

/** Four metres of grain of one state; 14 degC and 17 % corn to be dried to 15 % else. */
export function inventedBin(hours: Hours, other: Partial<RunSpec> & Grain = {}): RunSpec {
  const { crop = 'corn', tempC = 14, moistureWb = 0.17, ...rest } = other;
  return {
    bed: { medium: mediumOf(crop, 610), depthM: 4, layers: 20, pressurePa: PRESSURE_PA },
    floorAreaM2: 80,
    hours,
    levels: [{ hour: 0, depthM: 4, tempC, moistureDb: moistureWb / (1 - moistureWb), blower: BLOWER }],
    endHour: hours.tempC.length,
    goal: 'dry',
    targetWb: 0.15,
    targetC: null,
    ...rest,
  };
}
