import { adviceOnce } from './advice-once.ts';
import type { BinLog } from './bin-log.ts';
import type { Doubt } from './cross-checks.ts';
import { degreesOverSaid, degreesSaid, overSaid } from './degrees-said.ts';
import type { Fit } from './fit-bin.ts';
import { BREATH, CABLES_K, ENTERING, type FitParameters, RATE, SLIP, WALL } from './fit-parameters.ts';
import { LOOK_FOR_LEAKS } from './flow-checks.ts';
import type { BinModel } from './model-types.ts';

/** Beyond these on the unseen part a bed is not trusted. @source the kit's design */
export const MOST_K = 2;
export const MOST_POINTS = 0.7;
/** The season moved where holding the last reading is off by more. */
const MOVED_K = 1;
const MOVED_POINTS = 0.3;
const AT_BOUND = 0.02;

type Told = Pick<BinModel, 'trained' | 'unseen'>;
type Verdict = Pick<BinModel, 'trusted' | 'why' | 'wouldHelp'>;

/**
 * Whether a fitted bed can be trusted, why (not), and what would help.
 *
 * @param doubts  of the log itself, see `cross-checks.ts`
 */
export function verdictOf(
  log: BinLog,
  told: Told,
  fit: Fit,
  { list }: FitParameters,
  doubts: readonly Doubt[],
): Verdict {
  const reasons = [...misfits(log, told), ...bounds(log, fit, list), ...doubts];
  if (reasons.length === 0) {
    const { misfit, fanHours } = told.unseen!;
    return {
      trusted: true,
      why: `On ${Math.round(fanHours)} fan hours that the fit has not seen the bed lies ${degreesSaid(misfit.temperatureK)}${
        misfit.moistures > 0 ? ` and ${misfit.moisturePoints.toFixed(1)} points` : ''
      } (root mean square) from the log.`,
      wouldHelp: [],
    };
  }
  return {
    trusted: false,
    why: reasons.map((one) => one.why).join(' '),
    wouldHelp: adviceOnce(
      reasons.map((one) => one.help),
      log.review.airflow.byPressure.value !== null,
    ),
  };
}

const CHECK = 'Check depth, heights and numbering of the cables’ sensors, and the clock of the fan log.';

const CHECK_AIR = `Check the thermometers of plenum, cables and weather and the fans’ power. ${LOOK_FOR_LEAKS}`;
const CHECK_ROOF = 'Log the air under the roof, from where the fan draws it, or hang a sensor above the grain.';

function misfits({ bin }: BinLog, { unseen, trained }: Told): Doubt[] {
  if (unseen === null || trained === null || unseen.misfit.temperatures === 0) {
    return [
      { why: `The log of ${bin.name} leaves no part to judge a fit by.`, help: 'A longer log of cables and fan.' },
    ];
  }
  const { misfit, persistence } = unseen;
  const out: Doubt[] = [];
  for (const [part, one] of [
    ['on the part of the season that it has not seen', misfit],
    ['on the part of the season that it was fitted to', trained.misfit],
  ] as const) {
    if (one.temperatureK > MOST_K)
      out.push({
        why: `Temperatures of the bed lie ${degreesOverSaid(one.temperatureK, MOST_K)} from the log ${part}; ${degreesSaid(MOST_K)} is the limit.`,
        help: CHECK,
      });
    if (one.moisturePoints > MOST_POINTS)
      out.push({
        why: `Moistures of the bed lie ${overSaid(one.moisturePoints, MOST_POINTS, 2)} points from the log ${part}; ${MOST_POINTS} points is the limit.`,
        help: CHECK,
      });
  }
  if (persistence.temperatureK > MOVED_K && misfit.temperatureK > persistence.temperatureK)
    out.push({ why: 'That the temperatures stay as they were would have been the better forecast.', help: CHECK });
  if (persistence.moisturePoints > MOVED_POINTS && misfit.moisturePoints > persistence.moisturePoints)
    out.push({ why: 'That the moistures stay as they were would have been the better forecast.', help: CHECK });
  return out;
}

function bounds({ bin }: BinLog, { values }: Fit, list: FitParameters['list']): Doubt[] {
  return list.flatMap(({ name, low, high }, k) => {
    // Of exchange with wall, breath, slip and rate a log often says little; a rate without end is a bed in balance with its air.
    if (k === WALL || k === BREATH || k === SLIP || k === RATE) return [];
    const span = high - low;
    if (values[k] > low + AT_BOUND * span && values[k] < high - AT_BOUND * span) return [];
    const ofAir = k === ENTERING && bin.air === 'down' ? CHECK_ROOF : CHECK_AIR;
    const help = k === ENTERING || k === CABLES_K ? ofAir : CHECK;
    return [{ why: `The fitted ${name} stands at the end of what is possible.`, help }];
  });
}
