/** A number with its 90 % interval, or the reason why it cannot be given. */
export interface Estimate {
  value: number | null;
  /** [low, high], 90 % */
  interval: [number, number] | null;
  /** a sentence; not null exactly when value is null */
  why: string | null;
}

export function estimate(value: number, low: number, high: number): Estimate {
  return { value, interval: [low, high], why: null };
}

export function withheld(why: string): Estimate {
  return { value: null, interval: null, why };
}

/** The same number in another measure. @param factor  above 0 */
export function scaled({ value, interval, why }: Estimate, factor: number): Estimate {
  return {
    value: value === null ? null : value * factor,
    interval: interval === null ? null : [interval[0] * factor, interval[1] * factor],
    why,
  };
}

/** The same number with its sign turned: removed told as added. */
export function turned({ value, interval, why }: Estimate): Estimate {
  return {
    value: value === null ? null : -value,
    interval: interval === null ? null : [-interval[1], -interval[0]],
    why,
  };
}

/** Whether a number lies above nothing with its whole interval. */
export function isAboveNothing({ value, interval }: Estimate): boolean {
  return value !== null && value > 0 && (interval?.[0] ?? value) > 0;
}

/** The half-width, in standard deviations, of a two-sided 80 % interval of a normal value: to one side it leaves out one in ten. */
export const Z80 = 1.2815515655446004;
/** The half-width, in standard deviations, of a two-sided 90 % interval of a normal value. */
export const Z90 = 1.6448536269514722;
/** The same for 95 %: `season.yaml` states sensor limits that 95 % keep. */
export const Z95 = 1.959963984540054;
