import { type Estimate, estimate, scaled, turned, withheld, Z90 } from '../../base/estimate.ts';
import { ratioInterval } from '../../base/stats/ratio-interval.ts';
import { zoneOf } from '../../base/zone.ts';
import { localMonths } from '../../money/local-time.ts';
import { fanRelSd } from '../energy/fan-cost.ts';
import { whileGrain } from '../energy/outside-storage.ts';
import type { BinFan, BinMoisture } from '../types.ts';
import type { MoistureRates, RateDay, RatePeriod } from './moisture-rates-types.ts';
import { changeErrors, rateDays } from './rate-days.ts';
import { rateOfDays } from './rate-of-days.ts';

const ZERO = 'The rate may be zero, so there is no number of hours for a point.';

/** How fast a bin's fans changed its moisture: from start to end, by a line through all days, and month by month. */
export function moistureRates(fan: BinFan, moisture: BinMoisture, timeZone: string): MoistureRates {
  const days = rateDays(moisture);
  const grain = whileGrain(fan);
  const hours = grain.hours.value;
  const energyKwh = grain.energyKwh.value ?? Number.NaN;
  const season =
    hours === null ? null : period('season', hours, 0, 0, moisture.perHundredFanHours, whileLogged(fan, energyKwh));
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
  const rowOf = (key: string, of: readonly RateDay[], { hours, unknownHours, energyKwh }: Part): RatePeriod => {
    const rate = rateOfDays(of, errors, part(of));
    const perHundred = throughSilence(rate.perHundredFanHours, hours, unknownHours);
    return period(key, hours, rate.days, rate.stillDays, perHundred, whileLogged(fan, energyKwh));
  };
  const between = (fromMs: number, toMs: number) => days.filter((day) => day.dayMs >= fromMs && day.dayMs < toMs);
  const months = localMonths(zone, days[0].dayMs, days[days.length - 1].dayMs + 1).flatMap(
    ({ month, fromMs, toMs }) => {
      const told = fan.months.find((one) => one.month === month);
      return told === undefined || !(told.hours > 0) ? [] : [rowOf(month, between(fromMs, toMs), told)];
    },
  );
  return {
    season,
    line:
      hours === null
        ? null
        : rowOf('line', days, {
            hours,
            unknownHours: fan.unknownHours ?? 0,
            energyKwh,
          }),
    months,
    days,
    notes: notesOf(days, fan.unknownHours ?? 0),
    why: null,
  };
}

/** What the logs tell of a part of the season. */
type Part = Pick<BinFan['months'][number], 'hours' | 'unknownHours' | 'energyKwh'>;

/** The energy of the hours that the log tells, as unsure as the fans' powers: a silence adds hours and energy alike. */
function whileLogged({ energyKwh, fans }: BinFan, kwh: number): Estimate {
  if (!((energyKwh.value ?? 0) > 0)) return withheld(energyKwh.why ?? 'The energy is not known.');
  const all = fans.reduce((sum, fan) => sum + fan.energyKwh, 0);
  const half = (Z90 * kwh * Math.hypot(...fans.map((fan) => fan.energyKwh * fanRelSd(fan)))) / all;
  return estimate(kwh, Math.max(0, kwh - half), kwh + half);
}

/** Fans that ran through the log's silence took more hours for the same points: the end nearer to zero goes so far down. */
function throughSilence(rate: Estimate, hours: number, unknownHours: number): Estimate {
  if (rate.value === null || rate.interval === null || !(unknownHours > 0)) return rate;
  const least = hours / (hours + unknownHours);
  const [low, high] = rate.interval;
  return estimate(rate.value, low > 0 ? low * least : low, high < 0 ? high * least : high);
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

function notesOf(days: readonly RateDay[], unknownHours: number): string[] {
  const moving = days.filter((day) => !day.stillAir).length;
  const notes: string[] = [];
  if (moving > days.length / 2) {
    notes.push(
      'On most days the fan left no still air, and moistures read in moving air lean towards the air that passes: the intervals allow for it.',
    );
  }
  if (unknownHours >= 0.5) {
    notes.push(
      `The fan log is silent for ${Number(unknownHours.toPrecision(3))} h: fans that ran then took more hours and energy for the same points, which the intervals include and the figure does not show.`,
    );
  }
  return notes;
}
