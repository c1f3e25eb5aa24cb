import type { BinReview } from '../analysis/types.ts';
import { type Estimate, withheld } from '../base/estimate.ts';

/** `a`, `a and b`, `a, b and c`. */
export function listed(items: readonly string[]): string {
  if (items.length < 2) return items.join('');
  return `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
}

/** `1 bin`, `3 bins`, `no bins`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  if (count === 0) return `no ${many}`;
  return `${String(count).replace(/\B(?=(\d{3})+$)/g, ',')} ${count === 1 ? one : many}`;
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Ends a reason as a sentence. */
export function sentence(text: string): string {
  return /[.!?]$/.test(text) ? text : `${text}.`;
}

/** The estimate if it has a value, else null: to filter by. */
export function known(of: Estimate): (Estimate & { value: number }) | null {
  return of.value === null ? null : (of as Estimate & { value: number });
}

/** Sum of the values that are known, its interval when all parts have one and are independent, and how many are lacking. */
export function sumKnown(parts: readonly Estimate[]): { sum: number; known: number; lacking: number } {
  const values = parts.map((part) => part.value).filter((value): value is number => value !== null);
  return { sum: values.reduce((a, b) => a + b, 0), known: values.length, lacking: parts.length - values.length };
}

/**
 * The sum of estimates with its interval, withheld when a part is. The parts' errors are taken as going the same way
 * (one kind of meter, one bill), which makes the widest honest interval.
 */
export function totalEstimate(parts: readonly Estimate[]): Estimate {
  const lacking = parts.filter((part) => part.value === null);
  if (parts.length === 0) return withheld('There is no bin.');
  if (lacking.length > 0) return withheld(lacking[0].why ?? 'Not known of every bin.');
  const end = (at: 0 | 1) => parts.reduce((sum, part) => sum + (part.interval?.[at] ?? part.value ?? 0), 0);
  const value = parts.reduce((sum, part) => sum + (part.value ?? 0), 0);
  return { value, interval: parts.some((part) => part.interval !== null) ? [end(0), end(1)] : null, why: null };
}

/** Bins that broke, as warnings. */
export function brokenBins(bins: readonly BinReview[]): string[] {
  return bins
    .filter((one) => one.failure !== null)
    .map((one) => `${one.bin.name} could not be worked out whole: ${sentence(one.failure ?? '')}`);
}
