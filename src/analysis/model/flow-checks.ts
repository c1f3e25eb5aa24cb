import type { Estimate } from '../../base/estimate.ts';
import { overlap } from '../../base/overlap.ts';
import type { BinLog } from './bin-log.ts';
import type { Doubt } from './cross-checks.ts';

/** What to do where air seems to get lost between fan and grain. */
export const LOOK_FOR_LEAKS = 'Look for leaks of floor, transition and hatches, and log the static pressure.';

/**
 * Whether the airflow that the grain got can be that of its static pressure, and what the fans deliver by their curves; looked at
 * before static pressure is joined with it.
 *
 * @param flowM3S       of the whole bin, static pressure joined
 * @param flowAtCables  by the grain at the cables alone
 */
export function flowDoubts({ review }: BinLog, flowM3S: Estimate, flowAtCables: Estimate): Doubt[] {
  const { byPressure, byFanCurve } = review.airflow;
  const ratioTo = (other: Estimate) => ((flowAtCables.value ?? Number.NaN) / (other.value ?? Number.NaN)).toFixed(2);
  return [
    ...tooWide(flowM3S),
    ...(overlap(flowAtCables, byFanCurve) === false
      ? [
          {
            why: `The grain got ${ratioTo(byFanCurve)} of the air that the fans deliver by their curves; neither interval reaches the other.`,
            help: LOOK_FOR_LEAKS,
          },
        ]
      : []),
    ...(overlap(flowAtCables, byPressure) === false
      ? [
          {
            why: `The fitted airflow is ${ratioTo(byPressure)} of that by static pressure; neither interval reaches the other.`,
            help: LOOK_FOR_LEAKS,
          },
        ]
      : []),
  ];
}

/** Half of an interval over the airflow, by its logarithm: beyond it what another rule would take is a guess. */
const MOST_HALF_WIDTH = 0.32;

function tooWide({ interval }: Estimate): Doubt[] {
  if (interval === null || Math.log(interval[1] / interval[0]) / 2 <= MOST_HALF_WIDTH) return [];
  return [
    {
      why: 'The log leaves the airflow of the whole bin too unsure: its interval reaches beyond 30 % on either side.',
      help: 'A cable half-way between centre and wall, and the static pressure while the fan runs.',
    },
  ];
}
