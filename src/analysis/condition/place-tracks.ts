import type { Bin } from '../../season/season.ts';
import type { SensorSeries } from '../../tables/sensors.ts';
import { betweenReadings } from '../fronts/between-readings.ts';
import { grainDepthAt } from '../fronts/grain-depth.ts';
import { AIR_STILL, believedReadings, type SensorReadings } from '../moisture/sensor-readings.ts';
import type { FanSpans } from '../types.ts';
import type { SensorPlace } from './condition-types.ts';
import type { GapAir } from './gap-reach.ts';
import { edgesOf } from './place-edges.ts';
import { STEP_MS, type StepGrid, stepMiddles } from './step-grid.ts';
import { temperatureTrack } from './temperature-track.ts';

/** A place of the grain through its stay; every array is [steps], NaN outside the stay. */
export interface PlaceTrack extends SensorPlace {
  /** the first step in the grain, and the one after the last */
  from: number;
  to: number;
  /** C; straight over holes, the nearest reading before the first and after the last */
  tempC: Float64Array;
  /** 1 where a reading stands in the step */
  read: Uint8Array;
  /** 1 where readings stand near enough to tell the step */
  seen: Uint8Array;
  /** 1 where the readings beside a hole are near enough to bound the step: those taken by hand once a week */
  carried: Uint8Array;
  /** what a hole leaves open: the colder and the warmer of the readings beside it, and what air and edge may have done; before the first and after the last the outdoor air too */
  lowC: Float64Array;
  highC: Float64Array;
  /** days of the stay before the first reading and after the last; 0 where readings stand near enough */
  unread: { before: number; after: number };
  /** fraction, wet basis; NaN where no moisture of this place is known */
  moistureWb: Float64Array;
}

/** A reading in moving air counts only where none in still air stands this near. */
const STILL_NEAR_MS = 5 * 86_400_000;

/** Temperatures and moistures of a bin's places while grain lay around them, by steps. Sensors without a believed temperature in the grain are left out. @param air  what may have reached the grain between two readings */
export function placeTracks(
  bin: Bin,
  series: readonly SensorSeries[],
  spans: FanSpans | null,
  grid: StepGrid,
  air: GapAir | null = null,
): PlaceTrack[] {
  const toMs = grid.startMs + grid.count * STEP_MS;
  const read = (what: 'temperature' | 'moisture') => believedReadings(bin, series, what, spans, grid.startMs, toMs);
  const moistures = read('moisture');
  const middles = stepMiddles(grid);
  const depths = Float64Array.from(middles, (ms) => grainDepthAt(bin, ms) ?? Number.NaN);
  return read('temperature').flatMap((readings) => {
    const { cable, sensor } = readings;
    const heightM = heightOf(bin, cable, sensor);
    const [from, to] = stayOf(depths, heightM);
    const track = temperatureTrack(readings, grid, [from, to], air, edgesOf(bin, { cable, sensor, heightM }).toEdgeM);
    if (track === null) return [];
    const own = moistures.find((one) => one.cable === cable && one.sensor === sensor);
    const moistureWb = own === undefined ? new Float64Array(grid.count).fill(Number.NaN) : moistureTrack(own, middles);
    return [{ cable, sensor, heightM, from, to, ...track, moistureWb }];
  });
}

function heightOf(bin: Bin, cable: string, sensor: number): number {
  return bin.cables.find((one) => one.id === cable)!.sensorHeightsM[sensor - 1];
}

/** The longest stretch of steps in which a height lay in the grain. A depth that nobody states covers every sensor. */
function stayOf(depths: Float64Array, heightM: number): [from: number, to: number] {
  let best: [number, number] = [0, 0];
  let from = -1;
  for (let i = 0; i <= depths.length; i++) {
    const within = i < depths.length && !(depths[i] <= heightM);
    if (within && from < 0) from = i;
    if (within || from < 0) continue;
    if (i - from > best[1] - best[0]) best = [from, i];
    from = -1;
  }
  return best;
}

/** A place's moisture at the steps: between readings in still air, and others where none stands near; the nearest beyond the first and the last. */
function moistureTrack({ timeMs, value, air }: SensorReadings, middles: Float64Array): Float64Array {
  const still = [...timeMs.keys()].filter((i) => air[i] === AIR_STILL);
  let at = 0;
  const kept = [...timeMs.keys()].filter((i) => {
    if (air[i] === AIR_STILL) return true;
    while (at < still.length && timeMs[still[at]] < timeMs[i]) at++;
    const after = at < still.length ? timeMs[still[at]] - timeMs[i] : Number.POSITIVE_INFINITY;
    const before = at > 0 ? timeMs[i] - timeMs[still[at - 1]] : Number.POSITIVE_INFINITY;
    return Math.min(after, before) > STILL_NEAR_MS;
  });
  const times = Float64Array.from(kept, (i) => timeMs[i]);
  const values = Float64Array.from(kept, (i) => value[i]);
  const held = middles.map((ms) => Math.min(times[times.length - 1], Math.max(times[0], ms)));
  return betweenReadings(times, values, held, Number.MAX_VALUE);
}
