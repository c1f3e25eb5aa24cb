/** Share of the hour that lies between two times of day, hours; from > to runs across midnight. */
export function withinClock(localHour: number, from: number, to: number): number {
  if (from <= to) return overlap(localHour, from, to);
  return overlap(localHour, from, 24) + overlap(localHour, 0, to);
}

function overlap(hour: number, from: number, to: number): number {
  return Math.max(0, Math.min(hour + 1, to) - Math.max(hour, from));
}
