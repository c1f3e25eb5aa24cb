import { groupedCount } from './grouped-count.ts';

/** `1 hour`, `2,390 hours`: to the whole hour. */
export function wholeHours(hours: number): string {
  const whole = Math.round(hours);
  return `${groupedCount(whole)} ${whole === 1 ? 'hour' : 'hours'}`;
}
