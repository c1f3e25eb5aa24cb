import { relativeHumidity } from '../../air/humidity.ts';
import { relativeHumidityWarmed } from '../../air/warm-air.ts';
import { type Estimate, estimate, withheld } from '../../base/estimate.ts';
import { equilibriumMoistureWb } from '../../grain/equilibrium.ts';
import { type Isotherm, isothermOf } from '../../grain/isotherm.ts';
import { equilibriumByIsotherm } from '../../grain/isotherm-spread.ts';
import type { Bin } from '../../season/season.ts';
import type { AirLog } from '../fronts/air-log.ts';
import { betweenReadings } from '../fronts/between-readings.ts';
import { enteringAir, FAN_WARMING_K } from '../fronts/entering-air.ts';
import { type FanPieces, fanPieces } from '../fronts/fan-pieces.ts';
import { AIR_GAP_H, HOUR_MS } from '../fronts/front-limits.ts';
import { fillTimes } from '../grain/fill-times.ts';
import type { FanSpans } from '../types.ts';
import type { FillAir } from './comparison.ts';

/** The first weeks of running tell what air a bin had while it was fresh. */
export const FILL_DAYS = 21;
/** Air known for less than this part of those fan hours is not told. */
const LEAST_KNOWN = 0.8;
/** @source NDSU Extension: 3 to 5 degF of warming by fan and motor */
const STATED_WARMING_K: readonly [number, number] = [3 / 1.8, 5 / 1.8];

/** Outdoor air in good standing, time order; every array is [readings]. */
export interface OutdoorLog {
  temp: AirLog;
  humidity: { timeMs: Float64Array; rh: Float64Array };
}

/**
 * Outdoor air from rows of the weather table; humidity from the dew point where it is not logged itself.
 *
 * @param rows  columns `time`, `temp_c`, `rh`, `dew_point_c` and `flags` of rowsWhere, time order
 */
export function outdoorLog(rows: Readonly<Record<string, Float64Array>>): OutdoorLog {
  const { time, temp_c: temp, rh, dew_point_c: dewPoint, flags } = rows;
  const good = [...time.keys()].filter((row) => !Number.isNaN(temp[row]) && !(flags[row] > 0));
  const humidity = good
    .map((row) => {
      const told = !Number.isNaN(rh[row])
        ? rh[row]
        : Number.isNaN(dewPoint[row])
          ? Number.NaN
          : relativeHumidity(temp[row], dewPoint[row]);
      return { timeMs: time[row], rh: Math.min(1, Math.max(0, told)) };
    })
    .filter((one) => !Number.isNaN(one.rh));
  return {
    temp: { timeMs: Float64Array.from(good, (row) => time[row]), tempC: Float64Array.from(good, (row) => temp[row]) },
    humidity: {
      timeMs: Float64Array.from(humidity, (one) => one.timeMs),
      rh: Float64Array.from(humidity, (one) => one.rh),
    },
  };
}

/** Mean air over the fan-on hours of the first three weeks from the fan's first run on fresh grain, and the moisture it stands for. */
export function fillAir(bin: Bin, spans: FanSpans, plenum: AirLog, outdoor: OutdoorLog): FillAir {
  const from = fillTimes(bin).begunMs ?? Number.NEGATIVE_INFINITY;
  const first = fanPieces(spans, from, Number.POSITIVE_INFINITY).fromMs[0];
  if (first === undefined) return unknownAir('Its fans never ran after the grain came in, as far as is known.');
  const toMs = first + FILL_DAYS * 24 * HOUR_MS;
  const pieces = fanPieces(spans, first, toMs);
  const fanHours = pieces.hours.reduce((sum, hours) => sum + hours, 0);
  const base = { fromMs: first, toMs, fanHours };
  const gapMs = AIR_GAP_H * HOUR_MS;
  const tempC = betweenReadings(outdoor.temp.timeMs, outdoor.temp.tempC, pieces.midMs, gapMs);
  const rh = betweenReadings(outdoor.humidity.timeMs, outdoor.humidity.rh, pieces.midMs, gapMs);
  const outdoorC = meanOver(pieces, tempC);
  const outdoorRh = meanOver(pieces, rh);
  const why =
    outdoorC === null
      ? `The weather is known for less than ${LEAST_KNOWN * 100} % of its fan hours in the first ${FILL_DAYS} days.`
      : outdoorRh === null
        ? `The outdoor humidity is known for less than ${LEAST_KNOWN * 100} % of its fan hours in the first ${FILL_DAYS} days.`
        : null;
  if (why !== null) return { ...base, outdoorC, outdoorRh, equilibriumWb: withheld(why), warmingFrom: null, why };
  const entering = enteringAir(pieces, spans, plenum, outdoor.temp, bin.air);
  const settled = (moreK: number) => {
    const warmC = entering.tempC.map((value, i) => value + (entering.fromPlenum[i] === 1 ? 0 : moreK));
    return settledMoisture(bin, pieces, tempC, rh, warmC);
  };
  const equilibriumWb = settled(0);
  const stated = entering.warmingFrom === 'stated' ? STATED_WARMING_K : [];
  return {
    ...base,
    outdoorC,
    outdoorRh,
    equilibriumWb: widened(
      equilibriumWb,
      stated.map((warmingK) => settled(warmingK - FAN_WARMING_K).value),
    ),
    warmingFrom: entering.warmingFrom,
    why: equilibriumWb.why,
  };
}

