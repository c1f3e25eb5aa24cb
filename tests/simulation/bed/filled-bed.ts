import { humidityRatio } from '../../../src/air/humidity-ratio.ts';
import { type Bed, type BedSpec, newBed } from '../../../src/simulation/bed/bed.ts';
import { cubicAt } from '../../../src/simulation/bed/cubic-table.ts';
import type { Medium } from '../../../src/simulation/bed/medium.ts';
import { mediumOf } from '../../../src/simulation/bed/medium-of.ts';
import { setLevel } from '../../../src/simulation/bed/set-level.ts';

export const SEA_PA = 101_325;

/** A bed of corn (or what `spec` says) filled to the top with grain of one state; moisture wet basis. */
export function filledBed(tempC: number, moistureWb: number, spec: Partial<BedSpec> = {}): Bed {
  const full = { medium: mediumOf('corn', 609), depthM: 5, layers: 20, pressurePa: SEA_PA, ...spec };
  const bed = newBed(full);
  setLevel(bed, full.depthM, tempC, moistureWb / (1 - moistureWb));
  return bed;
}

/** kg/kg of air, for `passAir`. */
export const ratioOf = (tempC: number, rh: number): number => humidityRatio(tempC, rh, SEA_PA);

/** Mean moisture of the first column, wet basis, by dry matter. */
export function meanWb(bed: Bed): number {
  let water = 0;
  let dry = 0;
  for (let i = 0; i < bed.filled; i++) {
    water += bed.dryKgM2[i] * bed.moistureDb[i];
    dry += bed.dryKgM2[i];
  }
  return water / (dry + water);
}

/** Relative humidity of the air in balance with grain, fraction, by the three tables that the loop over layers reads. */
export function grainHumidity({ byTemp, byMoisture, humidity }: Medium, tempC: number, moistureDb: number): number {
  return cubicAt(humidity, cubicAt(byTemp, tempC) * cubicAt(byMoisture, moistureDb));
}
