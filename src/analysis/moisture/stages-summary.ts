import { z } from 'zod';
import { withheld } from '../../base/estimate.ts';
import { interval, number, why } from '../summary-cells.ts';
import { both, plain, reason } from '../summary-numbers.ts';
import type { BinReview } from '../types.ts';

/** `stages` of a bin in `summary.json`. */
export const STAGES_SHAPE = z
  .strictObject({
    stages: z.array(
      z.strictObject({
        from: z.iso.datetime(),
        to: z.iso.datetime(),
        depthM: number.describe('stated'),
        share: number.describe('of the full bin’s dry matter, fraction, by the stated depth'),
        fanHours: number.describe('h'),
        fanHoursInterval: interval,
        startPct: number.describe('measured: mean of the sensors in the grain'),
        endPct: number.describe('measured: mean of the sensors in the grain'),
        points: number.describe('points removed from the grain in place'),
        pointsInterval: interval,
        mixedPoints: number.describe(
          'points: fall of the mean before this stage by grain that came or went; no drying',
        ),
        mixedPointsInterval: interval,
        why,
      }),
    ),
    perFullBushel: number.describe('points of all stages by the grain in place, per bushel of the full bin'),
    perFullBushelInterval: interval,
    stayed: number.describe('points that the grain that stayed to the end lost since the bin was full'),
    stayedInterval: interval,
    why,
  })
  .describe('no stages where the depth did not change while the bin held grain');

// Whole minutes, as the other times.
const iso = (ms: number) => new Date(Math.round(ms / 60_000) * 60_000).toISOString();

const NO_STAGES = withheld(
  'No change of the depth while the bin held grain is stated, so there are no stages to tell apart.',
);
const FIRST = withheld('Nothing lay in the bin before.');

export function stagesSummary({ failure, moisture }: BinReview): z.infer<typeof STAGES_SHAPE> {
  const { stages } = moisture;
  if (stages === null || stages === undefined) {
    const why = failure ?? NO_STAGES.why;
    return { stages: [], ...both('perFullBushel', NO_STAGES), ...both('stayed', NO_STAGES), why };
  }
  return {
    stages: stages.stages.map((one) => ({
      from: iso(one.span.fromMs),
      to: iso(one.span.toMs),
      depthM: plain(one.depthM),
      share: plain(one.share),
      ...both('fanHours', one.fanHours),
      startPct: plain(one.startWb, 100),
      endPct: plain(one.endWb, 100),
      ...both('points', one.points),
      ...both('mixedPoints', one.mixed ?? FIRST),
      why: reason(null, one.fanHours, one.points, one.mixed ?? FIRST),
    })),
    ...both('perFullBushel', stages.perFullBushel),
    ...both('stayed', stages.stayed),
    why: reason(null, stages.perFullBushel, stages.stayed),
  };
}
