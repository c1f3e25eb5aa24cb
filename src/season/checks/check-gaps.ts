import type { Finding } from '../loaded.ts';
import type { FanSeen } from './check-fans.ts';
import type { BinCheck, Checked } from './checked.ts';
import { isByChange } from './fan-state.ts';
import { type Gap, gapsOf } from './gaps.ts';
import { usualInterval } from './interval.ts';
import { type AtSensor, type Place, placesOf } from './places.ts';
import { DAY_MS } from './track.ts';
import { countText, spanText } from './wording.ts';

const YEAR_MS = 366 * 86_400_000;

/** Gaps told one by one, the longest first; the rest of a place is summed up. */
const TOLD_EACH = 3;

/**
 * Silence to the end of the bin's log, with grain in the bin for so long, is a sensor that failed. A logger that was away comes back
 * sooner, and one that is taken down is taken down with its cables.
 */
export const SILENT_END_MS = 14 * DAY_MS;

/** What to do, by what fell silent for good. */
const FAILED: Readonly<Record<Place['whole'], string>> = {
  sensors: 'Have the sensor or its connection repaired before the next season.',
  cable:
    'See whether a file of its log is missing; else have the cable or its connection repaired before the next season.',
  bin: 'See whether a file of its log is missing; else have the cables or their connection repaired before the next season.',
};

/** Holes in the cables' logs, told by the largest place that lost its readings at once. */
export function checkGrainGaps({ bin, sensors, roster }: Pick<BinCheck, 'bin' | 'sensors' | 'roster'>): Finding[] {
  const times = sensors.map(readTimes);
  const interval = usualInterval(
    times.reduce((most, its) => (its.length > most.length ? its : most), new Float64Array()),
  );
  const bounds = boundsOf(times);
  if (bounds === null) return [];
  const items: AtSensor[] = sensors.flatMap((sensor, k) => {
    const { bin, cable, sensor: number } = sensor.series;
    return gapsOf(times[k], bounds).map(({ fromMs, toMs, lacking }) => ({
      bin,
      cable,
      sensor: number,
      fromMs,
      toMs,
      cells: lacking,
    }));
  });
  const inGrainMs = Math.min(bounds.toMs, bin.grain.unloadedMs ?? Number.POSITIVE_INFINITY);
  const holes = placesOf(items, roster, 1.5 * interval).map((place) => {
    const forGood = place.items.every(({ toMs }) => toMs === bounds.toMs) && inGrainMs - place.fromMs >= SILENT_END_MS;
    return { ...place, failed: forGood ? FAILED[place.whole] : null };
  });
  return told(holes, (place) => place.where);
}

/** When something was read of a sensor at all. */
function readTimes({ series }: Checked): Float64Array {
  return series.timeMs.filter((_, i) => Number.isFinite(series.tempC[i]) || Number.isFinite(series.moistureWb[i]));
}

export function boundsOf(times: readonly Float64Array[]): { fromMs: number; toMs: number } | null {
  let fromMs = Number.POSITIVE_INFINITY;
  let toMs = Number.NEGATIVE_INFINITY;
  for (const its of times) {
    if (its.length === 0) continue;
    fromMs = Math.min(fromMs, its[0]);
    toMs = Math.max(toMs, its[its.length - 1]);
  }
  return toMs >= fromMs ? { fromMs, toMs } : null;
}

/** Holes in a log of one thing. */
export function checkLogGaps(
  where: string,
  binId: string | null,
  timeMs: Float64Array,
  bounds: { fromMs: number; toMs: number } | null,
): Finding[] {
  const apart = elsewhere(where, binId, timeMs, bounds, 0);
  if (apart !== null) return [apart];
  const places = gapsOf(timeMs, bounds).map((gap: Gap) => ({ where, binId, cells: gap.lacking, ...gap }));
  return told(places, () => where);
}

/** Holes in fan logs; one that writes only changes has none that can be seen. */
export function checkFanGaps(
  fan: FanSeen,
  binId: string | null,
  bounds: { fromMs: number; toMs: number } | null,
): Finding[] {
  const where = `fan ${fan.id}`;
  if (!isByChange(fan.state)) return checkLogGaps(where, binId, fan.log.time, bounds);
  // A fan may well stand as it was left for months.
  const apart = elsewhere(where, binId, fan.log.time, bounds, YEAR_MS);
  return apart === null ? [] : [apart];
}

/** A log that lies wholly before or after the grain's, by more than `leastMs`: most often another season's file. */
function elsewhere(
  where: string,
  binId: string | null,
  timeMs: Float64Array,
  bounds: { fromMs: number; toMs: number } | null,
  leastMs: number,
): Finding | null {
  if (bounds === null || timeMs.length === 0) return null;
  const before = bounds.fromMs - timeMs[timeMs.length - 1];
  const after = timeMs[0] - bounds.toMs;
  if (Math.max(before, after) <= leastMs) return null;
  const how =
    before > 0 ? `it ends ${spanText(before)} before that begins` : `it begins ${spanText(after)} after that ends`;
  const interval = usualInterval(timeMs);
  return {
    kind: 'gap',
    where,
    binId,
    ...bounds,
    cells: interval > 0 ? Math.round((bounds.toMs - bounds.fromMs) / interval) : 0,
    text: `Not one reading falls into the time of the grain's log: ${how}.`,
    advice: 'See whether the file is from another season, and whether the clock and the year of its logger are right.',
  };
}

type Hole = Pick<Place, 'where' | 'fromMs' | 'toMs' | 'cells'> & {
  binId: string | null;
  /** silent for good: what to do */
  failed?: string | null;
};

function told(holes: readonly Hole[], by: (hole: Hole) => string): Finding[] {
  const groups = new Map<string, Hole[]>();
  for (const hole of holes) groups.set(by(hole), [...(groups.get(by(hole)) ?? []), hole]);
  return [...groups.values()].flatMap((group) => {
    const lasts = ({ fromMs, toMs, failed }: Hole) => (failed ? Number.POSITIVE_INFINITY : toMs - fromMs);
    const longest = [...group].sort((a, b) =>
      lasts(a) < lasts(b) ? 1 : lasts(a) > lasts(b) ? -1 : a.fromMs - b.fromMs,
    );
    const each = group.length <= TOLD_EACH + 1 ? group : longest.slice(0, TOLD_EACH);
    const rest = group.filter((hole) => !each.includes(hole));
    const out = each
      .sort((a, b) => a.fromMs - b.fromMs)
      .map((hole) =>
        finding(
          hole,
          `No readings for ${spanText(hole.toMs - hole.fromMs)}${hole.failed ? ', to the end of the log' : ''}; ${countText(hole.cells, 'reading is', 'readings are')} lacking.`,
        ),
      );
    if (rest.length === 0) return out;
    const sum: Hole = {
      ...rest[0],
      fromMs: Math.min(...rest.map((hole) => hole.fromMs)),
      toMs: Math.max(...rest.map((hole) => hole.toMs)),
      cells: rest.reduce((total, hole) => total + hole.cells, 0),
    };
    const longestMs = Math.max(...rest.map((hole) => hole.toMs - hole.fromMs));
    const text = `${countText(rest.length, 'more gap')}, none longer than ${spanText(longestMs)}; ${countText(sum.cells, 'reading is', 'readings are')} lacking in all.`;
    return [...out, finding(sum, text)];
  });
}

function finding({ where, binId, fromMs, toMs, cells, failed }: Hole, text: string): Finding {
  return { kind: 'gap', where, binId, fromMs, toMs, cells, text, advice: failed ?? null };
}
