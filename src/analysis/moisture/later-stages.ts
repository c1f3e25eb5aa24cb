import { Z90 } from '../../base/estimate.ts';
import type { FillTimes } from '../grain/fill-times.ts';
import { DAY_MS } from './moment-window.ts';
import { type PointsRemoved, withPart } from './points-removed.ts';
import type { MoistureStages } from './stage-types.ts';

/** The cause under which the error of what the rest lost stands; there exactly where the points count it. */
export const LATER_STAGES = 'what the rest lost after the first grain was taken out';
/** Fan hours on the rest of a bin that may go untold, as for the days before and after the readings. */
const FEW_HOURS = 24;

const said = (points: number) => points.toFixed(1).replace('-', '−');

/**
 * The points of the full bin and, by the balance, of what stayed after the first grain was taken out: each stage's points
 * times its share of the dry matter, so that points times bushels are the bushel-points that the fans took out.
 *
 * @returns  the points, and what a reader must know of it
 */
export function withLaterStages(
  removed: PointsRemoved,
  stages: MoistureStages | null,
  fill: FillTimes,
): { removed: PointsRemoved; notes: string[] } {
  const { wholeUntilMs, refilledMs } = fill;
  // What came in later is no rest of the first grain.
  const later = (stages?.stages ?? []).filter(
    ({ span }) =>
      wholeUntilMs !== null && span.fromMs >= wholeUntilMs && (refilledMs === undefined || span.fromMs < refilledMs),
  );
  const hours = later.reduce((sum, one) => sum + (one.likelyHours ?? 0), 0);
  if (removed.points.value === null || hours < FEW_HOURS) return { removed, notes: [] };
  const ran = `${Math.round(hours)} fan hours ran after the first grain was taken out`;
  const lacking = later.find((one) => one.points.value === null);
  if (lacking !== undefined) {
    return { removed, notes: [`${ran}; what they took out can’t be told and is not counted: ${lacking.points.why}`] };
  }
  const more = later.reduce((sum, one) => sum + one.share * one.points.value!, 0);
  const half = Math.sqrt(
    later.reduce((sum, { share, points }) => {
      const [low, high] = points.interval!;
      return sum + ((share * (high - low)) / 2) ** 2;
    }, 0),
  );
  const days = Math.round((later[later.length - 1].span.toMs - later[0].span.fromMs) / DAY_MS);
  const share = Math.round(100 * later[0].share);
  return {
    removed: withPart(removed, more, { cause: LATER_STAGES, sd: half / Z90, df: Number.POSITIVE_INFINITY }),
    notes: [
      `${ran}, over ${days} days on the ${share} % and less that stayed. The points removed count them by that share: ${said(removed.points.value)} while the bin was whole and ${said(more)} after, per bushel of the full bin. Start, end and over-drying are those of the whole bin.`,
    ],
  };
}
