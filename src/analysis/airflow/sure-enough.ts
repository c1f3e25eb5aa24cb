import { type Estimate, estimate, withheld } from '../../base/estimate.ts';
import { mixtureDensity } from '../../base/stats/normal-mixture.ts';
import type { FrontAirflowFound } from './airflow-by-front.ts';
import type { Bearing } from './bearings.ts';
import { flowRangeSaid } from './flow-range-said.ts';

/** No airflow is shown that may well be off by more than this share of the true one. */
const MOST_OFF = 0.2;
/** The chance of that which is let pass; most of the numbers shown run far less. */
const MOST_CHANCE = 1 / 25;
/** Truths that are looked at, logarithm over the one told. */
const REACH = 1;
const STEP = 0.005;
const TRUTHS = Float64Array.from({ length: Math.round((2 * REACH) / STEP) + 1 }, (_, i) => i * STEP - REACH);

/**
 * The airflow by fronts as it is shown. What else bears on it (static pressure, the fans' power) says which published constants go
 * for this lot, and how likely the number is more than 20 % off: where that is more than one in twenty-five it is not shown, and the
 * reason tells the interval by fronts alone and what makes it wide.
 *
 * @param front     by its timing alone
 * @param volumeM3  of the grain
 */
export function sureEnough(
  { rangeM3S, errors, parts }: Pick<FrontAirflowFound, 'rangeM3S' | 'errors' | 'parts'>,
  bearings: readonly Bearing[],
  volumeM3: number,
): Estimate {
  const { value, interval } = rangeM3S;
  if (value === null || interval === null || errors === null) return rangeM3S;
  const shown = borneOut(value, errors, bearings);
  if (shown !== null && shown.chance <= MOST_CHANCE) return shown.flowM3S;
  const most = parts.reduce((worst, one) => (one.relSd > worst.relSd ? one : worst));
  const chanceBy = (some: readonly Bearing[]) => borneOut(value, errors, some)?.chance ?? 1;
  const against = bearings.filter((one) => chanceBy([one]) > MOST_CHANCE);
  const doubt =
    chanceBy([]) <= MOST_CHANCE && against.length > 0
      ? `Against it speaks ${against.map((one) => one.name).join(' and ')}.`
      : `The largest doubt: ${most.cause}.`;
  return withheld(
    `Fronts leave ${flowRangeSaid(interval, volumeM3)} open: any one number could be more than ${100 * MOST_OFF} % off. ${doubt}`,
  );
}

/**
 * The airflow with its answers weighed anew, its 90 % interval and the chance that it is more than 20 % off; null where what bears
 * on it leaves no airflow.
 *
 * @param flowM3S  with the answers as they are weighed beforehand
 */
export function borneOut(
  flowM3S: number,
  { answers, sd }: NonNullable<FrontAirflowFound['errors']>,
  bearings: readonly Bearing[],
): { flowM3S: Estimate; chance: number } | null {
  const likely = TRUTHS.map((x) => bearings.reduce((product, one) => product * one.at(flowM3S * Math.exp(x)), 1));
  const weights = answers.map((answer) =>
    sum(likely.map((share, i) => share * mixtureDensity(TRUTHS[i], [answer], sd))),
  );
  const all = sum(weights);
  if (!(all > 0)) return null;
  const told = sum(answers.map(({ at }, k) => (weights[k] / all) * at));
  const shares = likely.map((share, i) => share * mixtureDensity(TRUTHS[i], answers, sd));
  const total = sum(shares);
  const quantile = (p: number) => {
    let [i, below] = [0, shares[0]];
    while (below < p * total) below += shares[++i];
    return TRUTHS[i];
  };
  const off = shares.filter((_, i) => Math.abs(Math.exp(told - TRUTHS[i]) - 1) > MOST_OFF);
  const value = flowM3S * Math.exp(told);
  const [low, high] = [quantile(0.05), quantile(0.95)].map((x) => flowM3S * Math.exp(x));
  return { flowM3S: estimate(value, Math.min(low, value), Math.max(high, value)), chance: sum(off) / total };
}

const sum = (values: ArrayLike<number>): number => Array.from(values).reduce((all, value) => all + value, 0);
