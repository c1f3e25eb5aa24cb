import { humidityRatio } from '../../air/humidity-ratio.ts';
import { specificVolumeM3Kg } from '../../air/volume.ts';
import { velocityOfCfmPerBushel } from '../../bin/specific-airflow.ts';
import { standardBulkDensityKgM3 } from '../../grain/bulk.ts';
import { type Bed, newBed } from '../../simulation/bed/bed.ts';
import { type MediumOptions, mediumOf } from '../../simulation/bed/medium-of.ts';
import { passAir } from '../../simulation/bed/pass-air.ts';
import { setLevel } from '../../simulation/bed/set-level.ts';
import { celsius, FT_M } from './printed-units.ts';

export const SEA_PA = 101_325;
/** A usual fill; at one airflow for each bushel the depth hardly moves a time. */
const DEPTH_M = 18 * FT_M;
const LAYERS = 20;
/** Moisture at which a crop's legal bushel is weighed, wet basis. Common practice. */
const BUSHEL_WB: Readonly<Record<string, number>> = { corn: 0.155, soybean: 0.13, wheat: 0.135 };

/** Grain of one state, and air of one state that is blown through it. */
export interface DryingCase {
  crop: string;
  cfmPerBu: number;
  /** of the grain as filled, fraction, wet basis */
  moistureWb: number;
  /** outdoor air, and what fan and heater add */
  airF: number;
  rh: number;
  riseF: number;
  /** of the grain as filled, degF; outdoor air's when left out */
  grainF?: number;
}

/** The air of a case: degC, kg/kg, and dry air of an hour, kg for each m2 of floor. */
export function airOf({ cfmPerBu, airF, rh, riseF }: DryingCase): { tempC: number; ratio: number; kgM2: number } {
  const tempC = celsius(airF + riseF);
  const ratio = humidityRatio(celsius(airF), rh, SEA_PA);
  const velocity = velocityOfCfmPerBushel(cfmPerBu, DEPTH_M);
  return { tempC, ratio, kgM2: (3600 * velocity) / specificVolumeM3Kg(tempC, ratio, SEA_PA) };
}

/** Dry matter of the case's grain, kg for each m2 of floor. */
export const dryKgM2Of = (crop: string): number => DEPTH_M * dryDensityOf(crop);

function dryDensityOf(crop: string): number {
  return standardBulkDensityKgM3(crop) * (1 - (BUSHEL_WB[crop] ?? 0.14));
}

/** A case's grain in a bed. */
export function bedOf(
  { crop, moistureWb, airF, grainF = airF }: DryingCase,
  options: MediumOptions,
  layers = LAYERS,
): Bed {
  const medium = mediumOf(crop, dryDensityOf(crop), options);
  const bed = newBed({ medium, depthM: DEPTH_M, layers, pressurePa: SEA_PA });
  setLevel(bed, DEPTH_M, celsius(grainF), moistureWb / (1 - moistureWb));
  return bed;
}

/**
 * Blow a case's air through its bed hour by hour.
 *
 * @param until  looked at after each hour
 * @returns      hours; null where it did not come in `mostHours`
 */
export function blowUntil(
  bed: Bed,
  drying: DryingCase,
  mostHours: number,
  until: (bed: Bed) => boolean,
): number | null {
  const { tempC, ratio, kgM2 } = airOf(drying);
  for (let hour = 1; hour <= mostHours; hour++) {
    passAir(bed, kgM2, 3600, tempC, ratio);
    if (until(bed)) return hour;
  }
  return null;
}

/** Moisture of the layer at the surface, fraction, wet basis. */
export function topWb({ moistureDb, layers }: Bed): number {
  const db = moistureDb[layers - 1];
  return db / (1 + db);
}

/** Mean moisture, wet basis; all layers are whole. */
export function bedWb({ moistureDb, layers }: Bed): number {
  const db = moistureDb.reduce((sum, one) => sum + one, 0) / layers;
  return db / (1 + db);
}
