import type { FanSpans } from '../types.ts';
import { type AgainstPlenum, pressureSeen } from './against-plenum.ts';
import { middle } from './usual-interval.ts';

/** A pressure at rest that lasts less may be a wire that drops out, longer a sensor that died and was mended, h; own judgement. */
const REST_HOURS = [4, 7 * 24] as const;
/** Fewer rests are no pressure that rises and falls; own judgement. */
const LEAST_RESTS = 3;
/** A fan at rest leaves no more than this, Pa, or than this share of the pressure at work: half speed or one of two fans makes more; own judgement. */
const IDLE_PA = 10;
const IDLE_SHARE = 0.05;

/**
 * Fan hours by the plenum and by the log (`againstPlenum`), where the log may say too much. A plenum's sensor dies too, and then
 * shows rest, so that rest counts only where the pressure rose before and after: between two stretches of work, for hours and not
 * for weeks, several times, and with no more pressure than a bin at rest has.
 *
 * @returns null where the pressure does not clearly live
 */
export function beyondPlenum(
  timeMs: Float64Array,
  pressurePa: Float64Array,
  flags: ArrayLike<number>,
  spans: FanSpans,
): AgainstPlenum | null {
  const seen = pressureSeen(timeMs, pressurePa, flags, spans);
  if (seen === null) return null;
  const { hours, living, on, pascal, above, usualPa } = seen;
  const works = Uint8Array.from(pascal, (pa, i) => (living[i] === 1 && pa >= above ? 1 : 0));
  const rests = restsBetween(works, living, hours);
  const hoursOn = (i: number) => (on[i] === 1 ? hours[i] : 0);
  const against = rests.filter((rest) => rest.some((i) => on[i] === 1));
  const idle = against.flatMap((rest) => rest.filter((i) => on[i] === 1));
  if (rests.length < LEAST_RESTS) return null;
  if (idle.length > 0 && middle(Float64Array.from(idle, (i) => pascal[i])) > Math.max(IDLE_PA, IDLE_SHARE * usualPa))
    return null;
  const worked = [...works.keys()].filter((i) => works[i] === 1);
  const sum = (of: readonly number[]) => of.reduce((all, i) => all + hoursOn(i), 0);
  return {
    plenumHours: worked.reduce((all, i) => all + hours[i], 0),
    logHours: sum(worked) + sum(rests.flat()),
  };
}

/** Readings of each rest that lies between two readings of work. */
function restsBetween(works: Uint8Array, living: Uint8Array, hours: Float64Array): number[][] {
  const rests: number[][] = [];
  for (let from = works.indexOf(1); from >= 0; ) {
    const to = works.indexOf(1, from + 1);
    if (to < 0) break;
    const rest = Array.from({ length: to - from - 1 }, (_, k) => from + 1 + k);
    const long = rest.reduce((sum, i) => sum + hours[i], 0);
    if (long >= REST_HOURS[0] && long <= REST_HOURS[1] && rest.every((i) => living[i] === 1)) rests.push(rest);
    from = to;
  }
  return rests;
}
