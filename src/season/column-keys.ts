import type { UnitKind } from '../base/units.ts';
import type { TableName } from '../tables/columns.ts';
import type { Holds } from './season.ts';

/** A measured column of the contract and the table column it fills. */
export interface MeasuredKey {
  key: string;
  /** column of the table */
  column: string;
  /** null: logged state, on or off */
  kind: UnitKind | null;
  /** the unit where the name of the key says it already */
  defaultUnit?: string;
}

export interface HoldsKeys {
  table: TableName;
  /** columns that hold times; the first places the row */
  times: readonly string[];
  /** columns (or constants) that say where the row belongs */
  places: readonly string[];
  measured: readonly MeasuredKey[];
  /** measured columns that must all be there; none: one of `measured` will do */
  required?: readonly string[];
  /** measured columns of which one must be there, where not any one will do */
  oneOf?: readonly string[];
  /** a log written as time went on, whose order in the file tells about its clock */
  ordered: boolean;
  /** a date without a time of day will do */
  dateEnough: boolean;
}

const temperature: MeasuredKey = { key: 'temperature', column: 'temp_c', kind: 'temperature' };
const moisture: MeasuredKey = { key: 'moisture', column: 'moisture_wb', kind: 'moisture' };
const humidity: MeasuredKey = { key: 'humidity', column: 'rh', kind: 'fraction' };
const log = { times: ['time'], ordered: true, dateEnough: false };
const notes = { ordered: false, dateEnough: true };

/** What each kind of file may hold: the left side of `columns` in season.yaml, the one list that checks, schema and readers are made from. */
export const KEYS: Readonly<Record<Holds, HoldsKeys>> = {
  grain: { ...log, table: 'readings', places: ['bin', 'cable', 'sensor'], measured: [temperature, moisture] },
  fan: {
    ...log,
    table: 'fan',
    places: ['fan'],
    measured: [
      { key: 'current', column: 'current_a', kind: 'current' },
      { key: 'power', column: 'power_w', kind: 'power' },
      { key: 'energy', column: 'energy_j', kind: 'energy' },
      { key: 'state', column: 'on', kind: null },
      { key: 'run_hours', column: 'run_s', kind: 'time', defaultUnit: 'h' },
    ],
  },
  plenum: {
    ...log,
    table: 'plenum',
    places: ['bin'],
    measured: [temperature, humidity, { key: 'static_pressure', column: 'static_pressure_pa', kind: 'pressure' }],
  },
  weather: {
    ...log,
    table: 'weather',
    places: [],
    measured: [
      temperature,
      humidity,
      { key: 'dew_point', column: 'dew_point_c', kind: 'temperature' },
      { key: 'pressure', column: 'pressure_pa', kind: 'pressure' },
    ],
  },
  tickets: {
    ...notes,
    table: 'tickets',
    times: ['time'],
    places: ['bin', 'direction'],
    measured: [{ key: 'net', column: 'net_kg', kind: 'weight' }, moisture],
    required: ['net'],
    oneOf: [],
  },
  probes: {
    ...notes,
    table: 'probes',
    times: ['time'],
    places: ['bin'],
    measured: [
      { key: 'height', column: 'height_m', kind: 'length' },
      { key: 'from_centre', column: 'from_centre_m', kind: 'length' },
      moisture,
      temperature,
    ],
    oneOf: ['moisture', 'temperature'],
  },
  bills: {
    ...notes,
    table: 'bills',
    times: ['from', 'to'],
    places: ['tariff'],
    measured: [
      { key: 'energy', column: 'energy_j', kind: 'energy' },
      { key: 'demand', column: 'demand_w', kind: 'power' },
      { key: 'amount', column: 'amount', kind: 'money' },
    ],
  },
};

export const HOLDS = Object.keys(KEYS) as Holds[];

/** Keys of a file's entry that say for every row what a column else would. */
export const CONSTANTS = ['bin', 'fan', 'cable', 'tariff'] as const;
export type Constant = (typeof CONSTANTS)[number];

/** The constants that a kind of file may have. */
export function constantsOf(holds: Holds): Constant[] {
  return CONSTANTS.filter((one) => KEYS[holds].places.includes(one));
}

/** All keys of `columns` that a kind of file may have. */
export function keysOf(holds: Holds): string[] {
  const { times, places, measured } = KEYS[holds];
  return [...times, ...places, ...measured.map((one) => one.key)];
}

/** Every key of `columns`, of whatever file. */
export const COLUMN_KEYS = [...new Set(HOLDS.flatMap(keysOf))];
