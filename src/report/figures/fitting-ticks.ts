import { groupedCount } from '../../base/grouped-count.ts';
import { SIGN_WIDTH } from './spaced-labels.ts';

/**
 * How many ticks to ask for on an axis of numbers, so that the labels of those that come do not run into each other. Asked for n, the axis takes
 * the step of 1, 2 or 5 times a power of ten whose ratio to the span's n-th is nearest, so that up to half as many again may come.
 *
 * @param most      no more than so many are asked for
 * @param lengthPx  of the axis
 * @param typePx    size of the type
 * @param label     of a value, as the axis will write it
 */
export function fittingTicks(
  [low, high]: readonly [number, number],
  most: number,
  lengthPx: number,
  typePx: number,
  label: (value: number) => string = groupedCount,
): number {
  if (!(high > low)) return most;
  for (let count = most; count > 2; count--) {
    const step = tickStep((high - low) / count);
    const ends = [Math.ceil(low / step) * step, Math.floor(high / step) * step];
    const widest = Math.max(...ends.map((end) => label(end).length)) * SIGN_WIDTH * typePx;
    if (widest + typePx / 2 <= (step / (high - low)) * lengthPx) return count;
  }
  return 2;
}

/** The round step nearest to an n-th of the span, by ratio. */
function tickStep(part: number): number {
  const power = 10 ** Math.floor(Math.log10(part));
  const ratio = part / power;
  return power * (ratio >= Math.sqrt(50) ? 10 : ratio >= Math.sqrt(10) ? 5 : ratio >= Math.SQRT2 ? 2 : 1);
}
