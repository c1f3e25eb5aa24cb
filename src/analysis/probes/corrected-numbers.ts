import { type Estimate, estimate, Z90 } from '../../base/estimate.ts';
import { grainAmount } from '../grain/grain-amount.ts';
import { type ErrorPart, joinErrors } from '../moisture/error-part.ts';
import type { BinMoistureInput } from '../moisture/observed-moisture.ts';
import { overdryingLoss } from '../moisture/overdrying-loss.ts';
import { ACCURACY, BIAS } from '../moisture/reading-parts.ts';
import type { BinMoisture, MomentMean } from '../types.ts';
import type { CorrectedNumbers } from './probe-types.ts';

/**
 * The season's numbers with the offset taken off every moisture that sensors told. Between two moments of the same
 * sensors it cancels: the points stay as they are. Where tickets or a stated moisture tell one moment, it does not.
 *
 * @param offset  cables less probes, points, with a value
 * @param sampled share of the grain whose sensors a sample was held against: the others keep their own error
 * @returns       null where the end is not by sensors
 */
export function correctedNumbers(
  input: BinMoistureInput,
  moisture: BinMoisture,
  offset: Estimate,
  sampled: number,
): CorrectedNumbers | null {
  const { start, end } = moisture;
  if (offset.value === null || end.from !== 'sensors' || end.value === null) return null;
  const sd = (offset.interval![1] - offset.interval![0]) / 2 / Z90;
  const own: ErrorPart = { cause: 'offset by the hand samples', sd, df: Number.POSITIVE_INFINITY };
  // The hand samples take the place of what the cables share, and of each sensor's own error as far as they reach.
  const kept = (parts: readonly { cause: string; sd: number }[], at = '') =>
    parts
      .filter(({ cause }) => cause !== `${BIAS}${at}`)
      .map(({ cause, sd }) => ({
        cause,
        sd: cause === `${ACCURACY}${at}` ? sd * Math.sqrt(Math.max(0, 1 - sampled)) : sd,
        df: Number.POSITIVE_INFINITY,
      }));
  const endHalf = joinErrors([...kept(moisture.endParts ?? []), own]).half90 / 100;
  const endWb = end.value - offset.value / 100;
  const corrected: MomentMean = { ...end, value: endWb, interval: [Math.max(0, endWb - endHalf), endWb + endHalf] };
  const loss = overdryingLoss(input.bin, input.season, grainAmount(input.bin, start, input.tickets), {
    mean: corrected,
    parts: [],
    why: null,
  });
  return {
    end: { value: endWb, interval: corrected.interval ?? null, why: null },
    pointsRemoved: correctedPoints(moisture, offset.value, own, kept),
    overdryingLossBushels: loss.bushels,
    overdryingLoss: loss.money,
  };
}

function correctedPoints(
  { start, pointsRemoved, errorParts }: BinMoisture,
  offset: number,
  own: ErrorPart,
  kept: (parts: readonly { cause: string; sd: number }[], at: string) => ErrorPart[],
): Estimate {
  if (start.from === 'sensors' || pointsRemoved.value === null) return pointsRemoved;
  const points = pointsRemoved.value + offset;
  const { half90 } = joinErrors([...kept(errorParts, ', at the end'), own]);
  return estimate(points, points - half90, points + half90);
}
