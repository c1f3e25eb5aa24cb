/** How a column is held: UTC instant (ms), SI number (NaN in memory, null in Arrow for missing), small whole number, repeated text. */
export type ColumnType = 'time' | 'number' | 'integer' | 'flags' | 'text';

export interface ColumnDef {
  name: string;
  type: ColumnType;
  /** SI unit, `1` for fractions; null for text and times */
  unit: string | null;
  description: string;
}

const time = (description: string): ColumnDef => ({ name: 'time', type: 'time', unit: null, description });
const flags = (name: string, of: string): ColumnDef => ({
  name,
  type: 'flags',
  unit: null,
  description: `why ${of} is not believed, bits: 1 stuck, 2 spike, 4 headspace, 8 duplicate, 16 clock, 32 unit; 0 is good`,
});

/**
 * Every table of a loaded season, the one list that files, checks and docs are made from.
 * Times are instants in UTC (interval values: the interval's start).
 */
export const TABLES = {
  readings: [
    time('when the cable was read'),
    { name: 'bin', type: 'text', unit: null, description: 'bin id' },
    { name: 'cable', type: 'text', unit: null, description: 'cable id' },
    { name: 'sensor', type: 'integer', unit: null, description: 'sensor number on its cable, as in season.yaml' },
    { name: 'height_m', type: 'number', unit: 'm', description: 'height of the sensor above the floor' },
    { name: 'temp_c', type: 'number', unit: 'degC', description: 'temperature' },
    { name: 'moisture_wb', type: 'number', unit: '1', description: 'moisture, wet basis' },
    flags('temp_flags', 'the temperature'),
    flags('moisture_flags', 'the moisture'),
    { name: 'file', type: 'text', unit: null, description: 'file the row came from' },
  ],
  fan: [
    time('when the fan was read'),
    { name: 'fan', type: 'text', unit: null, description: 'fan id' },
    { name: 'current_a', type: 'number', unit: 'A', description: 'motor current of a line' },
    { name: 'power_w', type: 'number', unit: 'W', description: 'electric power' },
    { name: 'energy_j', type: 'number', unit: 'J', description: 'running energy meter' },
    { name: 'on', type: 'number', unit: '1', description: 'logged state, 1 on, 0 off' },
    { name: 'run_s', type: 'number', unit: 's', description: 'running meter of run time' },
    flags('flags', 'the row'),
    { name: 'file', type: 'text', unit: null, description: 'file the row came from' },
  ],
  plenum: [
    time('when the plenum was read'),
    { name: 'bin', type: 'text', unit: null, description: 'bin id' },
    { name: 'temp_c', type: 'number', unit: 'degC', description: 'air temperature in the plenum' },
    { name: 'rh', type: 'number', unit: '1', description: 'relative humidity over water in the plenum' },
    {
      name: 'static_pressure_pa',
      type: 'number',
      unit: 'Pa',
      description: 'static pressure in the plenum over the headspace',
    },
    flags('flags', 'the row'),
    { name: 'file', type: 'text', unit: null, description: 'file the row came from' },
  ],
  weather: [
    time('instant of an observation, start of an hour’s mean'),
    { name: 'role', type: 'text', unit: null, description: 'season or history' },
    { name: 'temp_c', type: 'number', unit: 'degC', description: 'outdoor air temperature' },
    { name: 'rh', type: 'number', unit: '1', description: 'outdoor relative humidity over water' },
    { name: 'dew_point_c', type: 'number', unit: 'degC', description: 'outdoor dew point' },
    { name: 'pressure_pa', type: 'number', unit: 'Pa', description: 'station pressure' },
    flags('flags', 'the row'),
    { name: 'file', type: 'text', unit: null, description: 'file the row came from' },
  ],
  tickets: [
    time('when the load was weighed'),
    { name: 'bin', type: 'text', unit: null, description: 'bin id' },
    { name: 'direction', type: 'text', unit: null, description: 'in or out' },
    { name: 'net_kg', type: 'number', unit: 'kg', description: 'net weight' },
    { name: 'moisture_wb', type: 'number', unit: '1', description: 'moisture, wet basis' },
    flags('flags', 'the row'),
    { name: 'file', type: 'text', unit: null, description: 'file the row came from' },
  ],
  probes: [
    time('when the sample was taken'),
    { name: 'bin', type: 'text', unit: null, description: 'bin id' },
    { name: 'height_m', type: 'number', unit: 'm', description: 'height above the floor' },
    { name: 'from_centre_m', type: 'number', unit: 'm', description: 'distance from the centre' },
    { name: 'moisture_wb', type: 'number', unit: '1', description: 'moisture, wet basis' },
    { name: 'temp_c', type: 'number', unit: 'degC', description: 'temperature' },
    flags('flags', 'the row'),
    { name: 'file', type: 'text', unit: null, description: 'file the row came from' },
  ],
  bills: [
    { name: 'from', type: 'time', unit: null, description: 'first moment of the billed time' },
    { name: 'to', type: 'time', unit: null, description: 'first moment after the billed time' },
    { name: 'tariff', type: 'text', unit: null, description: 'tariff id' },
    { name: 'energy_j', type: 'number', unit: 'J', description: 'billed energy' },
    { name: 'demand_w', type: 'number', unit: 'W', description: 'billed demand' },
    { name: 'amount', type: 'number', unit: 'currency', description: 'amount of the bill' },
    { name: 'file', type: 'text', unit: null, description: 'file the row came from' },
  ],
} as const satisfies Record<string, readonly ColumnDef[]>;

export type TableName = keyof typeof TABLES;
