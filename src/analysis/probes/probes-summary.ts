import { z } from 'zod';
import { withheld } from '../../base/estimate.ts';
import { interval, number, why } from '../summary-cells.ts';
import { both, pair, plain, reason } from '../summary-numbers.ts';
import type { BinReview } from '../types.ts';

/** `probes` of a bin in `summary.json`. */
export const PROBES_SHAPE = z.strictObject({
  samples: z.int().describe('counted: hand samples held against cables'),
  counted: z.int().describe('counted: those that the offset rests on'),
  offsetPoints: number.describe('cables less hand samples'),
  offsetPointsInterval: interval,
  sensors: z
    .array(
      z.strictObject({
        cable: z.string(),
        sensor: z.int().describe('as stated, numbered from the floor up'),
        samples: z.int().describe('counted: hand samples beside it'),
        offsetPoints: number.describe('sensor less hand samples'),
        offsetPointsInterval: interval,
        correctedEndPct: number.describe('of the bin, with this sensor’s offset alone taken off'),
        correctedEndPctInterval: interval,
        correctedPointsRemoved: number.describe('points, likewise'),
        correctedPointsRemovedInterval: interval,
        why,
      }),
    )
    .describe('the sensors that hand samples lie beside'),
  correctedEndPct: number.describe('with the offset taken off; beside, not in place of, moisture.endPct'),
  correctedEndPctInterval: interval,
  correctedPointsRemoved: number.describe('points'),
  correctedPointsRemovedInterval: interval,
  correctedOverdryingLossBushels: number,
  correctedOverdryingLossBushelsInterval: interval,
  correctedOverdryingLoss: number.describe('money'),
  correctedOverdryingLossInterval: interval,
  why,
});

export function probesSummary({ probes, moisture }: BinReview): z.infer<typeof PROBES_SHAPE> {
  const none = withheld(
    probes?.why ?? moisture.why ?? 'The end is not told by sensors, so there is nothing to correct.',
  );
  const offset = probes?.bin.offset ?? none;
  const corrected = probes?.corrected ?? null;
  const end = corrected?.end ?? none;
  const points = corrected?.pointsRemoved ?? none;
  const bushels = corrected?.overdryingLossBushels ?? none;
  const money = corrected?.overdryingLoss ?? none;
  return {
    samples: probes?.pairs.length ?? 0,
    counted: probes?.bin.pairs ?? 0,
    ...both('offsetPoints', offset),
    sensors: (probes?.sensors ?? []).map(({ cable, sensor, pairs, offset, corrected: own }) => ({
      cable,
      sensor,
      samples: pairs,
      ...both('offsetPoints', offset),
      correctedEndPct: plain(own.end.value, 100),
      correctedEndPctInterval: pair(own.end.interval, 100),
      ...both('correctedPointsRemoved', own.pointsRemoved),
      why: reason(null, own.end, own.pointsRemoved),
    })),
    correctedEndPct: plain(end.value, 100),
    correctedEndPctInterval: pair(end.interval, 100),
    ...both('correctedPointsRemoved', points),
    ...both('correctedOverdryingLossBushels', bushels),
    ...both('correctedOverdryingLoss', money),
    why: reason(null, offset, end, points, bushels, money),
  };
}
