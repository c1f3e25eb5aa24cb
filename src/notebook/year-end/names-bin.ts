/** Whether a text names a bin: `Bin 10` does not name Bin 1, nor `1,500` bin 1. */
export function namesBin(text: string, name: string): boolean {
  const literal = name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
  return new RegExp(`(?<![\\p{L}\\p{N}]|\\d[.,])${literal}(?![\\p{L}\\p{N}]|[.,]\\d)`, 'u').test(text);
}
