import type { PerGrain } from '../base/per-grain.ts';
import type { Cable } from '../bin/cable.ts';
import type { Fan } from '../bin/fan.ts';
import type { MoistureSchedule } from '../money/moisture-schedule.ts';
import type { Tariff } from '../money/tariff.ts';

export type Goal = 'dry' | 'cool' | 'condition' | 'hold';

/** From `fromMs` on (UTC) the levelled grain stands `depthM` deep. */
export interface DepthStep {
  fromMs: number;
  depthM: number;
}

export interface BinGrain {
  /** a key of the crop table */
  crop: string;
  /** rising fromMs; the first may be -Infinity (a single stated depth) */
  depthSteps: readonly DepthStep[];
  /** weight of a bushel of 1.2445 ft3 as bulk density, kg/m3, and whether the file said it */
  bulkDensityKgM3: number;
  bulkDensityFrom: 'stated' | 'crop';
  /** stated moistures, wet basis, fractions */
  moistureInWb: number | null;
  moistureOutWb: number | null;
  /** as written, e.g. `modified Henderson D245.5`; null for the crop's default */
  isotherm: string | null;
  targetMoistureWb: number | null;
  targetTempC: number | null;
  /** UTC; a date alone is its first minute, local */
  filledMs: number | null;
  unloadedMs: number | null;
}

export interface Bin {
  id: string;
  name: string;
  diameterM: number;
  eaveHeightM: number | null;
  /** fraction of the floor that lets air through; 1 for a full floor */
  openFloor: number;
  grain: BinGrain;
  goal: Goal;
  air: 'up' | 'down';
  airflowFactor: number;
  airflowFactorFrom: 'stated' | 'crop';
  managedAs: string | null;
  strategy: string | null;
  fanIds: readonly string[];
  cables: readonly Cable[];
}

/** Limits that 95 % of sensors or readings keep; null where not stated. K, and fractions of moisture. */
export interface SensorErrors {
  temperature: { accuracyK: number | null; noiseK: number | null; biasK: number | null };
  moisture: { accuracyWb: number | null; noiseWb: number | null; biasWb: number | null; isotherm: string | null };
}

/** From where on an hour of the fan counts as doing something to the grain; null where not stated. */
export interface UsefulHourLimits {
  /** fraction of moisture, wet basis */
  moistureWb: number | null;
  temperatureK: number | null;
}

export interface GrainPrice {
  /** money per legal bushel */
  pricePerBushel: number;
  baseMoistureWb: number | null;
  /** fraction of weight per point */
  shrinkPerPoint: number | null;
  /** money per bushel and point */
  discountPerBushelPoint: number | null;
  /** as stated under `schedules`; `priceSchedules` has the two above among them */
  schedules?: readonly PriceSchedule[];
}

/** A deduction that rises with moisture, and what the file calls it. */
export interface PriceSchedule {
  name: string | null;
  schedule: MoistureSchedule;
}

export interface DryingAlternative {
  /** money for a point of moisture */
  commercialPerPoint: PerGrain | null;
  highTemperature: {
    /** money per m3 of fuel */
    fuelPricePerM3: number;
    fuelM3PerPoint: PerGrain;
    electricityKwhPerPoint: PerGrain | null;
  } | null;
}

export type Holds = 'grain' | 'fan' | 'plenum' | 'weather' | 'tickets' | 'probes' | 'bills';
export type ArchiveFormat = 'epw' | 'isd-lite' | 'lcd' | 'asos' | 'open-meteo';

/** One column of a file: its header (or header pattern with {cable} and {sensor}) and its unit as written. */
export interface ColumnSpec {
  header: string;
  /** header of the time of day, where date and time stand in two columns */
  clock?: string;
  /** null for text, numbers without unit, and times */
  unit: string | null;
}

export interface FileSpec {
  /** as written in season.yaml */
  pattern: string;
  /** where `path` stands in season.yaml, for messages */
  at: { line: number; column: number };
  /** the files that match, paths from the season folder with `/`, sorted */
  paths: readonly string[];
  holds: Holds;
  /** grain only */
  shape: 'long' | 'wide';
  /** key of the contract (`time`, `bin`, `temperature`, …) to column; null: headers are the keys themselves */
  columns: Readonly<Record<string, ColumnSpec>> | null;
  /** constants in place of a column */
  constants: Readonly<{ bin?: string; fan?: string; cable?: string; tariff?: string }>;
  timeFormat: string | null;
  /** IANA name, `UTC` or `local standard`; null: the site's zone */
  timeZone: string | null;
  delimiter: string | null;
  decimal: '.' | ',' | null;
  format: ArchiveFormat | null;
  role: 'season' | 'history';
}

/** The measures that a year-end report may name; season.yaml may state what one would cost. */
export const MEASURE_KINDS = [
  'other-rule',
  'fans-in-turns',
  'stop-at-target',
  'useful-hours-only',
  'stop-when-through',
] as const;
export type MeasureKind = (typeof MEASURE_KINDS)[number];

/** What putting a measure in would cost, once, as stated. */
export interface StatedMeasure {
  measure: MeasureKind;
  /** null: all bins together */
  binIds: readonly string[] | null;
  price: number;
}

/** season.yaml, checked whole, in SI units and UTC. */
export interface Season {
  title: string;
  /** absolute path of the season folder */
  folder: string;
  /** UTC, inclusive; null where not bounded */
  startsMs: number | null;
  /** UTC, exclusive: the first minute after the local day `ends` */
  endsMs: number | null;
  /** where the first of the two stands in season.yaml, for messages; left out where none does */
  boundsAt?: { line: number; column: number };
  preparedFor: string | null;
  preparedBy: string | null;
  site: {
    latitudeDeg: number | null;
    longitudeDeg: number | null;
    elevationM: number | null;
    timeZone: string;
  };
  showUnits: 'us' | 'si';
  currency: string;
  tariffs: readonly Tariff[];
  prices: Readonly<Record<string, GrainPrice>>;
  dryingAlternative: DryingAlternative | null;
  bins: readonly Bin[];
  fans: readonly Fan[];
  sensors: SensorErrors;
  /** left out: nothing stated */
  usefulHours?: UsefulHourLimits;
  /** left out: nothing stated */
  measures?: readonly StatedMeasure[];
  files: readonly FileSpec[];
}
