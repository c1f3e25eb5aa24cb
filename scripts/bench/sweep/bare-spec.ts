import { mediumOf } from '../../../src/simulation/bed/medium-of.ts';
import type { Blower } from '../../../src/simulation/run/blower.ts';
import type { RunSpec } from '../../../src/simulation/run/run-spec.ts';

export interface BareBin {
  /** ms UTC, and hours from it to the run's end */
  startMs: number;
  count: number;
  depthM: number;
  layers: number;
  /** as it comes in: degC, wet basis */
  tempC: number;
  moistureWb: number;
  pressurePa: number;
  blower: Pick<Blower, 'airM3M2S'> & Partial<Blower>;
}

/** A bin of corn to be dried to 15 %, 80 m2 of floor and a fan of 9 kW, in no weather yet: `yearSpec` gives it a year's. */
export function bareSpec({ startMs, count, depthM, layers, tempC, moistureWb, pressurePa, blower }: BareBin): RunSpec {
  const empty = new Float64Array(count);
  const usual = { warmingK: 1.5, powerW: 9000, heaterK: 0, heaterW: 0, heaterFuelPerHour: 0 };
  return {
    bed: { medium: mediumOf('corn', 610), depthM, layers, pressurePa },
    floorAreaM2: 80,
    hours: {
      startMs,
      tempC: empty,
      rh: empty,
      humidityRatio: empty,
      pressurePa,
      localHour: new Uint8Array(count),
      localMonth: new Uint8Array(count),
      localDay: new Uint16Array(count),
      pricePerKwh: empty,
      demand: [],
    },
    levels: [{ hour: 0, depthM, tempC, moistureDb: moistureWb / (1 - moistureWb), blower: { ...usual, ...blower } }],
    endHour: count,
    goal: 'dry',
    targetWb: 0.15,
    targetC: null,
  };
}
