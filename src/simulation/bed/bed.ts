import { assertRange } from '../../base/errors.ts';
import type { Medium } from './medium.ts';

/** What a bed is made of; `newBed` fills the rest. */
export interface BedSpec {
  medium: Medium;
  /** deepest that the grain ever lies, m, 0.1 to 60 */
  depthM: number;
  /** 2 to 200; 20 to 40 for a farm bin: their number sets how far a front spreads */
  layers: number;
  /** airflow of each column over the bin's mean, and its share of the floor, [columns]; one column when left out */
  airShares?: readonly number[];
  areaShares?: readonly number[];
  /** up: air enters at the floor; down: at the surface */
  air?: 'up' | 'down';
  /** total pressure, Pa, 50000 to 110000 */
  pressurePa: number;
  /** conductance from the grain to the wall, W/K for each m3 of grain; 0: none. See `wallConductanceWM3K` */
  wallWM3K?: number;
}

/**
 * A bed of grain in layers from the floor up, one or more upright columns beside each other, each with its own airflow. Grain and
 * air of a layer have one temperature. Numbers are per m2 of floor. State arrays are [columns x layers], column after column.
 */
export interface Bed {
  readonly medium: Medium;
  readonly layers: number;
  readonly columns: number;
  readonly layerM: number;
  readonly airShares: Float64Array;
  readonly areaShares: Float64Array;
  readonly down: boolean;
  readonly pressurePa: number;
  readonly wallWM3K: number;
  /** layers that hold grain, counted from the floor */
  filled: number;
  /** degC */
  readonly tempC: Float64Array;
  /** fraction of dry matter; what condenses stays here too */
  readonly moistureDb: Float64Array;
  /** share of the allowable storage time used so far */
  readonly lifeUsed: Float64Array;
  /** dry matter of each layer, kg/m2, [layers]; 0 above the level, less than a whole layer's at the level */
  readonly dryKgM2: Float64Array;
  /** leaving air of the last passage, mean of the columns by their air: degC and kg/kg, [2] */
  readonly leaving: Float64Array;
  /** running sums since the bed was made, see `ACCOUNT`; J and kg per m2 of floor */
  readonly account: Float64Array;
  /** for `conduct`: how each layer hangs on the one above, [layers] */
  readonly eased: Float64Array;
}

/** Places in `Bed.account`. Water: kg/m2. Heat: J/m2, counted from dry grain, dry air and liquid water at 0 degC. */
export const ACCOUNT = {
  waterByAir: 0,
  waterByGrain: 1,
  waterBySpoiling: 2,
  heatByAir: 3,
  heatByGrain: 4,
  heatByConduction: 5,
  heatBySpoiling: 6,
} as const;

/** An empty bed. @valid throws RangeError on what no bin has */
export function newBed(spec: BedSpec): Bed {
  const { medium, depthM, layers, air = 'up', pressurePa, wallWM3K = 0 } = spec;
  const airShares = Float64Array.from(spec.airShares ?? [1]);
  const columns = airShares.length;
  const areaShares = Float64Array.from(spec.areaShares ?? new Array(columns).fill(1 / columns));
  assertRange('depthM', depthM, 0.1, 60);
  assertRange('layers', layers, 2, 200);
  assertRange('pressurePa', pressurePa, 50_000, 110_000);
  assertRange('wallWM3K', wallWM3K, 0, 100);
  if (!Number.isInteger(layers)) throw new RangeError(`layers is ${layers}; a whole number is due`);
  if (areaShares.length !== columns) throw new RangeError(`${columns} airShares but ${areaShares.length} areaShares`);
  const area = areaShares.reduce((sum, share) => sum + share, 0);
  const flow = areaShares.reduce((sum, share, i) => sum + share * airShares[i], 0);
  if (!(Math.abs(area - 1) < 1e-9)) throw new RangeError(`areaShares sum to ${area}; 1 is due`);
  if (!(Math.abs(flow - 1) < 1e-6)) throw new RangeError(`airShares by area average ${flow}; 1 is due`);
  return {
    medium,
    layers,
    columns,
    layerM: depthM / layers,
    airShares,
    areaShares,
    down: air === 'down',
    pressurePa,
    wallWM3K,
    filled: 0,
    tempC: new Float64Array(columns * layers),
    moistureDb: new Float64Array(columns * layers),
    lifeUsed: new Float64Array(columns * layers),
    dryKgM2: new Float64Array(layers),
    leaving: new Float64Array(2),
    account: new Float64Array(7),
    eased: new Float64Array(layers),
  };
}

/** First eigenvalue of a cylinder that gives its heat to its wall, squared: 2.405 squared. Carslaw and Jaeger, textbook. */
const CYLINDER = 5.783;

/**
 * Conductance from the mean of a round bin's grain to its wall, for each m3: what the slowest decay of a cylinder gives,
 * so that the mean temperature nears the wall's by exp(-5.783 a t / r^2).
 *
 * @param conductivityWMK  W/(m K)
 * @param radiusM          m
 * @returns                W/(m3 K)
 * @source                 carslaw-jaeger-1959, the first term of the cylinder's series; textbook
 */
export function wallConductanceWM3K(conductivityWMK: number, radiusM: number): number {
  return (CYLINDER * conductivityWMK) / radiusM ** 2;
}
