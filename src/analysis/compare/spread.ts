import { type Estimate, estimate } from '../../base/estimate.ts';
import type { CostParts, UnsureParts } from './cost-parts.ts';

/**
 * A number worked out from the parts of one bin or several, with its 90 % interval: each cause is moved to its ends while
 * the others stay, the changes are added as squares (errors) or whole (unknown time), to each side apart.
 *
 * @param bins  [bins], independent of each other
 * @param of    from the parts of the bins, in their order
 */
export function spreadOf(bins: readonly UnsureParts[], of: (...parts: CostParts[]) => number): Estimate {
  const middle = bins.map((bin) => bin.middle);
  const value = of(...middle);
  const squares = { down: 0, up: 0 };
  const whole = { down: 0, up: 0 };
  bins.forEach(({ unsure }, b) => {
    for (const cause of unsure) {
      const changes = [cause.low, cause.high].map((parts) => of(...middle.with(b, parts)) - value);
      const down = Math.max(0, -Math.min(...changes));
      const up = Math.max(0, ...changes);
      if (cause.whole) {
        whole.down += down;
        whole.up += up;
      } else {
        squares.down += down ** 2;
        squares.up += up ** 2;
      }
    }
  });
  return estimate(value, value - Math.sqrt(squares.down) - whole.down, value + Math.sqrt(squares.up) + whole.up);
}

/** The same for a number above zero: worked out on its logarithm, so that no end falls below zero and ratios turn round with their bins. */
export function spreadOfPositive(bins: readonly UnsureParts[], of: (...parts: CostParts[]) => number): Estimate {
  const { value, interval } = spreadOf(bins, (...parts) => Math.log(of(...parts)));
  const [low, high] = interval ?? [Number(value), Number(value)];
  return estimate(of(...bins.map((bin) => bin.middle)), Math.exp(low), Math.exp(high));
}
