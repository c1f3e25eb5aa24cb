import { weightedQuantile } from '../../base/stats/weighted.ts';
import { localDayOf, startOfLocalDay, type Zone } from '../../base/zone.ts';
import type { PlacedSensor } from '../../bin/shares.ts';
import { fanHoursBetween } from '../fan/spans.ts';
import type { BinMoisture, FanSpans } from '../types.ts';
import { meanMoisture } from './cable-points.ts';
import { AIR_STILL, type SensorReadings } from './sensor-readings.ts';

const DAY_MS = 86_400_000;
/** Sensors that stand for less of the grain than this do not make a day's mean. */
const LEAST_SHARE = 1 / 3;

/**
 * The bin's mean moisture by local day. A day is carried by its still-air readings where they stand for at least a third
 * of the grain, else by all of its readings; below a third of the grain it has no mean. Low and high: 10 and 90 % of the grain, by sensor.
 *
 * @param sensors   believed readings
 * @param sharesOf  shares of the grain among the sensors that may be used
 * @returns         every local day from the first reading to the last; fan hours from the first of these days to the day's end
 */
export function dailyMoisture(
  sensors: readonly SensorReadings[],
  sharesOf: (usable: (cable: string, sensor: number) => boolean) => readonly PlacedSensor[],
  spans: FanSpans | null,
  zone: Zone,
): BinMoisture['daily'] {
  const dayOf = (ms: number) => localDayOf(zone, ms) / DAY_MS;
  const bounds = sensors.flatMap((one) => [dayOf(one.timeMs[0]), dayOf(one.timeMs[one.timeMs.length - 1])]);
  if (bounds.length === 0) return [];
  const first = Math.min(...bounds);
  const days = Math.max(...bounds) - first + 1;
  const sums = sensors.map((one) => daySums(one, days, (ms) => dayOf(ms) - first));
  const placed = sharesOf((cable, sensor) => sensors.some((one) => one.cable === cable && one.sensor === sensor));
  const shareOf = sensors.map(
    (one) => placed.find((place) => place.cable === one.cable && place.sensor === one.sensor)?.share ?? 0,
  );
  const startOf = (day: number) => startOfLocalDay(zone, (first + day) * DAY_MS);
  const remembered = new Map<string, readonly PlacedSensor[]>();
  let fanHours = 0;
  return Array.from({ length: days }, (_, day) => {
    const dayMs = startOf(day);
    if (spans !== null) fanHours += fanHoursBetween(spans, dayMs, startOf(day + 1));
    const still = coverage(sums, shareOf, day, 'still') >= LEAST_SHARE;
    const kind = still ? 'still' : 'all';
    if (coverage(sums, shareOf, day, kind) < LEAST_SHARE) {
      return { dayMs, mean: null, low: null, high: null, stillAir: false, fanHours };
    }
    const key = sums.map((one) => (one[kind].count[day] > 0 ? 1 : 0)).join('');
    let shares = remembered.get(key);
    if (shares === undefined) {
      const used = new Set(sensors.filter((_, s) => key[s] === '1').map((one) => `${one.cable} ${one.sensor}`));
      shares = sharesOf((cable, sensor) => used.has(`${cable} ${sensor}`));
      remembered.set(key, shares);
    }
    const values = shares.map((place) => {
      const { sum, count } = sums[sensors.findIndex((s) => s.cable === place.cable && s.sensor === place.sensor)][kind];
      return sum[day] / count[day];
    });
    const weights = shares.map((place) => place.share);
    return {
      dayMs,
      mean: meanMoisture(values, weights),
      low: weightedQuantile(values, weights, 0.1),
      high: weightedQuantile(values, weights, 0.9),
      stillAir: still,
      fanHours,
    };
  });
}

interface DaySums {
  all: { sum: Float64Array; count: Int32Array };
  still: { sum: Float64Array; count: Int32Array };
}

function daySums(sensor: SensorReadings, days: number, dayOf: (ms: number) => number): DaySums {
  const empty = () => ({ sum: new Float64Array(days), count: new Int32Array(days) });
  const sums = { all: empty(), still: empty() };
  for (let i = 0; i < sensor.timeMs.length; i++) {
    const day = dayOf(sensor.timeMs[i]);
    sums.all.sum[day] += sensor.value[i];
    sums.all.count[day] += 1;
    if (sensor.air[i] !== AIR_STILL) continue;
    sums.still.sum[day] += sensor.value[i];
    sums.still.count[day] += 1;
  }
  return sums;
}

function coverage(sums: readonly DaySums[], shareOf: readonly number[], day: number, kind: 'all' | 'still'): number {
  return sums.reduce((sum, one, s) => sum + (one[kind].count[day] > 0 ? shareOf[s] : 0), 0);
}
