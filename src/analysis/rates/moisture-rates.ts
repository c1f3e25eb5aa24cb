import { type Estimate, scaled, turned, withheld } from '../../base/estimate.ts';
import { ratioInterval } from '../../base/stats/ratio-interval.ts';
import { zoneOf } from '../../base/zone.ts';
import { localMonths } from '../../money/local-time.ts';
import type { BinFan, BinMoisture } from '../types.ts';
import type { MoistureRates, RateDay, RatePeriod } from './moisture-rates-types.ts';
import { changeErrors, rateDays } from './rate-days.ts';
import { rateOfDays } from './rate-of-days.ts';

const ZERO = 'The rate may be zero, so there is no number of hours for a point.';

/** How fast a bin's fans changed its moisture: from start to end, by a line through all days, and month by month. */
export function moistureRates(fan: BinFan, moisture: BinMoisture, timeZone: string): MoistureRates {
  const days = rateDays(moisture);
  const hours = fan.hours.value;
  const season = hours === null ? null : period('season', hours, 0, 0, moisture.perHundredFanHours, fan.energyKwh);
  if (days.length < 2) {
    return {
      season,
      line: null,
      months: [],
      days,
      notes: [],
      why: moisture.why ?? 'No two days have a mean moisture from the cables, so there is no rate by period.',
    };
  }
  const errors = changeErrors(moisture);
  const zone = zoneOf(timeZone);
  const seasonMs = Math.max(1, days[days.length - 1].dayMs - days[0].dayMs);
  const part = (of: readonly RateDay[]) => (of.length < 2 ? 0 : (of[of.length - 1].dayMs - of[0].dayMs) / seasonMs);
  const rowOf = (key: string, of: readonly RateDay[], fanHours: number, energyKwh: number): RatePeriod => {
    const rate = rateOfDays(of, errors, part(of));
    return period(key, fanHours, rate.days, rate.stillDays, rate.perHundredFanHours, withErrorOf(fan, energyKwh));
  };
  const between = (fromMs: number, toMs: number) => days.filter((day) => day.dayMs >= fromMs && day.dayMs < toMs);
  const months = localMonths(zone, days[0].dayMs, days[days.length - 1].dayMs + 1).flatMap(
    ({ month, fromMs, toMs }) => {
      const told = fan.months.find((one) => one.month === month);
      return told === undefined || !(told.hours > 0)
        ? []
        : [rowOf(month, between(fromMs, toMs), told.hours, told.energyKwh)];
    },
  );
  return {
    season,
    line: hours === null ? null : rowOf('line', days, hours, fan.energyKwh.value ?? Number.NaN),
    months,
    days,
    notes: notesOf(days),
    why: null,
  };
}

/** A part's energy is as unsure as the whole. */
function withErrorOf({ energyKwh }: BinFan, kwh: number): Estimate {
  const { value, interval, why } = energyKwh;
  if (value === null || interval === null || !(value > 0)) return withheld(why ?? 'The energy is not known.');
  return { value: kwh, interval: [(kwh * interval[0]) / value, (kwh * interval[1]) / value], why: null };
}

function period(
  key: string,
  fanHours: number,
  days: number,
  stillDays: number,
  rate: Estimate,
  energyKwh: Estimate,
): RatePeriod {
  // How fast, whichever way; where the interval reaches zero a quotient by it is withheld.
  const size = rate.value !== null && rate.value < 0 ? turned(rate) : rate;
  const perHundred = scaled(energyKwh, 100 / fanHours);
  return {
    key,
    fanHours,
    days,
    stillDays,
    perHundredFanHours: rate,
    hoursPerPoint: ratioInterval({ value: 100, interval: null, why: null }, size, ZERO),
    kwhPerPoint: fanHours > 0 ? ratioInterval(perHundred, size, ZERO) : withheld('The fan did not run.'),
  };
}

function notesOf(days: readonly RateDay[]): string[] {
  const moving = days.filter((day) => !day.stillAir).length;
  return moving > days.length / 2
    ? [
        'On most days the fan left no still air, and moistures read in moving air lean towards the air that passes: the intervals allow for it.',
      ]
    : [];
}
