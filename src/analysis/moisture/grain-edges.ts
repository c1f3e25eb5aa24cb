import type { Bin } from '../../season/season.ts';
import { fanHoursBetween } from '../fan/spans.ts';
import type { AirLog } from '../fronts/air-log.ts';
import type { FanSpans } from '../types.ts';
import { type Edge, edgeWarmth, STEP_S } from './edge-warmth.ts';
import type { SensorRow } from './sensor-moments.ts';
import type { SensorReadings } from './sensor-readings.ts';
import { stepSeries } from './step-series.ts';

const DAY_MS = 86_400_000;
const STEP_MS = STEP_S * 1000;
/** What the outside did longer ago than this has left the strip beside the wall. */
const MEMORY_DAYS = 180;
/** Steel in the sun is warmer than the air, averaged over day, night and all sides of the bin, by nothing to this much. From memory. */
const WALL_WARMER_K = [0, 4] as const;
/** The same for the air under the roof. From memory. */
const HEADSPACE_WARMER_K = [0, 6] as const;
/** Weather that begins so long after the filling still counts; the grain by the wall is taken as filled until then. */
const LATE_DAYS = 10;
const SAME_DISTANCE_M = 0.01;
/** Daily means of the air outside bins seldom leave these, C: what is left to say where no weather is known. From memory. */
export const ANY_OUTDOOR_C = [-35, 35] as const;

/** What the grain that no sensor sees may do to the bin's mean. */
export interface GrainEdges {
  /** least and most by which each edge may move it, K */
  edges: readonly (readonly [number, number])[];
  /** false: the outdoor temperatures of the time are not known, so the grain may have followed any */
  outdoorKnown: boolean;
}

/**
 * By how much the grain beyond the outermost sensors may move the bin's mean temperature at a moment: rim, surface and
 * floor, each least and most, K.
 *
 * @param rows    sensors that count, with shares
 * @param fromMs  since when the grain lay there; the memory is cut there
 * @param atMs    the moment
 * @param spans   the bin's fans; null where no log tells, then as if they had stood still
 */
export function grainEdges(
  bin: Bin,
  depthM: number,
  rows: readonly SensorRow[],
  sensors: readonly SensorReadings[],
  weather: AirLog,
  spans: FanSpans | null,
  fromMs: number,
  atMs: number,
): GrainEdges {
  const late = weather.timeMs.length > 0 && weather.timeMs[0] - fromMs <= LATE_DAYS * DAY_MS;
  const sinceMs = late ? Math.max(fromMs, weather.timeMs[0]) : fromMs;
  const steps = Math.max(1, Math.round(Math.min(MEMORY_DAYS * DAY_MS, atMs - sinceMs) / STEP_MS));
  const logged = stepSeries(weather.timeMs, weather.tempC, atMs, steps, STEP_MS, DAY_MS);
  const outdoors = logged === null ? ANY_OUTDOOR_C.map((any) => new Float64Array(steps).fill(any)) : [logged];
  const fanShare = Float64Array.from({ length: steps }, (_, i) => {
    const end = atMs - (steps - 1 - i) * STEP_MS;
    return spans === null ? 0 : (fanHoursBetween(spans, end - STEP_MS, end) * 3600) / STEP_S;
  });
  const found: [number, number][] = [];
  for (const { members, ...edge } of edgesOf(bin, depthM, rows)) {
    const innerC = meanSeries(members, sensors, atMs, steps);
    if (innerC === null || !(edge.toM > edge.fromM)) continue;
    const moves = outdoors.flatMap((outdoorC) => edgeWarmth({ ...edge, innerC }, outdoorC, fanShare));
    found.push([Math.min(...moves), Math.max(...moves)]);
  }
  return { edges: found, outdoorKnown: logged !== null };
}

type Members = readonly { row: SensorRow; weight: number }[];

function edgesOf(
  bin: Bin,
  depthM: number,
  rows: readonly SensorRow[],
): (Omit<Edge, 'innerC'> & { members: Members })[] {
  const radiusM = bin.diameterM / 2;
  const outer = Math.min(radiusM, Math.max(...rows.map((row) => row.fromCentreM)));
  const outermost = rows.filter((row) => row.fromCentreM >= outer - SAME_DISTANCE_M);
  const ends = (pick: (own: readonly SensorRow[]) => SensorRow) =>
    [...new Set(rows.map((row) => row.cable))].map((cable) => {
      const row = pick(rows.filter((one) => one.cable === cable));
      return { row, weight: row.cableShare };
    });
  const lowest = ends((own) => own.reduce((a, b) => (b.heightM < a.heightM ? b : a)));
  const highest = ends((own) => own.reduce((a, b) => (b.heightM > a.heightM ? b : a)));
  const mean = (members: Members) => members.reduce((sum, { row, weight }) => sum + weight * row.heightM, 0);
  const rim = { fromM: outer, toM: radiusM, round: true, share: 1 - (outer / radiusM) ** 2 };
  const top = depthM - mean(highest);
  const bottom = mean(lowest);
  return [
    {
      ...rim,
      warmerK: WALL_WARMER_K,
      mayBeShielded: false,
      members: outermost.map((row) => ({ row, weight: row.share })),
    },
    {
      fromM: 0,
      toM: top,
      round: false,
      share: top / depthM,
      warmerK: HEADSPACE_WARMER_K,
      mayBeShielded: false,
      members: highest,
    },
    {
      fromM: 0,
      toM: bottom,
      round: false,
      share: bottom / depthM,
      warmerK: [0, 0],
      mayBeShielded: true,
      members: lowest,
    },
  ];
}

/**
 * Weighted mean of several sensors' daily means, by step. Between readings the grain inside goes straight, however seldom they
 * are: cables read by hand once a week tell of the edges too, and an edge left out would say that it follows nothing.
 */
function meanSeries(
  members: Members,
  sensors: readonly SensorReadings[],
  atMs: number,
  steps: number,
): Float64Array | null {
  const sum = new Float64Array(steps);
  let total = 0;
  for (const { row, weight } of members) {
    const sensor = sensors.find((one) => one.cable === row.cable && one.sensor === row.sensor);
    const series =
      sensor === undefined ? null : stepSeries(sensor.timeMs, sensor.value, atMs, steps, STEP_MS, DAY_MS, 0);
    if (series === null) continue;
    for (let i = 0; i < steps; i++) sum[i] += weight * series[i];
    total += weight;
  }
  return total > 0 ? sum.map((one) => one / total) : null;
}