/** The mean over fan hours of the moisture at which the crop settles in each hour's air; its interval spans the editions of the isotherm. */
function settledMoisture(
  bin: Bin,
  pieces: FanPieces,
  outdoorC: Float64Array,
  outdoorRh: Float64Array,
  enteringC: Float64Array,
): Estimate {
  let isotherm: Isotherm;
  try {
    isotherm = isothermOf(bin.grain.crop, bin.grain.isotherm ?? undefined);
  } catch (error) {
    return withheld(error instanceof Error ? error.message : String(error));
  }
  const rh = outdoorC.map((temp, i) =>
    Number.isNaN(outdoorRh[i] + enteringC[i])
      ? Number.NaN
      : Math.min(1, relativeHumidityWarmed(temp, outdoorRh[i], enteringC[i] - temp)),
  );
  const moisture = rh.map((each, i) => {
    if (Number.isNaN(each)) return Number.NaN;
    try {
      return equilibriumMoistureWb(isotherm, enteringC[i], each);
    } catch {
      // Beyond the equation's range: the hour says nothing.
      return Number.NaN;
    }
  });
  const value = meanOver(pieces, moisture);
  const tempC = meanOver(pieces, enteringC);
  const meanRh = meanOver(pieces, rh);
  if (value === null || tempC === null || meanRh === null)
    return withheld(
      `The air is outside what the isotherm covers in too many of the first ${FILL_DAYS} days' fan hours.`,
    );
  const answers = equilibriumByIsotherm(bin.grain.crop, tempC, meanRh);
  const own = answers.find((one) => one.isotherm.name === isotherm.name)?.moistureWb ?? null;
  const off = answers.flatMap(({ moistureWb }) => (moistureWb === null || own === null ? [] : [moistureWb - own]));
  return estimate(value, value + Math.min(0, ...off), value + Math.max(0, ...off));
}

/** Ends widened as squares by what the number would be otherwise. */
function widened(of: Estimate, others: readonly (number | null)[]): Estimate {
  if (of.value === null || of.interval === null) return of;
  const value = of.value;
  const off = others.map((other) => (other === null ? 0 : other - value));
  return estimate(
    value,
    value - Math.hypot(value - of.interval[0], Math.min(0, ...off)),
    value + Math.hypot(of.interval[1] - value, Math.max(0, ...off)),
  );
}

/** Mean by fan hours, of those in which the value is known; null where these are too few. */
function meanOver(pieces: FanPieces, values: Float64Array): number | null {
  let sum = 0;
  let known = 0;
  let all = 0;
  pieces.hours.forEach((hours, i) => {
    all += hours;
    if (Number.isNaN(values[i])) return;
    known += hours;
    sum += hours * values[i];
  });
  return known > 0 && known >= LEAST_KNOWN * all ? sum / known : null;
}

export function unknownAir(why: string): FillAir {
  const none = { fromMs: null, toMs: null, fanHours: 0, outdoorC: null, outdoorRh: null, warmingFrom: null };
  return { ...none, equilibriumWb: withheld(why), why };
}
