import type { Season } from '../../season/season.ts';
import type { BinReview } from '../types.ts';
import { mostWaterKg } from './most-water.ts';

/** Half a point, kg of water a kg of dry matter: so much sensors drift, or grain dries by its vents, without a fan; own judgement. */
const DRIFT = 0.007;

/**
 * Why a bin's fan log cannot be whole: by every way that tells it more water left than its fans could carry off. A sentence; null where
 * nothing speaks against it.
 */
export function impossibleDrying(review: BinReview, season: Pick<Season, 'fans'>): string | null {
  const { bin, fan, water, grain } = review;
  const told = [water.bySensors, water.byTickets].flatMap(({ interval }) => (interval === null ? [] : [interval[0]]));
  const most = mostWaterKg(
    review,
    season.fans.filter(({ id }) => bin.fanIds.includes(id)),
  );
  if (told.length === 0 || most === null || fan.hours.value === null) return null;
  const least = Math.min(...told) - DRIFT * (grain.dryMatterKg ?? 0);
  if (!(least > most)) return null;
  const hours = (value: number) => `${Number(value.toPrecision(3))} h`;
  const times = most > 0 ? `at least ${Number((least / most).toPrecision(2))} times the` : 'more';
  const shared = bin.fanIds.length > 1 ? 'fans' : 'fan';
  return `${bin.name} lost ${times} water${most > 0 ? ' that its' : ' than its'} ${shared} could have carried off at the very most in the ${hours(fan.hours.value)} (no more than ${hours(fan.hours.interval?.[1] ?? fan.hours.value)}) of the log, so the fan log is most likely wrong: it leaves out most of the hours. What the fans did, and what it cost, is not known. Check the fan log first, then the moistures.`;
}
