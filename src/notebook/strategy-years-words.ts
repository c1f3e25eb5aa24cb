import type { Factor, HeldBack, YearsHeldBack } from '../analysis/strategies/held-back.ts';
import type { YearAir } from '../analysis/strategies/held-back-run.ts';
import { reachedDay } from '../analysis/strategies/reached-day.ts';
import type { Units } from '../report/units.ts';
import { capital, counted } from './words.ts';

/** A factor is named as a cause where it alone makes so many times the days, and as the same within so much. Our choice. */
const TELLING = 1.05;

/** Why one year was slower than the best: what the rule and the air gave, largest first. */
export function yearSaid(held: HeldBack, best: YearAir, units: Units): string {
  const { air, slower, times, water } = held;
  const until = untilSaid(held, best, units);
  const causes = (Object.keys(times) as Factor[]).filter((factor) => times[factor] >= TELLING);
  causes.sort((a, b) => times[b] - times[a]);
  const said = causes.map((factor) => causeSaid(factor, air, best, times[factor], units));
  const kept = sameSaid(times, air, best, units);
  const more =
    water >= TELLING
      ? [`${units.say('share of difference', water - 1)} more water came out, as it dried farther next to the floor`]
      : [];
  const reasons = [...said, ...more];
  if (reasons.length === 0) {
    return slower >= TELLING
      ? `${until}; several small things add up.`
      : `${until}; its air and hours hardly differed.`;
  }
  return `${until}: ${reasons.join('; ')}${kept === '' ? '' : `; ${kept}`}.`;
}

function untilSaid({ air, days, late, water }: HeldBack, best: YearAir, units: Units): string {
  const took = days === null ? 'did not get there' : `took ${counted(Math.round(days), 'day')}`;
  const more = Math.round((days ?? 0) - best.days);
  const over = more < 1 ? `as many as ${best.weather}` : `${more} more than ${best.weather}`;
  const said = `${air.weather} ${took}${days === null ? '' : `, ${over}`}`;
  if (!late) return said;
  return `${said}; by as many days as ${best.weather} took, ${units.say('share of difference', water)} of that year’s water was out`;
}

function causeSaid(factor: Factor, air: YearAir, best: YearAir, times: number, units: Units): string {
  const less = units.say('share of difference', 1 - 1 / times);
  switch (factor) {
    case 'hours':
      return `the fan could run only ${units.number('hours', air.hoursPerDay)} hours a day in place of ${units.number('hours', best.hoursPerDay)}`;
    case 'warmth':
      return `the fan’s air at ${units.say('temperature', air.plenumC)} in place of ${units.say('temperature', best.plenumC)} carries ${less} less water`;
    case 'dryness':
      return `the air was nearer to balance with the grain (${units.say('moisture', air.plenumEmcWb)} in place of ${units.say('moisture', best.plenumEmcWb)}), so it could take ${less} less`;
    case 'use':
      return `of what it could take the air took ${less} less, as grain dried by then gives less or takes water back, or had to be warmed first`;
  }
}

/** What did not differ, where a reader would suspect it. */
function sameSaid({ hours, warmth }: HeldBack['times'], air: YearAir, best: YearAir, units: Units): string {
  const parts: string[] = [];
  // A rule by the clock gives every year the same: nobody would ask.
  const byClock = Math.abs(hours - 1) < 0.01;
  if (!byClock && hours < TELLING && hours > 1 / TELLING) parts.push('it ran for as many hours a day');
  else if (hours <= 1 / TELLING)
    parts.push(
      `it ran for more hours a day (${units.number('hours', air.hoursPerDay)} in place of ${units.number('hours', best.hoursPerDay)})`,
    );
  if (warmth < TELLING) {
    const word = warmth > 1 / TELLING ? 'as warm' : 'warmer';
    parts.push(
      `the air was ${word} (${units.say('temperature', air.plenumC)} and ${units.say('temperature', best.plenumC)})`,
    );
  }
  return parts.join('; ');
}

/** The best year of a rule in one clause. */
export function bestSaid(title: string, { best }: YearsHeldBack, units: Units): string {
  if (best === null) return `${title}: no year can be told`;
  if (!best.reached || best.reachedMs === null) return `${title} got there in no year`;
  return `${capital(title)} was done first in ${best.weather}, on ${units.date(reachedDay(best.reachedMs))}`;
}
