import { type Estimate, estimate, Z90 } from '../../base/estimate.ts';

/** Money or energy with what is unsure about it: a standard error, what unknown time could add at most, and what of it may not have been at all. */
export interface Part {
  value: number;
  sd: number;
  more: number;
  /** none where left out */
  less?: number;
  /** standard error of what is left without it; that of the whole where left out */
  leastSd?: number;
}

/** An amount that cannot be less than nothing: half of its interval to either side, `more` that unknown time could add, `less` that it may have been without. */
export function notBelowZero(value: number, half: number, more: number, less = 0): Estimate {
  return estimate(value, Math.max(0, value - half - less), value + half + more);
}

/**
 * Errors of different fans are independent; what unknown time could add is added whole to the upper end. The lower end is that of
 * the amount without what may not have been, by the errors of what is left: what never was has none.
 */
export function ofParts(parts: readonly Part[]): Estimate {
  const sum = (of: (part: Part) => number) => parts.reduce((all, part) => all + of(part), 0);
  const halfOf = (of: (part: Part) => number) => Z90 * Math.hypot(...parts.map(of));
  const value = sum((part) => part.value);
  const half = halfOf(({ sd }) => sd);
  const low = Math.min(value - half, value - sum(lessOf) - halfOf(leastSdOf));
  return estimate(value, Math.max(0, low), value + half + sum(({ more }) => more));
}

const lessOf = ({ less }: Part): number => less ?? 0;
const leastSdOf = ({ sd, leastSd }: Part): number => leastSd ?? sd;

export function scaledPart(part: Part, factor: number): Part {
  const { value, sd, more } = part;
  return {
    value: value * factor,
    sd: sd * factor,
    more: more * factor,
    less: lessOf(part) * factor,
    leastSd: leastSdOf(part) * factor,
  };
}

/** Of one fan: energy, demand and heat are wrong together. */
export function addParts(parts: readonly (Part | null)[]): Part | null {
  let sum: Part = { value: 0, sd: 0, more: 0, less: 0, leastSd: 0 };
  for (const part of parts) {
    if (part === null) return null;
    sum = {
      value: sum.value + part.value,
      sd: sum.sd + part.sd,
      more: sum.more + part.more,
      less: lessOf(sum) + lessOf(part),
      leastSd: leastSdOf(sum) + leastSdOf(part),
    };
  }
  return sum;
}
