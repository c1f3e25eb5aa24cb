import { fanPieces } from '../fronts/fan-pieces.ts';
import { DAY_H } from '../fronts/front-limits.ts';
import type { FanSpans } from '../types.ts';

/**
 * Share of a bin's fan hours that lie beyond the first day of running after a rest of three days or more. In that day the bed
 * settles to the air: what leaves then is not in balance with the grain at the last sensors.
 *
 * @param fromMs, toMs  while grain is in the bin
 * @returns             fraction; NaN where the fans did not run
 */
export function settledShare(spans: FanSpans, fromMs: number, toMs: number): number {
  const { hours, run, runFromMs } = fanPieces(spans, fromMs, toMs);
  const ofRun = new Float64Array(runFromMs.length);
  hours.forEach((one, piece) => {
    ofRun[run[piece]] += one;
  });
  const all = ofRun.reduce((sum, one) => sum + one, 0);
  return ofRun.reduce((sum, one) => sum + Math.max(0, one - DAY_H), 0) / all;
}
