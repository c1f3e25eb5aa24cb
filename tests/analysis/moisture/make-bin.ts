import { FAN_OFF, FAN_ON, type FanSpans } from '../../../src/analysis/types.ts';
import type { Cable } from '../../../src/bin/cable.ts';
import type { Bin, BinGrain, Season } from '../../../src/season/season.ts';
import type { SensorSeries } from '../../../src/tables/sensors.ts';
import { plainBin } from '../../support/plain-bin.ts';

export const HOUR = 3_600_000;
export const DAY = 24 * HOUR;
/** 1 October 2024, 00:00 UTC. */
export const T0 = Date.UTC(2024, 9, 1);

export function makeCable(id: string, fromCentreM: number, ...sensorHeightsM: number[]): Cable {
  return { id, fromCentreM, bearingDeg: null, sensorHeightsM };
}

/** A corn bin 10 m wide, 6 m deep, filled at T0, goal dry. */
export function makeBin(
  cables: readonly Cable[],
  grain: Partial<BinGrain> = {},
  rest: Partial<Omit<Bin, 'grain'>> = {},
): Bin {
  return plainBin({ cables, ...rest }, { bulkDensityFrom: 'stated', targetMoistureWb: 0.15, filledMs: T0, ...grain });
}

export function makeSeason(rest: Partial<Season> = {}): Season {
  return {
    title: 'test',
    folder: '/nowhere',
    startsMs: null,
    endsMs: null,
    preparedFor: null,
    preparedBy: null,
    site: { latitudeDeg: null, longitudeDeg: null, elevationM: null, timeZone: 'America/Chicago' },
    showUnits: 'us',
    currency: 'USD',
    tariffs: [],
    prices: {},
    dryingAlternative: null,
    bins: [],
    fans: [],
    sensors: {
      temperature: { accuracyK: null, noiseK: null, biasK: null },
      moisture: { accuracyWb: 0.005, noiseWb: 0.001, biasWb: 0.003, isotherm: null },
    },
    files: [],
    ...rest,
  };
}

/** Spans from [hours, state] pairs that follow each other from T0 on. */
export function makeSpans(...parts: (readonly [hours: number, state: number])[]): FanSpans {
  const ends: number[] = [];
  let at = T0;
  for (const [hours] of parts) {
    at += hours * HOUR;
    ends.push(at);
  }
  return {
    startMs: Float64Array.from([T0, ...ends.slice(0, -1)]),
    endMs: Float64Array.from(ends),
    state: Uint8Array.from(parts, ([, state]) => state),
    powerW: Float64Array.from(parts, ([, state]) => (state === FAN_ON ? 1e4 : state === FAN_OFF ? 0 : Number.NaN)),
  };
}

/** A sensor read every `step` hours from hour `from` to before hour `to` after T0; values by hour. */
export function makeSeries(
  cable: Cable,
  sensor: number,
  from: number,
  to: number,
  moistureWb: (hour: number) => number,
  tempC: (hour: number) => number = () => 10,
  step = 1,
): SensorSeries {
  const hours = Array.from({ length: Math.ceil((to - from) / step) }, (_, i) => from + i * step);
  return {
    bin: 'B1',
    cable: cable.id,
    sensor,
    heightM: cable.sensorHeightsM[sensor - 1],
    timeMs: Float64Array.from(hours, (hour) => T0 + hour * HOUR),
    tempC: Float64Array.from(hours, tempC),
    moistureWb: Float64Array.from(hours, moistureWb),
    tempFlags: new Uint8Array(hours.length),
    moistureFlags: new Uint8Array(hours.length),
    rows: new Int32Array(hours.length),
  };
}
