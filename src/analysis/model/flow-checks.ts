import type { Estimate } from '../../base/estimate.ts';
import { overlap } from '../../base/overlap.ts';
import { resistancePaM } from '../../bin/airflow-resistance.ts';
import { resistanceCurveOf } from '../../bin/resistance-curves.ts';
import type { BinLog } from './bin-log.ts';
import { runningPowerW } from './blower-of.ts';
import type { Doubt } from './cross-checks.ts';

const HELP = 'Look for leaks of floor, transition and hatches, and log the static pressure.';

/** Air power over shaft power: farm fans at work reach 0.3 to 0.65 (common practice), one on a bed too light for it 0.08; below, much of the air goes elsewhere. */
const LEAST_EFFICIENCY = 0.06;
const MOTOR_EFFICIENCY = 0.88;
/** The smallest fans are often too large for their grain: of one of 3/4 hp nothing follows, W. */
const LEAST_SHAFT_W = 700;

/** Whether the fans' power fits the airflow that the grain got, at the pressure that was logged, else at that of the grain's resistance. */
export function powerDoubts(log: BinLog, flowM3S: number): Doubt[] {
  const shaftW = MOTOR_EFFICIENCY * runningPowerW(log);
  const pressurePa = log.review.airflow.pressure?.pressurePa ?? pressureOf(log, flowM3S);
  const efficiency = (pressurePa * flowM3S) / shaftW;
  if (!(shaftW > LEAST_SHAFT_W) || !(efficiency < LEAST_EFFICIENCY)) return [];
  const share = Math.round(100 * efficiency);
  return [
    {
      why: `To push the fitted airflow through the grain takes ${share} % of the fans’ power; fans at work reach 30 to 65 %, so that much of the air seems to go elsewhere.`,
      help: HELP,
    },
  ];
}

/** Static pressure of an airflow through the grain, Pa; NaN where the crop's resistance is not known or not so far. */
function pressureOf({ bin, depthM, floorAreaM2 }: BinLog, flowM3S: number): number {
  try {
    const { a, b } = resistanceCurveOf(bin.grain.crop);
    return bin.airflowFactor * depthM * resistancePaM(a, b, flowM3S / floorAreaM2);
  } catch (error) {
    if (error instanceof RangeError) return Number.NaN;
    throw error;
  }
}

/** Whether the airflow that the grain got can be that of its static pressure, and what the fans deliver by their curves. */
export function flowDoubts({ review }: BinLog, flowM3S: Estimate): Doubt[] {
  const { byPressure, byFanCurve } = review.airflow;
  const ratioTo = (other: Estimate) => ((flowM3S.value ?? Number.NaN) / (other.value ?? Number.NaN)).toFixed(2);
  return [
    ...tooWide(flowM3S),
    ...(overlap(flowM3S, byFanCurve) === false
      ? [
          {
            why: `The grain got ${ratioTo(byFanCurve)} of the air that the fans deliver by their curves; neither interval reaches the other.`,
            help: HELP,
          },
        ]
      : []),
    ...(overlap(flowM3S, byPressure) === false
      ? [
          {
            why: `The fitted airflow is ${ratioTo(byPressure)} of that by static pressure; neither interval reaches the other.`,
            help: HELP,
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
