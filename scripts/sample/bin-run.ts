import { MINUTE } from './calendar.ts';
import type { Column } from './column-bed.ts';
import type { BinPlan } from './farm-types.ts';
import type { Kernel } from './kernels.ts';

export const FT = 0.3048;
export const STEP_MS = 10 * MINUTE;
export const LAYERS = 64;

export interface FanRun {
  fromMs: number;
  toMs: number;
}

/** A truckload that went in, as it truly was. */
export interface Load {
  atMs: number;
  kg: number;
  moistureWb: number;
}

export interface SensorTrace {
  cable: string;
  /** counted from 1, from the floor up */
  sensor: number;
  heightM: number;
  /** [steps]: temperature at the sensor without any error, C */
  tempC: Float32Array;
  /** [steps]: what the cable's own working gives, before its errors, % wet basis */
  moistureWb: Float32Array;
}

export interface BinRun {
  plan: BinPlan;
  kernel: Kernel;
  startMs: number;
  steps: number;
  sensors: SensorTrace[];
  /** by fan id, exact times */
  runs: Map<string, FanRun[]>;
  loads: Load[];
  /** [steps]: dry-matter-weighted means over all columns and layers; NaN while empty */
  meanMoistureDb: Float64Array;
  meanTempC: Float64Array;
  /** [steps] of the air under the floor, without errors */
  plenumC: Float32Array;
  plenumRh: Float32Array;
  pressurePa: Float32Array;
  /** [steps]: what hangs over the grain */
  headspaceC: Float32Array;
  headspaceRh: Float32Array;
  dryKg: number;
  wetKgFilled: number;
  areaM2: number;
  layerM: number;
  /** kg of water: carried off by air, and lost by the grain by the account of its layers */
  waterByAirKg: number;
  waterLostKg: number;
  columns: Column[];
  /** columns at a moment, for probes: asked for before the run */
  snapshots: Map<number, { moistureDb: Float64Array; tempC: Float64Array }[]>;
  flowM3S: number;
}
