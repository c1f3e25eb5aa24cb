import { agreeing } from '../../base/agreeing.ts';
import { type Estimate, estimate, withheld, Z95 } from '../../base/estimate.ts';
import { fillLoads } from '../grain/fill-loads.ts';
import { loadsOut, outOfFull } from '../grain/loads-out.ts';
import { weightByVolume } from '../grain/weight-by-volume.ts';
import type { CableSpread } from './cable-spread.ts';
import { type ErrorPart, firmPart, joinErrors } from './error-part.ts';
import { METER, sensorMoment } from './moisture-moment.ts';
import { DAY_MS, likelyHours, loggedHours, type MomentName } from './moment-window.ts';
import type { ObservedMoisture } from './observed-moisture.ts';
import { BIAS } from './reading-parts.ts';
import type { MomentAgreement, TicketsHeld } from './ticket-agreement-types.ts';
import { ticketWords } from './ticket-words.ts';
import { ASSUMED_METER, LOAD_SAMPLE_SD, type Ticket, ticketMean } from './tickets.ts';

/** Loads that are less of the grain than this are not the bin's mean: core and top come first. */
export const LEAST_COVERED = 0.85;

/**
 * The sensors' moisture at the start against the loads in, at the end against the loads out; what one bias that all
 * sensors share would have to be to explain it.
 *
 * @param weightKg  of the grain as filled, wet; null where not known
 * @param pooled    spread between cables in the season's other bins
 */
export function ticketAgreement(
  observed: ObservedMoisture,
  weightKg: number | null,
  pooled: CableSpread | null,
): TicketsHeld {
  const start = momentAgreement(observed, 'start', weightKg, pooled);
  const end = momentAgreement(observed, 'end', weightKg, pooled);
  if (start === null && end === null) {
    const none = observed.input.tickets.length === 0;
    const why = none
      ? 'There are no scale tickets of this bin.'
      : 'No moment has both believable sensors and tickets with a moisture.';
    return { start: null, end: null, sharedBias: withheld(why), drift: withheld(why), likely: [], why };
  }
  const held = { start: start?.told ?? null, end: end?.told ?? null, ...together(start, end), why: null };
  return { ...held, likely: ticketWords(held) };
}

interface Held {
  told: MomentAgreement;
  /** of the difference, without the bias that the sensors share */
  parts: readonly ErrorPart[];
}

function momentAgreement(
  observed: ObservedMoisture,
  moment: MomentName,
  weightKg: number | null,
  pooled: CableSpread | null,
): Held | null {
  const loads = loadsOf(observed, moment);
  const mean = ticketMean(loads, moment === 'start' ? 'in' : 'out');
  if (mean === null || observed.moments[moment] === null) return null;
  const read = sensorMoment(observed, moment, pooled);
  const sensors = read.mean.value!;
  const scatter = Math.max(LOAD_SAMPLE_SD, 100 * mean.loadSdWb) / Math.sqrt(mean.loads);
  const own: ErrorPart[] = [firmPart(METER, ASSUMED_METER / Z95), firmPart('sampling of the loads', scatter)];
  const between = fansBetween(observed, moment, loads);
  const apart = firmPart('fan hours between the loads and the readings', Math.abs(between.points) / Math.sqrt(3));
  const all = [...read.parts, ...own, apart].filter((one) => one.sd > 0);
  const points = 100 * (sensors - mean.moistureWb);
  const { half90 } = joinErrors(all);
  const ticketHalf = joinErrors(own).half90 / 100;
  const covered = coveredShare(loads, weightKg);
  const whole = covered === null || covered >= LEAST_COVERED;
  const told: MomentAgreement = {
    moment,
    sensors: { value: sensors, interval: read.mean.interval ?? null, why: null },
    tickets: estimate(mean.moistureWb, mean.moistureWb - ticketHalf, mean.moistureWb + ticketHalf),
    loads: mean.loads,
    covered,
    difference: estimate(points, points - half90, points + half90),
    fanHoursBetween: between.hours,
    hoursLogged: between.logged,
    expected: { value: between.points, interval: rising(0, 2 * between.points), why: null },
    agree: whole ? Math.abs(points - between.points) <= half90 : null,
    why: whole
      ? null
      : `The ${agreeing(mean.loads, 'one load with a moisture is', `${mean.loads} loads with a moisture are`)} ${Math.round(100 * covered!)} % of the grain; loads come from the core and the top first, so they need not agree with the bin's mean.`,
  };
  return { told, parts: all.filter((one) => one.cause !== BIAS) };
}

