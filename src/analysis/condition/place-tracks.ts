import type { Bin } from '../../season/season.ts';
import type { SensorSeries } from '../../tables/sensors.ts';
import { betweenReadings } from '../fronts/between-readings.ts';
import { grainDepthAt } from '../fronts/grain-depth.ts';
import { AIR_STILL, believedReadings, type SensorReadings } from '../moisture/sensor-readings.ts';
import type { FanSpans } from '../types.ts';
import type { SensorPlace } from './condition-types.ts';
import { STEP_MS, STEPS_A_DAY, type StepGrid, stepMeans, stepMiddles } from './step-grid.ts';

/** A place of the grain through its stay; every array is [steps], NaN outside the stay. */
export interface PlaceTrack extends SensorPlace {
  /** the first step in the grain, and the one after the last */
  from: number;
  to: number;
  /** C; straight over holes, the nearest reading before the first and after the last */
  tempC: Float64Array;
  /** 1 where readings stand near enough to tell the step */
  seen: Uint8Array;
  /** what a hole leaves open: the colder and the warmer of the readings beside it; before the first and after the last the outdoor air too */
  lowC: Float64Array;
  highC: Float64Array;
  /** days of the stay before the first reading and after the last; 0 where readings stand near enough */
  unread: { before: number; after: number };
  /** fraction, wet basis; NaN where no moisture of this place is known */
  moistureWb: Float64Array;
}

/** Readings this far apart still tell the time between them: grain moves slowly. */
const NEAR_MS = 2 * 86_400_000;
/** A reading in moving air counts only where none in still air stands this near. */
const STILL_NEAR_MS = 5 * 86_400_000;

/** Temperatures and moistures of a bin's places while grain lay around them, by steps. Sensors without a believed temperature in the grain are left out. @param outdoorC  [steps], NaN where not known */
export function placeTracks(
  bin: Bin,
  series: readonly SensorSeries[],
  spans: FanSpans | null,
  grid: StepGrid,
  outdoorC: Float64Array | null = null,
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
    const track = temperatureTrack(readings, grid, from, to, outdoorC);
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

function temperatureTrack(
  readings: SensorReadings,
  grid: StepGrid,
  from: number,
  to: number,
  outdoorC: Float64Array | null,
) {
  const means = stepMeans(readings.timeMs, readings.value, grid);
  const known: number[] = [];
  for (let i = from; i < to; i++) if (!Number.isNaN(means[i])) known.push(i);
  if (known.length === 0) return null;
  const none = () => new Float64Array(grid.count).fill(Number.NaN);
  const tempC = none();
  const lowC = none();
  const highC = none();
  const seen = new Uint8Array(grid.count);
  const near = NEAR_MS / STEP_MS;
  let next = 0;
  for (let i = from; i < to; i++) {
    while (next < known.length && known[next] < i) next++;
    const after = known[Math.min(next, known.length - 1)];
    const before = after === i ? i : known[Math.max(0, next - 1)];
    const gap = after - before;
    const part = gap > 0 ? Math.min(1, Math.max(0, (i - before) / gap)) : 0;
    tempC[i] = means[before] + part * (means[after] - means[before]);
    const outside = i < known[0] || i > known[known.length - 1];
    seen[i] = outside ? Number(Math.min(Math.abs(i - before), Math.abs(i - after)) <= near) : Number(gap <= near);
    lowC[i] = seen[i] === 1 ? tempC[i] : Math.min(means[before], means[after]);
    highC[i] = seen[i] === 1 ? tempC[i] : Math.max(means[before], means[after]);
  }
  const first = known[0];
  const last = known[known.length - 1];
  reachOutdoors(from, first - near);
  reachOutdoors(last + near + 1, to);
  const days = (steps: number) => (steps > near ? steps / STEPS_A_DAY : 0);
  return { tempC, lowC, highC, seen, unread: { before: days(first - from), after: days(to - 1 - last) } };

  // Grain comes in about as warm as the air outdoors, and drifts towards it unwatched.
  function reachOutdoors(start: number, end: number): void {
    for (let i = start; i < end; i++) {
      const air = outdoorC?.[i] ?? Number.NaN;
      if (Number.isNaN(air)) continue;
      lowC[i] = Math.min(lowC[i], air);
      highC[i] = Math.max(highC[i], air);
    }
  }
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
