import { humidityRatio } from '../../../src/air/humidity-ratio.ts';
import { mediumOf } from '../../../src/simulation/bed/medium-of.ts';
import type { Blower } from '../../../src/simulation/run/blower.ts';
import type { Hours } from '../../../src/simulation/run/hours.ts';
import type { RunSpec } from '../../../src/simulation/run/run-spec.ts';

const PRESSURE_PA = 99_000;

/** Days of invented weather with dry spells and damp ones, cheap nights and a demand charge by day; `phase` makes another. */
export function invented(days: number, phase: number, demandPrice: number): Hours {
  const count = 24 * days;
  const array = (at: (hour: number) => number) => Float64Array.from({ length: count }, (_, hour) => at(hour));
  const clock = (hour: number) => Math.sin((2 * Math.PI * ((hour % 24) - 9)) / 24);
  const tempC = array((h) => 12 + 5 * Math.sin(h / 40 + phase) + 5 * clock(h));
  const rh = array((h) => Math.min(0.97, 0.68 - 0.2 * Math.sin(h / 31 + 2 * phase) - 0.18 * clock(h)));
  const localHour = Uint8Array.from({ length: count }, (_, h) => h % 24);
  return {
    startMs: 0,
    tempC,
    rh,
    humidityRatio: array((h) => humidityRatio(tempC[h], rh[h], PRESSURE_PA)),
    pressurePa: PRESSURE_PA,
    localHour,
    localMonth: new Uint8Array(count).fill(10),
    localDay: Uint16Array.from({ length: count }, (_, h) => Math.floor(h / 24)),
    pricePerKwh: array((h) => (h % 24 >= 22 || h % 24 < 6 ? 0.08 : 0.12)),
    demand: [{ pricePerKw: demandPrice, ratchet: 0, holds: localHour.map((h) => (h >= 7 && h < 22 ? 1 : 0)) }],
  };
}

/** A small bin of corn at 14 degC, to be dried unless said otherwise. */
export function smallBin(
  hours: Hours,
  startWb: number,
  targetWb: number | null,
  { blower = {}, ...rest }: Partial<Omit<RunSpec, 'levels'>> & { blower?: Partial<Blower> } = {},
): RunSpec {
  const depthM = 2;
  return {
    bed: { medium: mediumOf('corn', 610), depthM, layers: 8, pressurePa: PRESSURE_PA },
    floorAreaM2: 60,
    hours,
    levels: [
      {
        hour: 0,
        depthM,
        tempC: 14,
        moistureDb: startWb / (1 - startWb),
        blower: {
          ...{ airM3M2S: 0.118, warmingK: 1.5, powerW: 8000, heaterK: 0, heaterW: 0, heaterFuelPerHour: 0 },
          ...blower,
        },
      },
    ],
    endHour: hours.tempC.length,
    goal: 'dry',
    targetWb,
    targetC: null,
    ...rest,
  };
}
