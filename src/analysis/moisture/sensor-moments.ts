import { type PlacedSensor, sensorShares } from '../../bin/shares.ts';
import type { Bin } from '../../season/season.ts';
import type { FillTimes } from '../grain/fill-times.ts';
import type { FanSpans } from '../types.ts';
import { likelyHours, type MomentName, type MomentWindow, momentWindow } from './moment-window.ts';
import { type SensorMean, sensorMean } from './sensor-mean.ts';
import type { SensorReadings } from './sensor-readings.ts';

/** A sensor that counts, with its share and its two means. */
export interface SensorRow extends PlacedSensor {
  start: SensorMean;
  end: SensorMean;
}

/** The start and the end of a bin as its sensors saw them. */
export interface SensorMoments {
  start: MomentWindow | null;
  end: MomentWindow | null;
  /** a sentence where the moment cannot be told from sensors */
  startWhy: string | null;
  endWhy: string | null;
  /** sensors read at both moments, else at the one that can be told; shares sum to 1 */
  rows: readonly SensorRow[];
  /** sensors in the grain that have any believed reading, and how many of them are not among the rows */
  seen: number;
  leftOut: number;
  /** share of the grain, by the whole layout in the grain, that the rows' sensors stand for themselves */
  coverage: number;
  /** fan hours between the two days, as known or likely; NaN without a fan log */
  fanHoursBetween: number;
}

export interface MomentLimits {
  /** still air is preferred only within this many fan hours of the moment */
  stillWithinFanHours: number;
  /** readings of a day of still air that lie on the other side of more fan hours than these are left out; null: the day stands whole */
  oneStateFanHours: number | null;
  /** the readings come too late or end too soon: a reason in words, or null */
  tooFar(moment: MomentName, window: MomentWindow, seasonFanHours: number): string | null;
}

/** Sensors that themselves stand for less of the grain than this do not make the bin's mean. */
const LEAST_COVERAGE = 1 / 3;

/**
 * Find the two days, and the sensors that were read on both.
 *
 * @param sensors  believed readings while the bin was full
 * @param logged   false: the cables never told any
 */
export function sensorMoments(
  bin: Bin,
  fill: FillTimes,
  sensors: readonly SensorReadings[],
  spans: FanSpans | null,
  limits: MomentLimits,
  what: string,
  logged = true,
): SensorMoments {
  const none = (why: string, seen = 0): SensorMoments => ({
    start: null,
    end: null,
    startWhy: why,
    endWhy: why,
    rows: [],
    seen,
    leftOut: seen,
    coverage: 0,
    fanHoursBetween: Number.NaN,
  });
  if (fill.depthM === null)
    return none(`No depth of the grain in ${bin.name} is stated, so its sensors have no weights.`);
  const depthM = fill.depthM;
  const sharesOf = (use: (cable: string, sensor: number) => boolean) =>
    sensorShares(bin.diameterM, depthM, bin.cables, use);
  const layout = sharesOf(() => true);
  const known = sharesOf((cable, sensor) => sensors.some((one) => one.cable === cable && one.sensor === sensor));
  const seen = sensors.filter((one) => findPlace(known, one) !== undefined);
  if (!logged) return none(`The cables of ${bin.name} log no ${what}.`);
  if (seen.length === 0)
    return none(`No sensor in the grain of ${bin.name} gave a believable ${what} while the bin was full.`);
  const fromMs = fill.filledMs ?? Math.min(...seen.map((one) => one.timeMs[0]));
  const toMs = fill.wholeUntilMs ?? Math.max(...seen.map((one) => one.timeMs[one.timeMs.length - 1])) + 1;
  const window = (moment: MomentName) => momentWindow(moment, seen, fromMs, toMs, spans, limits)!;
  const start = window('start');
  const end = window('end');
  if (end.span.fromMs < start.span.toMs) {
    return none(
      `The ${what} readings of ${bin.name} span less than two days, too little to tell a start from an end.`,
      seen.length,
    );
  }
  const seasonFanHours = spans === null ? Number.NaN : likelyHours(spans, fromMs, toMs);
  let startWhy = limits.tooFar('start', start, seasonFanHours);
  let endWhy = limits.tooFar('end', end, seasonFanHours);
  const means = seen.map((sensor) => ({
    sensor,
    start: sensorMean(sensor, start.span, start.stillAir),
    end: sensorMean(sensor, end.span, end.stillAir),
  }));
  const counted = means.filter(
    (one) => (startWhy !== null || one.start.readings > 0) && (endWhy !== null || one.end.readings > 0),
  );
  const used = sharesOf((cable, sensor) =>
    counted.some((one) => one.sensor.cable === cable && one.sensor.sensor === sensor),
  );
  const coverage = used.reduce((sum, one) => sum + findPlace(layout, one)!.share, 0);
  if (coverage < LEAST_COVERAGE) {
    const why = `The sensors of ${bin.name} with a believable ${what} at both the start and the end stand for only ${Math.round(100 * coverage)} % of the grain.`;
    startWhy ??= why;
    endWhy ??= why;
  }
  const rows = used.map((place) => {
    const { start: atStart, end: atEnd } = counted.find((one) => findPlace([place], one.sensor) !== undefined)!;
    return { ...place, start: atStart, end: atEnd };
  });
  return {
    start: startWhy === null ? start : null,
    end: endWhy === null ? end : null,
    startWhy,
    endWhy,
    rows,
    seen: seen.length,
    leftOut: seen.length - rows.length,
    coverage,
    fanHoursBetween: spans === null ? Number.NaN : likelyHours(spans, start.span.toMs, end.span.fromMs),
  };
}

function findPlace(
  places: readonly PlacedSensor[],
  sensor: { cable: string; sensor: number },
): PlacedSensor | undefined {
  return places.find((one) => one.cable === sensor.cable && one.sensor === sensor.sensor);
}
