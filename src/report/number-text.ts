/** A dash stands for a number that cannot be given. */
export const DASH = '–';

/** `-4310.5` with one decimal: `−4,310.5`. Comma and point in every locale; a true minus sign. */
export function grouped(value: number, decimals: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`a number to show must be finite, not ${value}`);
  const [whole, part] = Math.abs(value).toFixed(decimals).split('.');
  const text = whole.replace(/\B(?=(\d{3})+(?!\d))/g, ',') + (part === undefined ? '' : `.${part}`);
  return value < 0 && /[1-9]/.test(text) ? `−${text}` : text;
}

/** How a kind of number is rounded: to so many decimals (of a small number at least `minFigures` figures, and no more than three), or to so many figures and at most so many decimals. */
export type Rounding =
  | { kind: 'decimals'; decimals: number; minFigures?: number }
  | { kind: 'figures'; figures: number; maxDecimals: number }
  // cents below ten, none above: `5.20`, `38`, `1,040`
  | { kind: 'money' }
  // with all its digits, as a constant is published
  | { kind: 'exact' };

/** Place of the first figure: 3 for 4310, -2 for 0.019. Taken after rounding, so that 99.96 counts as 100. */
function magnitude(value: number, figures: number): number {
  if (value === 0) return 0;
  return Number(value.toExponential(figures - 1).split('e')[1]);
}

function exactDecimals(size: number): number {
  const [digits, power = '0'] = String(size).split('e');
  return Math.max(0, (digits.split('.')[1]?.length ?? 0) - Number(power));
}

/** Decimals that show a value under a rounding; negative: tens, hundreds … are rounded away. */
export function decimalsOf(value: number, rounding: Rounding): number {
  const size = Math.abs(value);
  if (rounding.kind === 'exact') return exactDecimals(size);
  if (size === 0 && rounding.kind !== 'decimals') return 0;
  if (rounding.kind === 'money') return size < 9.995 ? 2 : Math.min(0, 2 - magnitude(size, 3));
  if (rounding.kind === 'decimals') {
    if (rounding.minFigures === undefined || size === 0) return rounding.decimals;
    const least = Math.max(rounding.decimals, rounding.minFigures - 1 - magnitude(size, rounding.minFigures));
    return Math.min(least, Math.max(0, 2 - magnitude(size, 3)));
  }
  return Math.min(rounding.maxDecimals, rounding.figures - 1 - magnitude(size, rounding.figures));
}

/** Round half away from zero at a place; `decimals` may be negative. */
export function roundTo(value: number, decimals: number): number {
  const rounded = Number(`${Math.round(Number(`${Math.abs(value)}e${decimals}`))}e${-decimals}`);
  // Values in exponent form cannot take a second exponent as text; they are too small or large to show anyway.
  if (Number.isNaN(rounded)) return Number(value.toFixed(Math.min(100, Math.max(0, decimals))));
  return value < 0 ? -rounded : rounded;
}

/** A number as shown, no unit, rounded to a place; tens and hundreds where `decimals` is negative. */
export function numberText(value: number, decimals: number): string {
  return grouped(roundTo(value, decimals), Math.max(0, decimals));
}
