import { type Estimate, estimate, withheld } from '../estimate.ts';

/**
 * A ratio of two independent numbers with the interval that joins the errors of both.
 *
 * The ratios r for which top - r * bottom could be zero, that is (top - r bottom)^2 <= hTop^2 + r^2 hBottom^2 with the
 * half-widths h of both intervals: the roots of a quadratic. Where the interval of `bottom` reaches zero there is no
 * bounded answer, and the ratio is withheld.
 *
 * @param top, bottom  with their 90 % intervals; no interval counts as known exactly
 * @param whyNot       the sentence to give where `bottom` cannot be told from zero
 * @source  E. C. Fieller, Some problems in interval estimation, J. Royal Statistical Society B 16 (1954), 175-185
 */
export function ratioInterval(top: Estimate, bottom: Estimate, whyNot: string): Estimate {
  if (top.value === null) return withheld(top.why ?? whyNot);
  if (bottom.value === null) return withheld(bottom.why ?? whyNot);
  const topHalf = halfWidth(top);
  const bottomHalf = halfWidth(bottom);
  const square = bottom.value ** 2 - bottomHalf ** 2;
  if (!(square > 0)) return withheld(whyNot);
  const middle = (top.value * bottom.value) / square;
  const spread = Math.sqrt(Math.max(0, topHalf ** 2 * square + top.value ** 2 * bottomHalf ** 2)) / square;
  return estimate(top.value / bottom.value, middle - spread, middle + spread);
}

/** The farther end counts, so that a lopsided interval is never told narrower than it is. */
function halfWidth({ value, interval }: Estimate): number {
  if (value === null || interval === null) return 0;
  return Math.max(interval[1] - value, value - interval[0], 0);
}
