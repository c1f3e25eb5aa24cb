import { fanGroups } from '../analysis/energy/fan-groups.ts';
import { hoursTogether } from '../analysis/energy/hours-together.ts';
import { fanHoursBetween } from '../analysis/fan/spans.ts';
import type { BinReview } from '../analysis/types.ts';
import { type Estimate, withheld } from '../base/estimate.ts';
import { localMonths } from '../money/local-time.ts';
import { monthText } from '../report/date-text.ts';
import type { Units } from '../report/units.ts';
import { knownTotal } from './words.ts';

/** A number as it stands; a missing one stays missing. */
export const plain = (value: number | null): Estimate =>
  value === null ? withheld('No tariff prices these fans.') : { value, interval: null, why: null };

/** The month on which most of the fans' money, else of their hours, fell; null where no fan ran. */
export function dearestMonth(bins: readonly BinReview[], units: Units): string | null {
  const all = bins.flatMap(({ fan }) => fan.months);
  const months = [...new Set(all.map(({ month }) => month))].map((month) => {
    const of = all.filter((one) => one.month === month);
    const money = knownTotal(
      of.flatMap((one) => [
        one.told?.energyCost ?? plain(one.energyCost),
        one.told?.demandCost ?? plain(one.demandCost),
      ]),
    );
    return { month, money: money.total, hours: hoursIn(month, bins, units) };
  });
  const top = (pick: (one: (typeof months)[number]) => number | null) =>
    months.filter((one) => (pick(one) ?? 0) > 0).sort((a, b) => Number(pick(b)) - Number(pick(a)))[0];
  const dear = top((one) => one.money.value);
  if (dear !== undefined)
    return `The dearest month was ${monthText(dear.month)}: ${units.say('money', dear.money)} of energy and demand.`;
  const long = top((one) => one.hours.value);
  return long === undefined
    ? null
    : `The fans ran most in ${monthText(long.month)}: ${units.say('hours', long.hours)}.`;
}

/** Fan hours of a month, those of a fan that several bins share once. */
function hoursIn(month: string, bins: readonly BinReview[], units: Units): Estimate {
  const parts = fanGroups(bins).map((group): Estimate => {
    const of = group[0].fan.months.find((one) => one.month === month);
    if (group.length === 1) return of === undefined ? withheld('Not in its log.') : (of.told?.hours ?? plain(of.hours));
    const { spans } = hoursTogether(group);
    if (spans === null) return withheld(group[0].fan.hours.why ?? 'Not known.');
    const all = localMonths(units.zone, spans.startMs[0], spans.endMs[spans.endMs.length - 1]);
    const span = all.find((one) => one.month === month);
    return plain(span === undefined ? 0 : fanHoursBetween(spans, span.fromMs, span.toMs));
  });
  return knownTotal(parts).total;
}
