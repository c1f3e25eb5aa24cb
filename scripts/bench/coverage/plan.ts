import type { Kernel } from '../../sample/kernels.ts';
import type { Shape } from './chance.ts';
import type { CropId, NamedCurve } from './grains.ts';

export type Goal = 'dry' | 'cool' | 'condition' | 'hold';
export type Running = 'continuous' | 'nights' | 'humidity' | 'weekly';
export type FanLog = 'power' | 'current' | 'energy' | 'state';

export interface CableDraw {
  id: string;
  fromCentreM: number;
  bearingDeg: number;
  heightsM: number[];
}

export interface HeaterDraw {
  fuel: 'electric' | 'propane' | 'natural gas';
  /** heat into the air, W */
  outputW: number;
  efficiency: number;
  /** as season.yaml states it; null: none */
  price: string | null;
  /** an electric one whose current the fan's log includes */
  onFanLog: boolean;
}

/** An upright piece of the bin that gets its own air. */
export interface ColumnDraw {
  fromM: number;
  toM: number;
  /** of its ring */
  parts: number;
  part: number;
  air: number;
}

/** How the cables' moistures are wrong; points. */
export interface MoistureErrors {
  shape: Shape;
  /** scale of the fixed error, what part of its variance a cable's sensors share */
  fixed: number;
  cablePart: number;
  /** the fixed error sits in the humidity: so it grows where the isotherm is steep and does not quite cancel */
  inHumidity: boolean;
  bias: number;
  noise: number;
  noiseShape: Shape;
  /** random walk: sd after the season, and what part of its variance a cable's sensors share */
  drift: number;
  driftCablePart: number;
  /** limits as season.yaml states them; false: not stated */
  stated: boolean;
}

export interface BinDraw {
  id: string;
  crop: CropId;
  goal: Goal;
  running: Running;
  diameterM: number;
  /** as stated; by how much the levelled depth truly differs; and the dry matter in the bin from what stated depth and test weight say */
  depthM: number;
  depthFactor: number;
  massFactor: number;
  testWeightLb: number;
  columns: ColumnDraw[];
  cables: CableDraw[];
  /** flow per stated bushel (of 1.2445 ft3), cfm */
  cfmPerBu: number;
  /** part of the fan's air that this flow is: 1, less where some escapes between fan and grain */
  throughGrain: number;
  /** stated in season.yaml; null: the crop's usual one */
  statedPacking: number | null;
  grain: Kernel;
  grainCurve: NamedCurve;
  cableCurve: NamedCurve;
  /** named in season.yaml; null: left to the crop's default */
  statedCurve: string | null;
  filledMs: number;
  /** fans may run from here on; filledMs + waiting */
  fanFromMs: number;
  endMs: number;
  /** the grain is said to be unloaded at endMs */
  unloaded: boolean;
  loadsWb: number[];
  tempC: number;
  targetWb: number;
  fan: { id: string; hp: number; kw: number; statedPowerFactor: number; truePowerFactor: number; log: FanLog };
  /** left out: none. It runs whenever the fan does */
  heater?: HeaterDraw;
  /** the power log's own constant factor */
  powerFactorOfLog: number;
  everyMin: number;
  fanEveryMin: number;
  plenum: boolean;
  gaugeFactor: number;
  gaugeOffsetPa: number;
  /** part of the air at a sensor that slips up along the cable */
  slip: number;
  moistureErrors: MoistureErrors;
  /** shares of the grain log and of the fan log that a few holes take away */
  holes: { grain: number; fan: number };
  deadSensors: number;
}

export interface SeasonDraw {
  seed: number;
  startMs: number;
  endMs: number;
  bins: BinDraw[];
  tariff: { day: number; night: number | null; connected: number; demand: number };
}
