import type { UnitKind } from '../../base/units.ts';
import type { Holds } from '../season.ts';

/** What a column holds: a measured quantity of a kind, or text, number or time without unit. */
export type ColumnKind = UnitKind | null;

export interface Layout {
  /** the keys of `columns` and what they hold */
  keys: Readonly<Record<string, ColumnKind>>;
  /** keys without which a row cannot be placed */
  needs: readonly string[];
  /** at least one of these must be there */
  oneOf: readonly string[];
  /** keys that a constant of the file may replace */
  constants: readonly ('bin' | 'fan' | 'cable' | 'tariff')[];
}

/** The columns of each kind of file, the one list that checks, schema and readers are made from. */
export const LAYOUTS: Readonly<Record<Holds, Layout>> = {
  grain: {
    keys: { time: null, bin: null, cable: null, sensor: null, temperature: 'temperature', moisture: 'moisture' },
    needs: ['time', 'bin', 'cable', 'sensor'],
    oneOf: ['temperature', 'moisture'],
    constants: ['bin', 'cable'],
  },
  fan: {
    keys: {
      time: null,
      fan: null,
      current: 'current',
      power: 'power',
      energy: 'energy',
      state: null,
      run_hours: 'time',
    },
    needs: ['time', 'fan'],
    oneOf: ['current', 'power', 'energy', 'state', 'run_hours'],
    constants: ['fan'],
  },
  plenum: {
    keys: { time: null, bin: null, temperature: 'temperature', humidity: 'fraction', static_pressure: 'pressure' },
    needs: ['time', 'bin'],
    oneOf: ['temperature', 'humidity', 'static_pressure'],
    constants: ['bin'],
  },
  weather: {
    keys: {
      time: null,
      temperature: 'temperature',
      humidity: 'fraction',
      dew_point: 'temperature',
      pressure: 'pressure',
    },
    needs: ['time'],
    oneOf: ['temperature', 'humidity', 'dew_point', 'pressure'],
    constants: [],
  },
  tickets: {
    keys: { time: null, bin: null, direction: null, net: 'weight', moisture: 'moisture' },
    needs: ['time', 'bin', 'direction', 'net'],
    oneOf: [],
    constants: ['bin'],
  },
  probes: {
    keys: {
      time: null,
      bin: null,
      height: 'length',
      from_centre: 'length',
      moisture: 'moisture',
      temperature: 'temperature',
    },
    needs: ['time', 'bin'],
    oneOf: ['moisture', 'temperature'],
    constants: ['bin'],
  },
  bills: {
    keys: { from: null, to: null, tariff: null, energy: 'energy', demand: 'power', amount: 'money' },
    needs: ['from', 'to', 'tariff'],
    oneOf: ['energy', 'demand', 'amount'],
    constants: ['tariff'],
  },
};

export const HOLDS = Object.keys(LAYOUTS) as Holds[];
export const CONSTANTS = ['bin', 'fan', 'cable', 'tariff'] as const;
export const COLUMN_KEYS = [...new Set(Object.values(LAYOUTS).flatMap((layout) => Object.keys(layout.keys)))];
