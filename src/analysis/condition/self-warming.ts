import { Z95 } from '../../base/estimate.ts';
import { besidePlaces, REACH_M, type WatchedPlace } from './beside-places.ts';
import type { SelfWarming, WarmingWatch } from './condition-types.ts';
import { DAY_MS, type OutdoorDays, warmestOf } from './outdoor-days.ts';
import type { PlaceDays } from './place-days.ts';

const SHORTEST_DAYS = 5;
const LONGEST_DAYS = 21;
/** A rise that a manager would look into: a few degrees Fahrenheit within weeks (common practice), K. */
const LEAST_RISE_K = 2;
/** Steel and the air under a roof in the sun over the day's outdoor mean, K (from memory). */
const SUN_K = 6;
/** Fan hours that a stretch of rest may hold. */
const MOST_FAN_H = 2;

/**
 * Places that warmed with the fan at rest beyond all that lay near them.
 *
 * Heat that is only conducted goes from warm to cold: without a source of its own a place of the grain never grows warmer than the
 * warmest of what lay near it before and of what touches it from outside meanwhile. So a rise of 2 K and more within 5 to 21 days
 * of rest that ends above all of these, by more than thermometers may differ, is told as warming of its own.
 *
 * @param fanHours   by local day, [days]; NaN where not known: such days are no rest
 * @param accuracyK  of a thermometer, limits that 95 % keep
 */
export function selfWarming(
  places: readonly WatchedPlace[],
  { dayMs, tempC, jumpsBefore }: PlaceDays,
  fanHours: Float64Array,
  outdoors: OutdoorDays,
  accuracyK: number,
): WarmingWatch {
  const marginK = Math.max(1, Math.SQRT2 * accuracyK, (2 * accuracyK) / Z95);
  const rests = stretches(fanHours);
  const warmestDays = rests.map(([from, to]) => warmestOf(outdoors, dayMs[to], to - from + 1));
  const found: SelfWarming[] = [];
  const judgedDays = places.map(() => new Set<number>());
  places.forEach((place, p) => {
    const near = warmestBeside(places, place, tempC);
    let plainest: SelfWarming | null = null;
    for (const [i, [from, to]] of rests.entries()) {
      const after = tempC[p][to];
      const before = tempC[p][from];
      if (jumpsBefore[p][to + 1] > jumpsBefore[p][from]) continue;
      const nearC = near(from);
      if (Number.isNaN(after) || Number.isNaN(before) || nearC === null) continue;
      const outsideC = place.toEdgeM <= REACH_M ? warmestDays[i] : Number.NEGATIVE_INFINITY;
      if (outsideC === null) continue;
      for (let d = from; d <= to; d++) judgedDays[p].add(d);
      const warmest = Math.max(nearC, outsideC + SUN_K);
      const riseK = after - before;
      const aboveK = after - warmest;
      if (riseK < LEAST_RISE_K || aboveK < marginK || aboveK <= (plainest?.aboveK ?? 0)) continue;
      const span = { fromMs: dayMs[from], toMs: dayMs[to] + DAY_MS };
      plainest = { cable: place.cable, sensor: place.sensor, heightM: place.heightM, span, riseK, aboveK };
    }
    if (plainest !== null) found.push(plainest);
  });
  const judged = judgedDays.filter((days) => days.size > 0).length;
  return {
    found: found.sort((a, b) => a.span.fromMs - b.span.fromMs || b.aboveK - a.aboveK),
    judged,
    of: places.length,
    days: Math.max(0, ...judgedDays.map((days) => days.size)),
    why: judged > 0 ? null : whyNot(places, fanHours, rests),
  };
}

/** The warmest of what lies near a place, by day, C; null where nothing tells it. */
function warmestBeside(places: readonly WatchedPlace[], place: WatchedPlace, tempC: readonly Float64Array[]) {
  const days = new Map<number, number | null>();
  return (day: number): number | null => {
    const told = days.get(day);
    if (told !== undefined) return told;
    const beside = besidePlaces(places, place, (other) => !Number.isNaN(tempC[other][day]));
    const warmest = beside === null || beside.length === 0 ? null : Math.max(...beside.map((o) => tempC[o][day]));
    days.set(day, warmest);
    return warmest;
  };
}

/** First and last day of every stretch of rest of five to twenty-one days. */
function stretches(fanHours: Float64Array): [number, number][] {
  const out: [number, number][] = [];
  for (let from = 0; from < fanHours.length; from++) {
    let sum = fanHours[from];
    for (let to = from + 1; to < fanHours.length && to - from <= LONGEST_DAYS; to++) {
      sum += fanHours[to];
      if (!(sum <= MOST_FAN_H)) break;
      if (to - from >= SHORTEST_DAYS) out.push([from, to]);
    }
  }
  return out;
}

function whyNot(places: readonly WatchedPlace[], fanHours: Float64Array, rests: readonly unknown[]): string {
  if (places.length === 0) return 'No temperature of the grain could be believed.';
  if (fanHours.every((hours) => Number.isNaN(hours))) return 'No log tells when the fans of this bin rested.';
  return rests.length === 0
    ? `No log tells that every fan rested for ${SHORTEST_DAYS} days.`
    : 'In no rest of the fan temperatures and, near wall, floor and surface, outdoor air are known.';
}
