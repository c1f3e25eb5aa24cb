import type { ReadGrid } from '../read-grid.ts';
import type { LocalSpan } from './time-axis.ts';

const DAY_MS = 86_400_000;
const HOUR_MS = 3_600_000;

/** What the middle of each local hour was, by date and hour of the day, to be read out; later kinds win where they meet. */
export function hourGrid(
  span: LocalSpan,
  kinds: readonly { word: string; spans: readonly LocalSpan[] }[],
  none: string,
  name?: string,
): ReadGrid {
  const fromMs = Math.floor(span.fromMs / DAY_MS) * DAY_MS;
  const count = Math.ceil((span.toMs - fromMs) / DAY_MS);
  const values = new Float64Array(24 * count).fill(Number.NaN);
  kinds.forEach(({ spans }, kind) => {
    for (const { fromMs: start, toMs: end } of spans) {
      const first = Math.max(0, Math.ceil((start - fromMs) / HOUR_MS - 0.5));
      for (let hour = first; hour < 24 * count && fromMs + (hour + 0.5) * HOUR_MS < end; hour++) {
        values[hour] = kind;
      }
    }
  });
  return {
    name,
    columns: { fromMs, stepMs: DAY_MS, count },
    rows: Array.from({ length: 24 }, (_, hour) => ({ label: `${hour}:00`, low: hour / 24, high: (hour + 1) / 24 })),
    byColumn: true,
    hours: true,
    say: '$0',
    none,
    layers: [{ values, decimals: 0, words: kinds.map(({ word }) => word) }],
  };
}
