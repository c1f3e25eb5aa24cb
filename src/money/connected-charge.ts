import type { Zone } from '../base/zone.ts';
import { localMoment } from './local-time.ts';

/**
 * Years of connected-load charge that a season owes: one storage season, one year's charge; a season that runs over
 * twelve months owes one more for each further year that it starts.
 */
export function connectedYears(zone: Zone, fromMs: number, toMs: number): number {
  if (!(toMs > fromMs)) return 1;
  const from = localMoment(zone, fromMs);
  const to = localMoment(zone, toMs - 1);
  const months = (to.year - from.year) * 12 + to.month - from.month;
  const full = months - (to.day < from.day ? 1 : 0);
  return Math.floor(full / 12) + 1;
}
