import { Z95 } from '../../base/estimate.ts';
import { besidePlaces, type WatchedPlace } from './beside-places.ts';
import type { SelfWarming, WarmingWatch } from './condition-types.ts';
import { edgeResponse, edgeWarmthK } from './edge-response.ts';
import { DAY_MS, type OutdoorDays, SUN_K } from './outdoor-days.ts';
import type { PlaceDays } from './place-days.ts';
import { restStretches, type Stretch } from './rest-stretches.ts';

/** Within so many days a rise is told by the first of these that it fits: K in all, K above all else at least. */
const RISES = [
  // Before five days of rest only what no thermometer is off by.
  { days: 4, riseK: 5, aboveK: 3 },
  // A rise that a manager would look into: a few degrees Fahrenheit within weeks (common practice).
  { days: 60, riseK: 2, aboveK: 1 },
] as const;
const SHORTEST_DAYS = 2;
/** From here on a stretch without a find says something: slower warming would have been seen. */
const WATCHED_DAYS = 5;
const LONGEST_DAYS = 60;
/** Over longer stretches heat comes from beyond what lies near: a place is held against every sensor of the bin. */
const NEAR_DAYS = 21;
/** Grain between the last sensor and an edge, which nothing reads, holds the warmth of days before: half a metre takes two weeks to let it through; or since so many hours of air blew it away. */
const BEFORE_DAYS = 14;
const BLOWN_AWAY_H = 48;
/** Less of what the outside does is no matter. */
const LEAST_RESPONSE = 1e-3;

/**
 * Places that warmed with the fan at rest beyond all that lay near them.
 *
 * Heat that is only conducted goes from warm to cold: without a source of its own a place of the grain never grows warmer than the
 * warmest of what lay near it before, but for what has come in from outside. So a rise of 2 K and more within 5 to 60 days
 * of rest (5 K within 2 to 4) that ends above all of these, by more than thermometers may differ, is told as warming of its own.
 *
 * @param fanHours   by local day, [days]; NaN where not known: such days are no rest
 * @param accuracyK  of a thermometer, limits that 95 % keep
 */
export function selfWarming(
  places: readonly WatchedPlace[],
  days: PlaceDays,
  fanHours: Float64Array,
  outdoors: OutdoorDays,
  accuracyK: number,
): WarmingWatch {
  const marginK = Math.max(Math.SQRT2 * accuracyK, (2 * accuracyK) / Z95);
  const rests = restStretches(fanHours, SHORTEST_DAYS, LONGEST_DAYS);
  const outside = {
    tempC: days.dayMs.map((ms) => (outdoors.get(ms) ?? Number.NaN) + SUN_K),
    sinceDay: days.dayMs.map((_, d) => warmSince(fanHours, d)),
  };
  const watched = places.map((_, p) => watchPlace(places, p, days, rests, outside, marginK));
  const judged = watched.filter((one) => one.days > 0).length;
  return {
    found: watched
      .flatMap(({ plainest }) => (plainest === null ? [] : [plainest]))
      .sort((a, b) => a.span.fromMs - b.span.fromMs || b.aboveK - a.aboveK),
    judged,
    of: places.length,
    days: Math.max(0, ...watched.map((one) => one.days)),
    why: judged > 0 ? null : whyNot(places, fanHours, rests),
  };
}

/** One place through all stretches: what of it stands out most, and the days on which that could have been seen. */
function watchPlace(
  places: readonly WatchedPlace[],
  p: number,
  { dayMs, tempC, jumpsBefore }: PlaceDays,
  rests: readonly Stretch[],
  /** by day: C, and from which day on its warmth may still be in the grain */
  outside: { tempC: Float64Array; sinceDay: Float64Array },
  marginK: number,
): { plainest: SelfWarming | null; days: number } {
  const { cable, sensor, heightM } = places[p];
  const response = edgeResponse(places[p], BEFORE_DAYS + LONGEST_DAYS + 2);
  const warmest = warmestBeside(places, p, tempC);
  const holes = new Uint16Array(dayMs.length + 1);
  for (const d of dayMs.keys()) holes[d + 1] = holes[d] + Number(Number.isNaN(outside.tempC[d]));
  let plainest: SelfWarming | null = null;
  let days = 0;
  let countedTo = -1;
  for (const [from, to] of rests) {
    const beforeC = tempC[p][from];
    const afterC = tempC[p][to];
    if (Number.isNaN(beforeC) || Number.isNaN(afterC) || jumpsBefore[p][to + 1] > jumpsBefore[p][from]) continue;
    const { nearC, allC } = warmest(from);
    const since = outside.sinceDay[from];
    const reaches = response[to - since + 1] >= LEAST_RESPONSE;
    if (nearC === null || (reaches && holes[to + 1] > holes[from])) continue;
    if (to - from >= WATCHED_DAYS) {
      days += Math.max(0, to - Math.max(from - 1, countedTo));
      countedTo = Math.max(countedTo, to);
    }
    const riseK = afterC - beforeC;
    const warmestC = to - from > NEAR_DAYS ? allC : nearC;
    const least = RISES.find((one) => to - from <= one.days)!;
    const leastK = Math.max(least.aboveK, marginK);
    if (riseK < least.riseK || afterC - warmestC < leastK) continue;
    const edgeK = reaches ? edgeWarmthK(response, outside.tempC.subarray(since, to + 1), warmestC) : 0;
    const aboveK = afterC - warmestC - edgeK;
    if (aboveK < leastK || aboveK <= (plainest?.aboveK ?? 0)) continue;
    plainest = { cable, sensor, heightM, span: { fromMs: dayMs[from], toMs: dayMs[to] + DAY_MS }, riseK, aboveK };
  }
  return { plainest, days: plainest === null ? days : Math.max(days, WATCHED_DAYS) };
}

/** The first of the days before one whose warmth may still stand in grain that nothing reads. */
function warmSince(fanHours: Float64Array, day: number): number {
  let blown = 0;
  let since = day;
  while (since > 0 && day - since < BEFORE_DAYS && blown < BLOWN_AWAY_H) {
    since -= 1;
    if (fanHours[since] > 0) blown += fanHours[since];
  }
  return since;
}

/** The warmest of what lies near a place, and of all of the bin, by day, C; null where nothing tells what lies near. */
function warmestBeside(places: readonly WatchedPlace[], p: number, tempC: readonly Float64Array[]) {
  let told: { day: number; nearC: number | null; allC: number } | null = null;
  return (day: number): { nearC: number | null; allC: number } => {
    if (told !== null && told.day === day) return told;
    const beside = besidePlaces(places, places[p], (other) => !Number.isNaN(tempC[other][day]));
    const nearC = beside === null || beside.length === 0 ? null : Math.max(...beside.map((o) => tempC[o][day]));
    const allC = Math.max(...tempC.map((one) => one[day]).filter((one) => !Number.isNaN(one)));
    told = { day, nearC, allC };
    return told;
  };
}

function whyNot(places: readonly WatchedPlace[], fanHours: Float64Array, rests: readonly Stretch[]): string {
  if (places.length === 0) return 'No temperature of the grain could be believed.';
  if (fanHours.every((hours) => Number.isNaN(hours))) return 'No log tells when the fans of this bin rested.';
  return rests.every(([from, to]) => to - from < WATCHED_DAYS)
    ? `No log tells that every fan rested for ${WATCHED_DAYS} days.`
    : 'In no rest of the fan temperatures and, near wall, floor and surface, outdoor air are known.';
}
