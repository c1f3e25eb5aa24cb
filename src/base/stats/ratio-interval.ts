import { type Estimate, estimate, withheld } from '../estimate.ts';

/**
 * A ratio of two independent numbers with the interval that joins the errors of both.
 *
 * Its ends are the ratios r for which top - r * bottom could be zero, (top - r bottom)^2 = hTop^2 + r^2 hBottom^2, with the
 * half-widths h on the sides that make the ratio smaller, then larger: a lopsided interval stays lopsided, so that a cost
 * that is unsure upwards alone is not told as one that may be below zero. Where the interval of `bottom` could reach zero
 * there is no bounded answer, and the ratio is withheld.
 *
 * @param top, bottom  with their 90 % intervals; no interval counts as known exactly
 * @param whyNot       the sentence to give where `bottom` cannot be told from zero
 * @source  E. C. Fieller, Some problems in interval estimation, J. Royal Statistical Society B 16 (1954), 175-185; each side
 *          by its own half-width: A. Donner, G. Y. Zou, Statistical Methods in Medical Research 21 (2012), 347-359 (from memory)
 */
export function ratioInterval(top: Estimate, bottom: Estimate, whyNot: string): Estimate {
  if (top.value === null) return withheld(top.why ?? whyNot);
  if (bottom.value === null) return withheld(bottom.why ?? whyNot);
  const over = halves(top);
  const under = halves(bottom);
  const sign = Math.sign(bottom.value);
  // Only the side towards zero can reach it; how far the other goes bounds the ratio all the more.
  if (!(Math.abs(bottom.value) > (sign > 0 ? under.down : under.up))) return withheld(whyNot);
  const ratio = top.value / bottom.value;
  const end = (side: -1 | 1): number => {
    const topHalf = side * sign < 0 ? over.down : over.up;
    // A larger bottom brings the ratio nearer to zero, and an end beyond zero back to it.
    const nearer = side * ratio < 0 && topHalf <= Math.abs(Number(top.value));
    const bottomHalf = nearer === sign > 0 ? under.up : under.down;
    // Below zero where the far side is longer than the number itself: the root wanted is the same one.
    const square = Number(bottom.value) ** 2 - bottomHalf ** 2;
    const product = Number(top.value) * Number(bottom.value);
    const spread = side * Math.sqrt(Math.max(0, topHalf ** 2 * square + Number(top.value) ** 2 * bottomHalf ** 2));
    // Two forms of one root: that which adds loses no digits, and none where the square is zero.
    if (product * spread > 0) return (product + spread) / square;
    return product === spread ? ratio : (Number(top.value) ** 2 - topHalf ** 2) / (product - spread);
  };
  return estimate(ratio, Math.min(ratio, end(-1)), Math.max(ratio, end(1)));
}

function halves({ value, interval }: Estimate): { down: number; up: number } {
  if (value === null || interval === null) return { down: 0, up: 0 };
  return { down: Math.max(0, value - interval[0]), up: Math.max(0, interval[1] - value) };
}
