import type { SeasonTables } from '../../../src/season/loaded.ts';
import type { Season } from '../../../src/season/season.ts';
import { type RawColumn, toArrow } from '../../../src/tables/arrow.ts';
import { TABLES, type TableName } from '../../../src/tables/columns.ts';
import { binOf, fanOf, fileOf, seasonOf } from '../readers/season-of.ts';
import type { Made, Options } from './made-bin.ts';

const HEIGHT_STEP_M = 0.9;

export function heightOf(sensor: number): number {
  return 0.6 + HEIGHT_STEP_M * sensor;
}

/** A season of one bin B1 with fan F1, as season.yaml would state it. */
export function madeSeason(options: Options, given: { unit?: string; airUp?: boolean } = {}): Season {
  const column = (header: string, unit: string | null) => ({ header, unit });
  const columns = { time: column('t', null), temperature: column('T', given.unit ?? 'degF') };
  const cables = Array.from({ length: options.cables }, (_, c) => ({
    id: `C${c + 1}`,
    fromCentreM: c,
    bearingDeg: null,
    sensorHeightsM: Array.from({ length: options.sensors }, (_, k) => heightOf(k)),
  }));
  return seasonOf('/none', [fileOf('grain', 'cables.csv', { columns })], {
    site: { latitudeDeg: null, longitudeDeg: null, elevationM: null, timeZone: 'UTC' },
    tariffs: [],
    bins: [
      {
        ...binOf('B1', cables, heightOf(options.sensors)),
        eaveHeightM: null,
        air: given.airUp === false ? 'down' : 'up',
      },
    ],
    fans: [{ ...fanOf('F1'), nameplateW: 7457, supply: { phases: 3, volts: 230, powerFactor: 0.85 }, tariffId: null }],
  });
}

/** A table of that name; columns left out are missing values, zero flags, one file. */
export function table(name: TableName, rows: number, columns: Record<string, RawColumn>) {
  const all: Record<string, RawColumn> = {};
  for (const { name: column, type } of TABLES[name]) {
    all[column] =
      columns[column] ??
      (type === 'text'
        ? { codes: new Int32Array(rows), values: [`${name}.csv`] }
        : type === 'flags'
          ? new Uint8Array(rows)
          : type === 'integer'
            ? new Int16Array(rows)
            : new Float64Array(rows).fill(Number.NaN));
  }
  return toArrow(name, all);
}

export const text = (rows: number, value: string) => ({ codes: new Int32Array(rows), values: [value] });

/** Tables of a made bin. Row of sensor n (cable * sensors + sensor), reading i: n * readings + i. */
export function tablesOf(
  made: Made,
  extra: Partial<SeasonTables> = {},
  readings: Record<string, RawColumn> = {},
): SeasonTables {
  const { options, timeMs, airMs } = made;
  const n = timeMs.length;
  const rows = n * made.temp.length;
  const repeat = (of: (sensor: number, i: number) => number) =>
    Float64Array.from({ length: rows }, (_, row) => of(Math.floor(row / n), row % n));
  const empty = (name: TableName) => table(name, 0, {});
  return {
    readings: table('readings', rows, {
      time: repeat((_, i) => timeMs[i]),
      bin: text(rows, 'B1'),
      cable: {
        codes: Int32Array.from({ length: rows }, (_, row) => Math.floor(row / n / options.sensors)),
        values: Array.from({ length: options.cables }, (_, c) => `C${c + 1}`),
      },
      sensor: Int16Array.from({ length: rows }, (_, row) => (Math.floor(row / n) % options.sensors) + 1),
      height_m: repeat((sensor) => heightOf(sensor % options.sensors)),
      temp_c: repeat((sensor, i) => made.temp[sensor][i]),
      moisture_wb: repeat((sensor, i) => made.moisture[sensor][i]),
      file: text(rows, 'cables.csv'),
      ...readings,
    }),
    fan: options.fanLog
      ? table('fan', airMs.length, {
          time: airMs,
          fan: text(airMs.length, 'F1'),
          current_a: Float64Array.from(made.fanOn, (on) => (on ? 20 : 0.1)),
        })
      : empty('fan'),
    plenum: empty('plenum'),
    weather: table('weather', airMs.length, {
      time: airMs,
      role: text(airMs.length, 'season'),
      temp_c: made.airC,
      rh: made.airRh,
    }),
    tickets: empty('tickets'),
    probes: empty('probes'),
    bills: empty('bills'),
    ...extra,
  };
}
