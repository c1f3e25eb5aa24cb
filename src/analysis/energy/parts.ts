import { type Estimate, estimate, Z90 } from '../../base/estimate.ts';

/** Money or energy with what is unsure about it: a standard error, what unknown time could add at most, and what of it may not have been at all. */
export interface Part {
  value: number;
  sd: number;
  more: number;
  /** none where left out */
  less?: number;
}

/** An amount that cannot be less than nothing: half of its interval to either side, `more` that unknown time could add, `less` that may not have been. */
export function notBelowZero(value: number, half: number, more: number, less = 0): Estimate {
  return estimate(value, Math.max(0, value - half - less), value + half + more);
}

/** Errors of different fans are independent; what unknown time could add is added whole to the upper end, what may not have been taken off the lower. */
export function ofParts(parts: readonly Part[]): Estimate {
  const sum = (of: (part: Part) => number) => parts.reduce((all, part) => all + of(part), 0);
  const half = Z90 * Math.hypot(...parts.map((part) => part.sd));
  return notBelowZero(
    sum(({ value }) => value),
    half,
    sum(({ more }) => more),
    sum(lessOf),
  );
}

const lessOf = ({ less }: Part): number => less ?? 0;

export function scaledPart(part: Part, factor: number): Part {
  const { value, sd, more } = part;
  return { value: value * factor, sd: sd * factor, more: more * factor, less: lessOf(part) * factor };
}

/** Of one fan: energy, demand and heat are wrong together. */
export function addParts(parts: readonly (Part | null)[]): Part | null {
  let sum: Part = { value: 0, sd: 0, more: 0, less: 0 };
  for (const part of parts) {
    if (part === null) return null;
    sum = {
      value: sum.value + part.value,
      sd: sum.sd + part.sd,
      more: sum.more + part.more,
      less: lessOf(sum) + lessOf(part),
    };
  }
  return sum;
}
