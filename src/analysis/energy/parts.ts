import { type Estimate, estimate, Z90 } from '../../base/estimate.ts';

/** Money or energy with what is unsure about it: a standard error, and what unknown time could add at most. */
export interface Part {
  value: number;
  sd: number;
  more: number;
}

/** An amount that cannot be less than nothing: half of its interval to either side, and `more` that unknown time could add. */
export function notBelowZero(value: number, half: number, more: number): Estimate {
  return estimate(value, Math.max(0, value - half), value + half + more);
}

/** Errors of different fans are independent; what unknown time could add is added whole to the upper end. */
export function ofParts(parts: readonly Part[]): Estimate {
  const value = parts.reduce((sum, part) => sum + part.value, 0);
  const half = Z90 * Math.hypot(...parts.map((part) => part.sd));
  const more = parts.reduce((sum, part) => sum + part.more, 0);
  return notBelowZero(value, half, more);
}

export function scaledPart({ value, sd, more }: Part, factor: number): Part {
  return { value: value * factor, sd: sd * factor, more: more * factor };
}

/** Of one fan: energy, demand and heat are wrong together. */
export function addParts(parts: readonly (Part | null)[]): Part | null {
  let sum: Part = { value: 0, sd: 0, more: 0 };
  for (const part of parts) {
    if (part === null) return null;
    sum = { value: sum.value + part.value, sd: sum.sd + part.sd, more: sum.more + part.more };
  }
  return sum;
}
