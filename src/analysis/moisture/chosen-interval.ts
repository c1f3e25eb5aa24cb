import { tQuantile } from '../../base/stats/t-quantile.ts';
import { weightedQuantile } from '../../base/stats/weighted.ts';
import { type Choice, type ErrorPart, joinErrors } from './error-part.ts';

/** Into so many equally likely points Student's t is cut: its ends then lie within a hundredth of a standard error. */
const CUTS = 500;

/**
 * The 90 % interval of a value, points, by the causes of its error. A choice between a few answers is no error that is spread
 * about the value: each answer has its own middle, about which all other causes spread, and the interval is from the 5 to
 * the 95 % quantile of that mixture, and at least that of the other causes about the value itself: it holds nine of ten times
 * where the value's own answer is the right one, too. So it is lopsided where the answers lie to one side. Causes with choices
 * are independent of each other.
 */
export function chosenInterval(value: number, parts: readonly ErrorPart[]): [low: number, high: number] {
  const { sd, df, half90 } = joinErrors(parts.filter((part) => part.choices === undefined));
  const answers = parts
    .flatMap((part) => (part.choices === undefined ? [] : [part.choices]))
    .reduce(together, [{ moves: 0, weight: 1 }]);
  if (answers.length === 1) return [value - half90, value + half90];
  const errors = Array.from({ length: CUTS }, (_, i) => sd * tQuantile((i + 0.5) / CUTS, df));
  const middles = answers.flatMap(({ moves }) => errors.map((error) => value + moves + error));
  const weights = answers.flatMap(({ weight }) => errors.map(() => weight));
  return [
    Math.min(value - half90, weightedQuantile(middles, weights, 0.05)),
    Math.max(value + half90, weightedQuantile(middles, weights, 0.95)),
  ];
}

/** Answers to two questions, each answer of the one with each of the other; what their weights leave is that nothing moves. */
function together(known: readonly Choice[], more: readonly Choice[]): Choice[] {
  const still = { moves: 0, weight: 1 - more.reduce((sum, one) => sum + one.weight, 0) };
  return known.flatMap((one) =>
    [still, ...more].map((other) => ({ moves: one.moves + other.moves, weight: one.weight * other.weight })),
  );
}
