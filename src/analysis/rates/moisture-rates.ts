import { type Estimate, estimate, scaled, turned, withheld, Z90 } from '../../base/estimate.ts';
import { ratioInterval } from '../../base/stats/ratio-interval.ts';
import { zoneOf } from '../../base/zone.ts';
import { energyCost } from '../../money/energy-cost.ts';
import { localMonths } from '../../money/local-time.ts';
import { NO_RATES } from '../../money/rate-breaks.ts';
import { fanRelSd } from '../energy/fan-cost.ts';
import { whileGrain } from '../energy/outside-storage.ts';
import { unknownHoursBetween } from '../fan/spans.ts';
import type { BinFan, BinMoisture } from '../types.ts';
import type { MoistureRates, RateDay, RatePeriod } from './moisture-rates-types.ts';
import { changeErrors, rateDays } from './rate-days.ts';
import { rateOfDays } from './rate-of-days.ts';

/** Less than this part of the hours is not worth a word. */
const MEANINGFUL_SHARE = 0.01;
const ZERO = 'The rate may be zero, so there is no number of hours for a point.';
/** From so many times its lower end on an interval's upper end is only what the nearness of zero makes of it; own judgement. */
const SAYS_NOTHING = 10;
const HARDLY = `The rate can hardly be told from zero: the interval of this number would reach to over ${SAYS_NOTHING} times its lower end, which says nothing.`;

/** How fast a bin's fans changed its moisture: from start to end, by a line through all days, and month by month. */
export function moistureRates(fan: BinFan, moisture: BinMoisture, timeZone: string): MoistureRates {
  const days = rateDays(moisture);
  const { hours, unknownHours, energyKwh } = whilePoints(fan, moisture);
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
            unknownHours,
            energyKwh,
          }),
    months,
    days,
    notes: [...notesOf(days, unknownHours), ...apartNote(whileGrain(fan).hours.value, hours)],
    why: null,
  };
}

/** Of the time over which the points were removed; where nothing was read, of all in which the bin held grain. */
function whilePoints(fan: BinFan, { pointsTime }: BinMoisture): Omit<Part, 'hours'> & { hours: number | null } {
  const grain = whileGrain(fan);
  const energyKwh = grain.energyKwh.value ?? Number.NaN;
  if (pointsTime === undefined || grain.hours.value === null)
    return { hours: grain.hours.value, unknownHours: fan.unknownHours ?? 0, energyKwh };
  const { fanHours } = pointsTime;
  const fromMs = pointsTime.fromMs ?? undefined;
  const toMs = pointsTime.toMs ?? undefined;
  const all = energyCost(fan.spans, NO_RATES).kwh;
  const used = energyCost(fan.spans, NO_RATES, fromMs, toMs).kwh;
  return {
    hours: fanHours.value,
    unknownHours: unknownHoursBetween(fan.spans, fromMs, toMs),
    // The bin's spans sum their fans' whole power, of which a bin that shares a fan carries a part.
    energyKwh: all > 0 ? ((fan.energyKwh.value ?? Number.NaN) * used) / all : energyKwh,
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
    hoursPerPoint: told(ratioInterval({ value: 100, interval: null, why: null }, size, ZERO)),
    kwhPerPoint: fanHours > 0 ? told(ratioInterval(perHundred, size, ZERO)) : withheld('The fan did not run.'),
  };
}

/** A quotient by a rate that is hardly told from zero is withheld: the rate itself, with its interval, is what can be said. */
function told(of: Estimate): Estimate {
  return of.interval !== null && of.interval[1] > SAYS_NOTHING * of.interval[0] ? withheld(HARDLY) : of;
}

/** What ran while the bin held grain, outside the time of the points; of a few hours nobody asks. */
function apartNote(all: number | null, hours: number | null): string[] {
  if (all === null || hours === null || !(all - hours > MEANINGFUL_SHARE * all)) return [];
  const said = (value: number) => String(Number(value.toPrecision(3)));
  return [
    `Of ${said(all)} fan hours on grain ${said(all - hours)} h ran before the moisture at the start was read, as while the bin was being filled, or after that at the end: they took out none of these points and count for no rate here. What a point cost, its energy and the hours by which bins are compared are of all hours, as they were run and paid.`,
  ];
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
