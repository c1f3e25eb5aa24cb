/** A number as archives write it, exponent allowed; NaN for any other text. */
export function plainNumber(text: string): number {
  return /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/.test(text) ? Number(text) : Number.NaN;
}
