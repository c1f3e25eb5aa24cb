import type { SensorReadings } from '../moisture/sensor-readings.ts';
import { type GapAir, gapReach } from './gap-reach.ts';
import type { PlaceTrack } from './place-tracks.ts';
import { STEPS_A_DAY, type StepGrid, stepMeans } from './step-grid.ts';

/** Readings this far apart still tell the time between them: grain moves slowly. */
const NEAR = 2 * STEPS_A_DAY;
/** Readings so far apart bound the time between them: taken by hand once a week, one week missed. */
const CARRIED = 15 * STEPS_A_DAY;

type TemperatureTrack = Pick<PlaceTrack, 'tempC' | 'lowC' | 'highC' | 'read' | 'seen' | 'carried' | 'unread'>;

/**
 * A place's temperature through its stay.
 *
 * @param stay     first step and the one after the last
 * @param air      what may have reached the place in holes; null: not known
 * @param toEdgeM  to the nearest of surface, floor and wall, m
 * @returns        null where the stay has no reading
 */
export function temperatureTrack(
  readings: SensorReadings,
  grid: StepGrid,
  [from, to]: readonly [number, number],
  air: GapAir | null,
  toEdgeM: number,
): TemperatureTrack | null {
  const means = stepMeans(readings.timeMs, readings.value, grid);
  const known: number[] = [];
  for (let i = from; i < to; i++) if (!Number.isNaN(means[i])) known.push(i);
  if (known.length === 0) return null;
  const none = () => new Float64Array(grid.count).fill(Number.NaN);
  const flags = () => new Uint8Array(grid.count);
  const first = known[0];
  const last = known[known.length - 1];
  const days = (steps: number) => (steps > NEAR ? steps / STEPS_A_DAY : 0);
  const track: TemperatureTrack = {
    ...{ tempC: none(), lowC: none(), highC: none(), read: flags(), seen: flags(), carried: flags() },
    unread: { before: days(first - from), after: days(to - 1 - last) },
  };
  hold(from, first, means[first]);
  known.forEach((step, k) => {
    put(step, means[step], means[step], means[step]);
    track.read[step] = 1;
    track.seen[step] = 1;
    if (k > 0) between(known[k - 1], step);
  });
  hold(last + 1, to, means[last]);
  return track;

  function put(step: number, tempC: number, lowC: number, highC: number): void {
    track.tempC[step] = tempC;
    track.lowC[step] = lowC;
    track.highC[step] = highC;
  }

  function between(before: number, after: number): void {
    const near = after - before <= NEAR;
    const ends = [means[before], means[after]] as const;
    const low = Math.min(...ends);
    const high = Math.max(...ends);
    const reach = near ? null : gapReach(air, [before, after], [low, high], toEdgeM);
    for (let i = before + 1; i < after; i++) {
      const part = reach === null ? (i - before) / (after - before) : reach.part(i);
      const tempC = ends[0] + part * (ends[1] - ends[0]);
      if (near) put(i, tempC, tempC, tempC);
      else put(i, tempC, reach?.lowC ?? low, reach?.highC ?? high);
      track.seen[i] = Number(near);
      track.carried[i] = Number(reach !== null && after - before <= CARRIED);
    }
  }

  /** Before the first reading and after the last: as warm as there. Grain comes in about as warm as the air outdoors, and drifts towards it unwatched. */
  function hold(start: number, end: number, tempC: number): void {
    for (let i = start; i < end; i++) {
      const isNear = Math.min(Math.abs(i - first), Math.abs(i - last)) <= NEAR;
      const out = isNear ? Number.NaN : (air?.outdoorC[i] ?? Number.NaN);
      put(i, tempC, Number.isNaN(out) ? tempC : Math.min(tempC, out), Number.isNaN(out) ? tempC : Math.max(tempC, out));
      track.seen[i] = Number(isNear);
    }
  }
}
