import { type Estimate, withheld } from '../estimate.ts';

/** How far an estimate may lie below and above its middle. */
function halves({ value, interval }: Estimate): { down: number; up: number } {
  if (value === null || interval === null) return { down: 0, up: 0 };
  return { down: Math.max(0, value - interval[0]), up: Math.max(0, interval[1] - value) };
}

/**
 * The difference of two independent numbers, their errors joined as squares, each side by its own; withheld where one is.
 *
 * @source GUM, JCGM 100:2008, 5.1.2 (uncorrelated inputs)
 */
export function differenceOf(one: Estimate, less: Estimate): Estimate {
  if (one.value === null) return withheld(one.why ?? 'Not known.');
  if (less.value === null) return withheld(less.why ?? 'Not known.');
  const value = one.value - less.value;
  const [a, b] = [halves(one), halves(less)];
  if (one.interval === null && less.interval === null) return { value, interval: null, why: null };
  return { value, interval: [value - Math.hypot(a.down, b.up), value + Math.hypot(a.up, b.down)], why: null };
}

/**
 * The product of two independent numbers at or above zero, their relative errors joined as squares, each side by its own.
 *
 * @source GUM, JCGM 100:2008, 5.1.2 (uncorrelated inputs)
 */
export function productOf(one: Estimate, other: Estimate): Estimate {
  if (one.value === null) return withheld(one.why ?? 'Not known.');
  if (other.value === null) return withheld(other.why ?? 'Not known.');
  const value = one.value * other.value;
  if (one.interval === null && other.interval === null) return { value, interval: null, why: null };
  const [a, b] = [halves(one), halves(other)];
  const [x, y] = [one.value, other.value];
  return {
    value,
    interval: [value - Math.hypot(y * a.down, x * b.down), value + Math.hypot(y * a.up, x * b.up)],
    why: null,
  };
}
