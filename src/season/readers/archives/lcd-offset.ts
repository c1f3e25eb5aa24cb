const DAY_MS = 86_400_000;
const HALF_HOUR_MS = 1_800_000;
/** METAR text: station, then day of month, hour and minute in UTC (WMO-No. 306, FM 15). */
const METAR_TIME = /\b(?:METAR|SPECI) (?:COR )?[A-Z][A-Z0-9]{3} (\d{2})(\d{2})(\d{2})Z/;

const LEAST = 5;
const MOST = 1000;

/**
 * Local standard time minus UTC of a station, from the reports themselves: each carries its METAR text with the time in UTC.
 *
 * @param rows  local stamp (ms as if UTC) and remarks
 * @returns     ms; null where too few say it, or they do not agree
 */
export function lcdOffsetMs(rows: Iterable<{ localMs: number; remarks: string }>): number | null {
  const counts = new Map<number, number>();
  let seen = 0;
  for (const { localMs, remarks } of rows) {
    const match = METAR_TIME.exec(remarks);
    if (match === null) continue;
    const [day, hour, minute] = match.slice(1).map(Number);
    const midnight = Math.floor(localMs / DAY_MS) * DAY_MS;
    for (const shift of [-1, 0, 1]) {
      const utcDay = midnight + shift * DAY_MS;
      if (new Date(utcDay).getUTCDate() !== day) continue;
      const offset = localMs - (utcDay + (hour * 60 + minute) * 60_000);
      const rounded = Math.round(offset / HALF_HOUR_MS) * HALF_HOUR_MS;
      counts.set(rounded, (counts.get(rounded) ?? 0) + 1);
      seen += 1;
    }
    if (seen >= MOST) break;
  }
  const [most] = [...counts].sort((a, b) => b[1] - a[1]);
  return most !== undefined && most[1] >= LEAST && most[1] >= 0.8 * seen ? most[0] : null;
}
