/** How an invented farm is put together: the facts that the generator works from. Lengths in ft and money in USD, as the farm would say them. */
export interface FanPlan {
  id: string;
  hp: number;
  phases: 1 | 3;
  volts: number;
  /** as season.yaml states it, and as it truly is */
  powerFactor: number;
  truePowerFactor: number;
  /** mean electric power in air of 1.2 kg/m3, kW */
  kw: number;
  /** stated where only the nameplate tells the power */
  nameplate?: { load: number; efficiency: number };
  /** points [inH2O, cfm]; `stated`: season.yaml gives it */
  curve: readonly (readonly [number, number])[];
  curveStated: boolean;
  tariff: string;
  logs: readonly ('current' | 'power' | 'energy' | 'state' | 'run_hours')[];
  runningAboveA?: number;
}

export interface CablePlan {
  id: string;
  fromCentreFt: number;
  bearing: number;
  heightsFt: readonly number[];
  /** state as count, first, spacing instead of heights */
  even?: boolean;
}

/** A ring or part of a ring: `share` of the circle between the radii. */
export interface ColumnPlan {
  id: string;
  fromFt: number;
  toFt: number;
  share: number;
  air: number;
  /** of the wall's south sun; only for columns that touch the wall */
  sun?: number;
}

export type Rule =
  | { kind: 'always' }
  | { kind: 'daytime'; hours: readonly [number, number] }
  | { kind: 'humidity-below'; rh: number }
  | { kind: 'moisture-window'; low: number; high: number }
  /** begins when the coming four days are `dropK` colder (`riseK` < 0: warmer) than the grain; runs on for `hours` of fan */
  | { kind: 'front'; dropK: number; hours: number; restAboveK: number };

export interface Stage {
  from: string;
  to: string;
  rule: Rule;
  fans: readonly string[];
  /** stop for good once the true mean is there */
  untilMoisture?: number;
  /** the truth tells front arrivals of this stage */
  front?: 'cooling' | 'warming';
}

export interface FillStage {
  at: string;
  depthFt: number;
  moisture: number;
  tempC: number;
}

export interface BinPlan {
  id: string;
  name: string;
  crop: 'corn' | 'soybean' | 'wheat';
  diameterFt: number;
  eaveFt: number;
  fills: readonly FillStage[];
  /** how the level sinks as it is emptied */
  emptying: readonly { at: string; depthFt: number }[];
  testWeightLb: number;
  /** true bulk density over the test weight */
  packed: number;
  goal: 'dry' | 'cool' | 'condition' | 'hold';
  targetMoisture: number;
  targetTempF?: number;
  airflowFactor?: number;
  managedAs: string;
  strategy?: string;
  fans: readonly string[];
  cables: readonly CablePlan[];
  columns: readonly ColumnPlan[];
  stages: readonly Stage[];
  loggedFrom: string;
  /** hours between cable readings, minutes past midnight UTC of the first */
  everyHours: number;
  atMinute: number;
  /** tickets of what came in */
  weighedIn: boolean;
  weighedOut: boolean;
  plenum: boolean;
}

export interface EnergyPrice {
  price: number;
  months?: readonly [number, number];
  weekdays?: boolean;
  hours?: readonly [number, number];
}

export interface TariffPlan {
  id: string;
  energy: readonly EnergyPrice[];
  demand?: { price: number; hours: readonly [number, number]; ratchet: number };
  fixed: number;
  connectedPerHpYear?: number;
  minimum?: number;
  /** what else hangs on the meter, kW: a steady part and an afternoon part */
  otherKw: readonly [number, number];
}

/** What a change is said to cost once, as season.yaml words it. */
export interface MeasurePlan {
  measure: string;
  bins?: readonly string[];
  price: number;
}

export interface FarmPlan {
  folder: string;
  title: string;
  seed: number;
  starts: string;
  ends: string;
  /** last moment that is simulated and logged; past `ends` on purpose */
  logsEnd: string;
  bins: readonly BinPlan[];
  fans: readonly FanPlan[];
  tariffs: readonly TariffPlan[];
  measures?: readonly MeasurePlan[];
  history: readonly [number, number] | null;
}
