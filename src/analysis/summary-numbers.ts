import type { Estimate } from '../base/estimate.ts';
import { fileDigits } from '../base/file-digits.ts';

/** A number at the figures that files carry; null where there is none. */
export function plain(value: number | null | undefined, scale = 1): number | null {
  return value === null || value === undefined || !Number.isFinite(value) ? null : fileDigits(value * scale);
}

export function pair(interval: readonly [number, number] | null | undefined, scale = 1): [number, number] | null {
  if (interval === null || interval === undefined) return null;
  const [low, high] = interval;
  return Number.isFinite(low) && Number.isFinite(high) ? [fileDigits(low * scale), fileDigits(high * scale)] : null;
}

/** `x` and `xInterval` of an estimate. */
export function both<Name extends string>(
  name: Name,
  of: Estimate,
): { [Key in Name]: number | null } & { [Key in `${Name}Interval`]: [number, number] | null } {
  return { [name]: plain(of.value), [`${name}Interval`]: pair(of.interval) } as never;
}

/** A block's own sentences, and the reasons of its missing numbers as far as those do not tell them; null where nothing is missing. */
export function reason(own: string | null, ...numbers: readonly Estimate[]): string | null {
  let told = own;
  for (const { value, why } of numbers) {
    if (value !== null || why === null || told?.includes(why)) continue;
    told = told === null ? why : `${told} ${why}`;
  }
  return told;
}
