import type { SensorSeries } from '../../tables/sensors.ts';
import type { BinReview, FrontArrival } from '../types.ts';
import { endTemperature } from './end-temperature.ts';
import { type FrontFinding, frontFinding, type HeldSensor } from './front-finding.ts';
import { inHole } from './front-outcomes.ts';

export type FrontVerdict = 'through' | 'held' | 'untold';

/** Whether the season's cooling got through a bin, told by its main campaign. */
export interface SeasonFront {
  review: BinReview;
  verdict: FrontVerdict;
  /** of the cooling campaigns whose front was whole, the one with the coldest air; else the one that came farthest */
  main: FrontFinding | null;
  /** sensors that neither the main front nor a later one reached */
  held: readonly HeldSensor[];
  /** a campaign after the main one whose air was colder still, but whose front did not get through */
  later: FrontFinding | null;
  /** the last front before the main one that went through everywhere */
  earlier: FrontFinding | null;
  cooling: readonly FrontFinding[];
  warming: readonly FrontFinding[];
  /** why it can't be told; null exactly when verdict is not untold */
  why: string | null;
}

/** The season's cooling of a bin; `series`: the cables' readings, to see what grain that no front came to was left at. */
export function seasonFront(review: BinReview, series: readonly SensorSeries[] = []): SeasonFront {
  const end = endTemperature(review.bin.id, series);
  const all = review.fronts.campaigns.map((campaign) => frontFinding(campaign, review.bin.air, end));
  const cooling = all.filter((one) => one.campaign.kind === 'cooling');
  const warming = all.filter((one) => one.campaign.kind === 'warming');
  const main = mainOf(cooling);
  const after = main === null ? [] : cooling.filter((one) => one.campaign.span.fromMs > main.campaign.span.fromMs);
  const earlier =
    cooling.filter((one) => one.through && one.campaign.span.fromMs < (main?.campaign.span.fromMs ?? 0)).at(-1) ?? null;
  const came = after.flatMap((one) => one.passed);
  const held = (main?.held ?? []).filter((one) => !came.some((other) => isSame(one, other)));
  const later =
    after.filter((one) => one.held.length > 0 && one.campaign.airC < (main?.campaign.airC ?? 0)).at(-1) ?? null;
  const lost = (main?.untold ?? []).filter(inHole).filter((one) => !came.some((other) => isSame(one, other)));
  const why = whyUntold(review, main, cooling.length, held.length, lost.length);
  const verdict = why !== null ? 'untold' : held.length > 0 ? 'held' : 'through';
  return { review, verdict, main, held, later, earlier, cooling, warming, why };
}

function isSame(one: FrontArrival, other: FrontArrival): boolean {
  return one.cable === other.cable && one.sensor === other.sensor;
}

function mainOf(cooling: readonly FrontFinding[]): FrontFinding | null {
  const coldest = (of: readonly FrontFinding[]) => [...of].sort((a, b) => a.campaign.airC - b.campaign.airC)[0] ?? null;
  const share = (one: FrontFinding) => one.passed.length / Math.max(1, one.seen);
  const whole = coldest(cooling.filter((one) => one.whole));
  if (whole !== null) return whole;
  const able = cooling.filter((one) => one.seen > one.untold.length);
  const farthest = Math.max(...able.map(share));
  return coldest(able.filter((one) => share(one) === farthest));
}

function whyUntold(
  review: BinReview,
  main: FrontFinding | null,
  cooling: number,
  held: number,
  lost: number,
): string | null {
  if (review.failure !== null) return 'This bin could not be worked out.';
  if (main === null) {
    if (cooling > 0) return 'No sensor could tell of its cooling campaigns.';
    if (review.fronts.campaigns.length > 0)
      // Drying grain cools in air that is no cooler than itself: what no campaign was is told, not what the grain did.
      return 'By the mean of a day its fans pushed air clearly warmer than the grain and none clearly cooler, so there is no cooling front to follow; grain that dries cools by evaporation besides.';
    return review.fronts.why ?? 'No stretch of fan running was clearly cooler than the grain.';
  }
  if (held > 0) return null;
  if (main.whole && lost > 0)
    return `The readings of ${lost} of ${main.seen} sensors break off before the front had passed them.`;
  if (main.whole) return null;
  return 'The grain cooled in steps too small for a front to be followed.';
}
