import { relativeHumidity } from '../../air/humidity.ts';
import { type Estimate, estimate, withheld } from '../../base/estimate.ts';
import type { Bin } from '../../season/season.ts';
import type { AirLog } from '../fronts/air-log.ts';
import { betweenReadings } from '../fronts/between-readings.ts';
import { enteringAir } from '../fronts/entering-air.ts';
import { fanPieces } from '../fronts/fan-pieces.ts';
import { statedWarming } from '../fronts/fan-warming.ts';
import { AIR_GAP_H, HOUR_MS } from '../fronts/front-limits.ts';
import { fillTimes } from '../grain/fill-times.ts';
import type { FanSpans } from '../types.ts';
import type { FillAir } from './comparison.ts';
import { LEAST_KNOWN, meanOver, settledMoistures } from './settled-moisture.ts';

/** The first weeks of running tell what air a bin had while it was fresh. */
export const FILL_DAYS = 21;

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

/**
 * Mean air over the fan-on hours of the first three weeks from the fan's first run on fresh grain, and the moisture it stands for.
 *
 * @param heated  a fan of the bin has a heater: published figures of a fan's warming then tell nothing
 */
export function fillAir(bin: Bin, spans: FanSpans, plenum: AirLog, outdoor: OutdoorLog, heated = false): FillAir {
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
  if (why !== null)
    return { ...base, outdoorC, outdoorRh, equilibriumWb: withheld(why), byIsotherm: [], warmingFrom: null, why };
  const { usualK, rangeK } = statedWarming(bin.goal);
  const entering = enteringAir(pieces, spans, plenum, outdoor.temp, bin.air, usualK);
  if (heated && entering.warmingFrom === 'stated') {
    const untold = 'The heater warms the air by an amount that no plenum reading tells.';
    return {
      ...base,
      outdoorC,
      outdoorRh,
      equilibriumWb: withheld(untold),
      byIsotherm: [],
      warmingFrom: null,
      why: untold,
    };
  }
  const settledBy = (moreK: number) => {
    const warmC = entering.tempC.map((value, i) => value + (entering.fromPlenum[i] === 1 ? 0 : moreK));
    return settledMoistures(bin, pieces, tempC, rh, warmC);
  };
  const settled = settledBy(0);
  const stated = entering.warmingFrom === 'stated' ? rangeK : [];
  return {
    ...base,
    outdoorC,
    outdoorRh,
    equilibriumWb: widened(
      settled.moistureWb,
      stated.map((warmingK) => settledBy(warmingK - usualK).moistureWb.value),
    ),
    byIsotherm: settled.byIsotherm,
    warmingFrom: entering.warmingFrom,
    why: settled.moistureWb.why,
  };
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

export function unknownAir(why: string): FillAir {
  const none = { fromMs: null, toMs: null, fanHours: 0, outdoorC: null, outdoorRh: null, warmingFrom: null };
  return { ...none, equilibriumWb: withheld(why), byIsotherm: [], why };
}