/** The loads that tell of the moment. */
export function loadsOf({ input, fill }: ObservedMoisture, moment: MomentName): readonly Ticket[] {
  const filling = fillLoads(input.tickets, fill, weightByVolume(input.bin, fill.depthM));
  if (moment === 'start') return filling.in;
  return loadsOut(outOfFull(input.tickets, fill), filling).out;
}

/** Fan hours between the middle of the loads and the day of the readings, and what they change at the season's rate. */
function fansBetween(
  { input, moments, points }: ObservedMoisture,
  moment: MomentName,
  loads: readonly Ticket[],
): { hours: number | null; logged: boolean; points: number } {
  const { spans } = input;
  if (spans === null) return { hours: null, logged: false, points: 0 };
  const { span } = moments[moment]!;
  const dated = loads.filter((one) => !Number.isNaN(one.timeMs));
  // The fans reach loads from the moment each lies there: the mean over the loads of the hours from each to the day.
  const times = dated.map(({ timeMs }): [number, number] =>
    moment === 'start'
      ? [timeMs, span.fromMs]
      : [span.toMs, Math.min(timeMs, input.bin.grain.unloadedMs ?? timeMs + DAY_MS)],
  );
  const each = times.map(([fromMs, toMs]) => likelyHours(spans, fromMs, toMs));
  const logged = times.every(([fromMs, toMs]) => {
    const { interval } = loggedHours(spans, fromMs, toMs);
    return interval !== null && interval[1] - interval[0] < 0.5;
  });
  const hours = each.length === 0 ? 0 : each.reduce((sum, one) => sum + one, 0) / each.length;
  const rate = moments.fanHoursBetween > 0 && !Number.isNaN(points) ? points / moments.fanHoursBetween : 0;
  // Sensors read after the loads in are drier by what the fans took out; before the loads out, wetter.
  return { hours, logged, points: (moment === 'start' ? -1 : 1) * rate * hours };
}

function rising(a: number, b: number): [number, number] {
  return a < b ? [a, b] : [b, a];
}

/** Weight of the loads with a moisture over that of the grain as filled; null where one has no weight. */
export function coveredShare(loads: readonly Ticket[], weightKg: number | null): number | null {
  if (weightKg === null || !(weightKg > 0)) return null;
  const sampled = loads.filter((one) => one.moistureWb > 0 && one.moistureWb < 1);
  if (!sampled.every((one) => one.netKg > 0)) return null;
  return sampled.reduce((sum, one) => sum + one.netKg, 0) / weightKg;
}

/** The bias that explains both moments, and by how much the two moments differ from each other. */
function together(start: Held | null, end: Held | null): { sharedBias: Estimate; drift: Estimate } {
  const held = [start, end].filter((one): one is Held => one !== null && one.told.agree !== null);
  if (held.length === 0) {
    const why = 'The loads are too little of the grain to tell a bias of the sensors.';
    return { sharedBias: withheld(why), drift: withheld(why) };
  }
  const offsets = held.map(({ told, parts }) => ({
    points: told.difference.value! - told.expected.value,
    ...joinErrors(parts),
  }));
  const weights = offsets.map((one) => 1 / one.sd ** 2);
  const total = weights.reduce((sum, one) => sum + one, 0);
  const bias = offsets.reduce((sum, one, i) => sum + weights[i] * one.points, 0) / total;
  // Both moments may be held against one and the same meter: its error does not average out.
  const half = Math.min(...offsets.map((one) => one.half90));
  const sharedBias = estimate(bias, bias - half, bias + half);
  if (offsets.length < 2) {
    return { sharedBias, drift: withheld('Only one of start and end has tickets to be held against.') };
  }
  const drift = offsets[1].points - offsets[0].points;
  const wide = Math.hypot(offsets[0].half90, offsets[1].half90);
  return { sharedBias, drift: estimate(drift, drift - wide, drift + wide) };
}
