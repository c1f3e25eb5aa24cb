import type { SeasonFront } from '../analysis/fronts/season-front.ts';

const NOTE =
  'Arrivals marked ~ on the map fell into a hole of the sensor’s log: they stand by the front’s pace, from the sensors of the cable that are told, or amid the hole. Their interval is the hole; no speed and no slowest place is told from them.';

/** What arrivals rest on that fell into a hole of the log; none where no bin has such. */
export function placedNotes(fronts: readonly SeasonFront[]): string[] {
  const placed = fronts.some(({ review }) =>
    review.fronts.campaigns.some(({ arrivals }) => arrivals.some((one) => one.placed === true)),
  );
  return placed ? [NOTE] : [];
}
