import { binCondition, type ConditionInput } from '../../../src/analysis/condition/bin-condition.ts';
import { pushSpan, spanList, toFanSpans } from '../../../src/analysis/fan/spans.ts';
import { FAN_OFF, FAN_ON } from '../../../src/analysis/types.ts';
import type { Season } from '../../../src/season/season.ts';
import type { SensorSeries } from '../../../src/tables/sensors.ts';
import { plainBin, stoodAt } from '../../support/plain-bin.ts';

export const HOUR = 3_600_000;
export const DAY = 24 * HOUR;
/** Midnight of 1 October 2024 in Chicago, five hours behind UTC. */
export const START = Date.UTC(2024, 9, 1, 5);
export const fromF = (tempF: number) => (tempF - 32) / 1.8;

/** What a test makes of a bin: one cable 2 m from the centre of a bin 10 m wide and 6 m deep, read every 6 hours. */
export interface Kept {
  days: number;
  crop?: string;
  heightsM?: readonly number[];
  /** at a height, so many days after 1 October; null: no reading */
  tempC: (heightM: number, day: number) => number | null;
  moistureWb?: (heightM: number, day: number) => number | null;
  fanOn?: (day: number) => boolean;
  fan?: false;
  /** false: a second fan of the bin has no log */
  fansTold?: boolean;
  outdoorC?: (day: number) => number;
  weather?: false;
  air?: 'up' | 'down';
  moisture?: { start: number | null; end: number | null };
  fromCentreM?: number;
  goal?: 'dry' | 'cool';
  /** levelled depths by day; 6 m throughout when left out */
  depths?: readonly { day: number; depthM: number }[];
  /** nobody says when it was filled */
  filled?: false;
  /** a bin that has no fan at all */
  noFan?: true;
  /** a heater before the fan */
  heater?: true;
}

export function keptInput(made: Kept): ConditionInput {
  const { days, crop = 'corn', heightsM = [1, 3, 5], fromCentreM = 2 } = made;
  const depthSteps = made.depths?.map(({ day, depthM }) => ({ fromMs: START + day * DAY, depthM })) ?? stoodAt(6);
  const bin = plainBin(
    {
      air: made.air ?? 'up',
      goal: made.goal ?? 'dry',
      ...(made.noFan ? { fanIds: [] } : {}),
      cables: [{ id: 'C1', fromCentreM, bearingDeg: null, sensorHeightsM: heightsM }],
    },
    { crop, depthSteps, filledMs: made.filled === false ? null : START, unloadedMs: START + days * DAY },
  );
  const times = Array.from({ length: days * 4 }, (_, i) => START + (i + 0.5) * 6 * HOUR);
  const at = (ms: number) => (ms - START) / DAY;
  const series = heightsM.map((heightM, i): SensorSeries => {
    const values = (of: ((heightM: number, day: number) => number | null) | undefined) =>
      Float64Array.from(times, (ms) => of?.(heightM, at(ms)) ?? Number.NaN);
    return {
      bin: 'B1',
      cable: 'C1',
      sensor: i + 1,
      heightM,
      timeMs: Float64Array.from(times),
      tempC: values(made.tempC),
      moistureWb: values(made.moistureWb),
      tempFlags: new Uint8Array(times.length),
      moistureFlags: new Uint8Array(times.length),
      rows: Int32Array.from(times.keys()),
    };
  });
  const list = spanList();
  for (let d = 0; d < days; d++) {
    const on = made.fanOn?.(d) ?? false;
    pushSpan(list, START + d * DAY, START + (d + 1) * DAY, on ? FAN_ON : FAN_OFF, on ? 5000 : 0);
  }
  const hours = made.weather === false ? 0 : (days + 40) * 24;
  const weatherMs = Float64Array.from({ length: hours }, (_, h) => START - 40 * DAY + h * HOUR);
  const weatherC = Float64Array.from(weatherMs, (ms) => made.outdoorC?.(at(ms)) ?? 5);
  const moment = (value: number | null) => ({
    value,
    window: null,
    stillAir: true,
    readings: 1,
    sensors: 1,
    fanOn: null,
  });
  const { start = null, end = null } = made.moisture ?? {};
  return {
    bin,
    season: {
      fans: [{ id: bin.fanIds[0], heater: made.heater ? {} : null }],
      site: { timeZone: 'America/Chicago', elevationM: 0 },
      sensors: {
        temperature: { accuracyK: null, noiseK: null, biasK: null },
        moisture: { accuracyWb: null, noiseWb: null, biasWb: null, isotherm: null },
      },
    } as unknown as Season,
    series,
    fansTold: made.fansTold ?? true,
    spans: made.fan === false || made.noFan ? null : toFanSpans(list),
    moisture: {
      daily: [],
      shares: [],
      start: moment(start),
      end: moment(end),
    } as unknown as ConditionInput['moisture'],
    temperature: { start: moment(null), end: moment(null), why: null },
    weather: {
      rows: { time: weatherMs, temp_c: weatherC, pressure_pa: new Float64Array(hours).fill(101_325) },
      temperatures: { timeMs: weatherMs, tempC: weatherC },
    },
  };
}

export const kept = (made: Kept) => binCondition(keptInput(made));
