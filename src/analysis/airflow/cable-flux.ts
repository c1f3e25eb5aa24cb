import { weightedQuantile } from '../../base/stats/weighted.ts';

/** Airflow by one pair of sensors in one window. */
export interface PairFlux {
  window: number;
  /** dry air, kg/(s m2) */
  fluxKgM2S: number;
  /** standard error of its logarithm, all that belongs to this pair alone */
  logSd: number;
}

/** Airflow past one cable. */
export interface CableFlux {
  cable: string;
  fluxKgM2S: number;
  /** standard error of its logarithm by its own readings and heights */
  ownSd: number;
  /** that by the weather of the windows, which leaves all cables of a bin wrong alike */
  weatherSd: number;
  pairs: number;
  windows: number;
}

/** A window's weather leaves this much wrong where nothing else is known (sd of the logarithm), held as firmly as three windows. */
const WINDOW_SD = 0.03;
const WINDOW_DF = 3;
/** A single pair can be off by this much beside its own fit (sd): the sensors' heights, 3 cm a metre. No further window mends them. */
export const PAIR_SD = 0.03;
/** A median is that much less sure than a mean. */
const MEDIAN_LOSS = 1.25;

/**
 * The airflow past a cable from all its pairs of sensors: the weighted median, which a pair or a window that went wrong does
 * not move. What it is unsure by for its own part stands apart from what the windows' weather leaves: that is measured by how
 * windows differ, and is the same for all cables.
 *
 * @returns null where there is no pair
 */
export function cableFlux(cable: string, pairs: readonly PairFlux[]): CableFlux | null {
  if (pairs.length === 0) return null;
  const middleOf = (some: readonly PairFlux[]) =>
    weightedMedian(
      some.map((one) => Math.log(one.fluxKgM2S)),
      some.map((one) => 1 / one.logSd ** 2),
    );
  const middle = middleOf(pairs);
  const numbers = [...new Set(pairs.map((one) => one.window))];
  let squares = WINDOW_DF * WINDOW_SD ** 2;
  let weight = WINDOW_DF;
  let sumWeight = 0;
  let sumSquareWeight = 0;
  for (const number of numbers) {
    const own = pairs.filter((one) => one.window === number);
    // Pairs of one window share its weather and their sensors: they weigh as the best of them does.
    const best = Math.min(...own.map((one) => one.logSd));
    const share = 1 / (best ** 2 + WINDOW_SD ** 2);
    const relative = Math.min(1, (WINDOW_SD ** 2 + PAIR_SD ** 2) * share);
    squares += relative * Math.min(0.5, Math.abs(middleOf(own) - middle)) ** 2;
    // Their middle is told by the same windows: n of them leave n - 1 differences.
    weight += relative * (1 - 1 / numbers.length);
    sumWeight += share;
    sumSquareWeight += share * share;
  }
  const between = Math.sqrt(squares / weight);
  const effective = sumWeight ** 2 / sumSquareWeight;
  const own = Math.min(...pairs.map((one) => one.logSd));
  const fit = Math.sqrt(Math.max(0, own ** 2 - PAIR_SD ** 2));
  return {
    cable,
    fluxKgM2S: Math.exp(middle),
    ownSd: Math.hypot(PAIR_SD, (MEDIAN_LOSS * fit) / Math.sqrt(effective)),
    weatherSd: ((numbers.length > 1 ? MEDIAN_LOSS : 1) * between) / Math.sqrt(effective),
    pairs: pairs.length,
    windows: numbers.length,
  };
}

function weightedMedian(values: readonly number[], weights: readonly number[]): number {
  const low = weightedQuantile(values, weights, 0.5);
  const high = -weightedQuantile(
    values.map((value) => -value),
    weights,
    0.5,
  );
  return (low + high) / 2;
}
