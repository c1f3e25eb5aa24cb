import type { Estimate } from '../../base/estimate.ts';
import { withheld } from '../../base/estimate.ts';
import { median } from '../../base/stats/quantile.ts';
import type { Bin } from '../../season/season.ts';
import type { Campaign, FrontArrival } from '../types.ts';
import type { EndTemperature } from './end-temperature.ts';
import { ARRIVAL_WITHIN_H } from './front-limits.ts';
import { endsUndated, inHole, type Outcome, outcomesOf, type SensorOutcome } from './front-outcomes.ts';

/** Where a sensor hangs and when a front came to it. */
export type DatedSensor = Pick<FrontArrival, 'cable' | 'sensor' | 'heightM' | 'fanHours' | 'placed'>;

/** A sensor that the front came to late, beside the other cables at its height. */
export interface Slowest<Arrival = FrontArrival> {
  arrival: Arrival;
  /** fan hours behind the median of the other cables at its height, above 0 */
  behindHours: number;
}

/** A sensor that the front did not reach, and its temperature when the campaign had ended. */
export interface HeldSensor extends FrontArrival {
  endC: number | null;
}

/** What a campaign came to. */
export interface FrontFinding {
  campaign: Campaign;
  outcomes: readonly SensorOutcome[];
  passed: readonly FrontArrival[];
  followed: readonly FrontArrival[];
  held: readonly HeldSensor[];
  untold: readonly FrontArrival[];
  /** sensors that hang in the grain and live: passed + followed + held + untold */
  seen: number;
  /** the front passed at least half of the sensors that can tell (within a hole of the log too), and these are at least half of all */
  whole: boolean;
  /** a whole front that was held nowhere, and whose passing no sensor's log broke off before */
  through: boolean;
  /** fan hours until the last sensor that it passed */
  throughHours: Estimate;
  /** fan hours that the campaign ran on after that */
  afterHours: Estimate;
  slowest: Slowest | null;
}

export function frontFinding(campaign: Campaign, air: Bin['air'], end?: EndTemperature): FrontFinding {
  const outcomes = outcomesOf(campaign, air, end);
  const of = (wanted: Outcome): HeldSensor[] =>
    outcomes.filter((one) => one.outcome === wanted).map(({ arrival, endC }) => ({ ...arrival, endC }));
  const [passed, followed, held, untold] = (['passed', 'followed', 'held', 'untold'] as const).map(of);
  const told = passed.length + followed.length + held.length;
  const seen = told + untold.length;
  const undatable = followed.filter(inHole).length;
  const whole = passed.length > 0 && (passed.length + undatable) * 2 >= told && told * 2 >= seen;
  const lost = untold.some(inHole);
  const through = whole && held.length === 0 && !lost;
  const last = lastArrival(passed);
  const lastHours = last.value ?? Number.POSITIVE_INFINITY;
  const undated = outcomes.some((one) => endsUndated(one, campaign, air));
  const why = whyNotThrough(told, held.length, lost, through, undated ? Number.POSITIVE_INFINITY : lastHours);
  return {
    campaign,
    outcomes,
    passed,
    followed,
    held,
    untold,
    seen,
    whole,
    through,
    throughHours: why === null ? last : withheld(why),
    afterHours: why === null ? ranOn(campaign.fanHours, last) : withheld(why),
    slowest: slowestOf(passed),
  };
}

/** Fan hours of an arrival with their interval; withheld with its reason where they are not known. */
export function arrivalHours({ fanHours, fanHoursInterval, why }: FrontArrival): Estimate {
  if (fanHours === null) return withheld(why ?? 'The front was not seen to arrive.');
  return aboutArrival(fanHours, fanHoursInterval);
}

/** Fan hours that hang on an arrival, within `interval` or as well as arrivals are known. */
export function aboutArrival(
  hours: number,
  [low, high]: readonly [number, number] = [hours - ARRIVAL_WITHIN_H, hours + ARRIVAL_WITHIN_H],
): Estimate {
  return { value: hours, interval: [Math.max(0, low), Math.max(hours, high)], why: null };
}

/** Fan hours of a campaign after its last arrival. */
function ranOn(fanHours: number, { value, interval }: Estimate): Estimate {
  const [low, high] = (interval ?? [0, 0]).map((hours) => Math.max(0, fanHours - hours));
  return { value: Math.max(0, fanHours - (value ?? 0)), interval: [high, low], why: null };
}

/** Until the last sensor was passed: any of them may be the last. */
function lastArrival(passed: readonly FrontArrival[]): Estimate {
  const all = passed.map(arrivalHours);
  const value = Math.max(...all.map((one) => one.value ?? Number.POSITIVE_INFINITY));
  const ends = ([0, 1] as const).map((end) => Math.max(...all.map((one) => one.interval?.[end] ?? value)));
  return aboutArrival(value, [Math.min(value, ends[0]), ends[1]]);
}

function whyNotThrough(told: number, held: number, lost: boolean, through: boolean, lastHours: number): string | null {
  if (told === 0) return 'No sensor could tell of this campaign.';
  if (held > 0) return 'The front did not reach every sensor.';
  if (lost) return 'Readings break off before the front had passed every sensor.';
  if (!through) return 'The grain went along in steps too small for a front to be followed.';
  return Number.isFinite(lastHours)
    ? null
    : 'The last sensors cannot be dated, so the hours until it was through are not known.';
}

/** Fan hours at which a cable's front stood at a height, between its sensors; null beyond the ones it passed. */
function hoursAt(heightM: number, cable: readonly DatedSensor[]): number | null {
  const below = cable.filter((one) => one.heightM <= heightM).at(-1);
  const above = cable.find((one) => one.heightM >= heightM);
  if (below === undefined || above === undefined) return null;
  const rise = above.heightM - below.heightM;
  const share = rise > 0 ? (heightM - below.heightM) / rise : 0;
  return (below.fanHours ?? 0) + share * ((above.fanHours ?? 0) - (below.fanHours ?? 0));
}

/** The sensor farthest behind the median of the other cables at its height; null with one cable, or none behind. */
export function slowestOf<Arrival extends DatedSensor>(passed: readonly Arrival[]): Slowest<Arrival> | null {
  const dated = passed
    .filter((one) => one.fanHours !== null && one.placed !== true)
    .sort((a, b) => a.heightM - b.heightM);
  const cables = byCable(dated);
  let most: Slowest<Arrival> | null = null;
  for (const arrival of dated) {
    const others = [...cables]
      .filter(([cable]) => cable !== arrival.cable)
      .map(([, of]) => hoursAt(arrival.heightM, of))
      .filter((hours) => hours !== null);
    if (others.length === 0) continue;
    const behindHours = (arrival.fanHours ?? 0) - median(others);
    if (behindHours > (most?.behindHours ?? 0)) most = { arrival, behindHours };
  }
  return most;
}

export function byCable<Arrival extends DatedSensor>(arrivals: readonly Arrival[]): Map<string, Arrival[]> {
  const cables = new Map<string, Arrival[]>();
  for (const one of arrivals) cables.set(one.cable, [...(cables.get(one.cable) ?? []), one]);
  return cables;
}
