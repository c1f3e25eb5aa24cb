import { type Estimate, Z90, Z95 } from '../../base/estimate.ts';
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
 * @param flowAtCables  without it, see `fitIntervals`
 */
export function flowDoubts({ review }: BinLog, flowM3S: Estimate, flowAtCables: Estimate): Doubt[] {
  const { byPressure, byFront, byFanCurve } = review.airflow;
  const ratioTo = (other: Estimate) => ((flowAtCables.value ?? Number.NaN) / (other.value ?? Number.NaN)).toFixed(2);
  return [
    ...tooWide(flowM3S),
    ...farFrom(flowAtCables, byPressure, 'static pressure'),
    ...farFrom(flowAtCables, byFront, 'the fronts'),
    ...(overlap(flowAtCables, byFanCurve) === false
      ? [
          {
            why: `The grain got ${ratioTo(byFanCurve)} of the air that the fans deliver by their curves; neither interval reaches the other.`,
            help: LOOK_FOR_LEAKS,
          },
        ]
      : []),
    ...(apart95(flowAtCables, byPressure)
      ? [
          {
            why: `The fitted airflow is ${ratioTo(byPressure)} of that by static pressure; their 95 % intervals lie apart.`,
            help: LOOK_FOR_LEAKS,
          },
        ]
      : []),
  ];
}

/** Fitted airflow over that by pressure or fronts: farther off no bin is. Working assumption. */
const LEAST_RATIO = 0.5;
const MOST_RATIO = 2;

function farFrom(fitted: Estimate, other: Estimate, way: string): Doubt[] {
  if (fitted.value === null || other.value === null) return [];
  const ratio = fitted.value / other.value;
  // A few pascals on a coarse gauge, or two sets of constants that part by half, leave more than half to twice open.
  if ((ratio >= LEAST_RATIO && ratio <= MOST_RATIO) || overlap(fitted, other) === true) return [];
  return [
    {
      why: `The fitted airflow is ${ratio.toFixed(2)} of that by ${way}; half to twice is possible.`,
      help: 'Static pressure while the fan runs, and a look for leaks between fan and grain.',
    },
  ];
}

/**
 * Whether two airflows contradict each other. Published resistances part by half at aeration rates and fines make more of it, so that
 * pressure and grain are a little apart in some good bins.
 */
function apart95({ interval: a }: Estimate, { interval: b }: Estimate): boolean {
  if (a === null || b === null) return false;
  const [lowA, highA] = widened(a);
  const [lowB, highB] = widened(b);
  return lowA > highB || lowB > highA;
}

/** Logarithms of the 95 % interval of what a 90 % one is told. */
function widened(interval: readonly [number, number]): [number, number] {
  const [low, high] = interval.map(Math.log);
  const more = ((Z95 / Z90 - 1) * (high - low)) / 2;
  return [low - more, high + more];
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
