import { median } from '../../base/stats/quantile.ts';
import type { RateDay } from './moisture-rates-types.ts';

/** Days whose fan hours differ by less are one rest of the fan, read several times. */
const ONE_REST_H = 1;

/** Days of one rest as one: the middle of what they read. */
export function restsOf(days: readonly RateDay[]): RateDay[] {
  const groups: RateDay[][] = [];
  for (const day of days) {
    const last = groups.at(-1);
    if (last !== undefined && day.fanHours - last[0].fanHours < ONE_REST_H) last.push(day);
    else groups.push([day]);
  }
  return groups.map((group) => {
    const middle = (of: (day: RateDay) => number) => median(group.map(of));
    return {
      dayMs: group[0].dayMs,
      fanHours: middle((day) => day.fanHours),
      points: middle((day) => day.points),
      low: middle((day) => day.low),
      high: middle((day) => day.high),
      stillAir: group.every((day) => day.stillAir),
    };
  });
}
