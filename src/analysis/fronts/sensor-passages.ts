import { aheadOf, beforeItMoves, stoodBefore } from './ahead-of-front.ts';
import { behindUnreadWhy, blindWhy, brokenOffWhy, LACKING } from './blind-why.ts';
import { AXIS_STEP_H, type FanAxis } from './fan-axis.ts';
import { type FanHourCurve, fanHourCurve } from './fan-hour-curve.ts';
import { BEHIND_FROM_H, BEHIND_TO_H, LEAST_CHANGE_K, WIDEST_GAP_H } from './front-limits.ts';
import type { GoodReadings } from './good-readings.ts';
import { halfWay, halfWayBeside } from './half-way.ts';
import { type HoleCrossing, holeCrossing, WIDE_HOLE_H } from './hole-crossing.ts';
import {
  DAY_VOTE,
  definitionVote,
  HOURS_VOTE,
  mergedPassages,
  type Passage,
  slopePeaks,
  type TimedVote,
} from './passages.ts';
import { TOO_SMALL } from './stalled.ts';
import { fineSteepest, type SteepestChange, steepestChange } from './steepest-change.ts';

/** A sensor's part in a campaign; `why` is null exactly when the front arrived. */
export interface SensorArrival {
  fanHours: number | null;
  aheadC: number | null;
  behindC: number | null;
  why: string | null;
  /** fan hours of the readings around it, where wider than WIDE_HOLE_H */
  hole?: readonly [number, number];
}

/** What a sensor's readings say of a campaign's front: where it may have passed, or why it did not. */
export interface SensorPassages {
  passages: Passage[];
  none: SensorArrival;
  /** true: for want of readings the sensor could not see a front */
  blind?: boolean;
  /** where there are no passages: the hole of its log in which a front passed all the same */
  crossing?: HoleCrossing | null;
}

const DID_NOT_MOVE = 'The front did not get there: the temperature did not move that way.';

/** Two readings of "ahead" this far apart are both tried, K. */
const OTHER_AHEAD_K = 0.5;
/** The second counts a little less: the definition names the hours before the campaign first. */
const MOVED_PART = 0.8;

const none = (why: string, aheadC: number | null = null, behindC: number | null = null): SensorArrival => ({
  fanHours: null,
  aheadC,
  behindC,
  why,
});

/**
 * Every moment at which a front may have reached a sensor: half of the way from ahead (mean of the AHEAD_H before the
 * campaign, or before the front begins to move it) to behind (mean from BEHIND_FROM_H to BEHIND_TO_H fan hours after a
 * steep change, as far as the run goes).
 *
 * @param readings  from before the campaign to after what the axis spans
 * @param sign      +1 warming, -1 cooling
 * @returns         passages, best supported first; where there is none, why
 * @source  definition of `front arrival` in the kit's season format
 */
export function sensorPassages(readings: GoodReadings, axis: FanAxis, sign: 1 | -1): SensorPassages {
  const { timeMs, tempC } = readings;
  const fanHours = axis.hoursAt(timeMs);
  if (!fanHours.some((hours, i) => timeMs[i] >= axis.startMs && hours <= axis.searchH)) {
    return { passages: [], none: none('The sensor has no good readings in this campaign.') };
  }
  const curve = fanHourCurve(fanHours, timeMs, tempC);
  const seen = seenPassages(readings, curve, axis, sign);
  return seen.none.why?.startsWith(LACKING) === true ? { ...seen, crossing: holeCrossing(curve, axis, sign) } : seen;
}

function seenPassages(readings: GoodReadings, curve: FanHourCurve, axis: FanAxis, sign: 1 | -1): SensorPassages {
  const lastH = Math.min(axis.lengthH, curve.fanHour[curve.fanHour.length - 1]);
  const seen: FanAxis = { ...axis, lengthH: lastH, searchH: Math.min(axis.searchH, lastH) };
  const steepest = steepestChange(curve, seen, sign);
  const blind = blindWhy(curve, axis, sign);
  // What was not looked at can't be said to have stood still.
  const still = (one: SensorArrival): SensorPassages =>
    blind === null ? { passages: [], none: one } : { passages: [], none: none(blind), blind: true };
  if (steepest === null) {
    if (lastH >= BEHIND_FROM_H) return still(none(DID_NOT_MOVE, stoodBefore(readings, curve, axis)));
    return { passages: [], none: none('The sensor has good readings of too few fan hours of this campaign.') };
  }
  const look: Look = { curve, axis, seen, sign };
  const own = arrivalAt(look, steepest, aheadOf(readings, curve, seen, steepest, sign));
  const told: TimedVote[] = [];
  const vote = ({ fanHours: hours, aheadC, behindC, hole }: SensorArrival, weight: number, kind: TimedVote['kind']) => {
    if (hours !== null && aheadC !== null && behindC !== null) {
      told.push({ fanHours: hours, aheadC, behindC, hole, weight, kind });
    }
  };
  const peaks = { hours: slopePeaks(curve, seen, sign, 'hours'), day: slopePeaks(curve, seen, sign, 'day') };
  const changeK = Math.abs((own.behindC ?? 0) - (own.aheadC ?? 0));
  const passageH = changeK / (peaks.hours[0] ?? steepest).slope;
  vote(own, definitionVote(steepest.windowH, passageH), 'definition');
  for (const kind of ['hours', 'day'] as const) {
    for (const peak of peaks[kind]) {
      const weight = peak.part * (kind === 'day' ? DAY_VOTE : HOURS_VOTE);
      const stoodC = aheadOf(readings, curve, seen, peak, sign);
      const before = arrivalAt(look, peak, stoodC, kind);
      vote(before, weight, kind);
      // "... or before the front begins to move it": where another front was still under way when the campaign began.
      const movedC = beforeItMoves(curve, seen, peak, sign);
      const apart = Math.abs(movedC - stoodC) >= OTHER_AHEAD_K;
      const moved = apart ? arrivalAt(look, peak, movedC, kind) : before;
      if (apart) vote(moved, MOVED_PART * weight, kind);
      if (kind === 'hours' && peak.part === 1 && before.why === TOO_SMALL && moved.why === TOO_SMALL) {
        return still(before);
      }
    }
  }
  if (told.length === 0 && own.why === TOO_SMALL) return still(own);
  const brokenOff = brokenOffWhy(curve, axis, sign, (peaks.hours[0] ?? steepest).slope);
  if (told.length > 0 && brokenOff !== null) return { passages: [], none: none(brokenOff, own.aheadC) };
  return { passages: mergedPassages(told), none: own };
}

/** Where a sensor's steep changes are looked at. */
interface Look {
  curve: FanHourCurve;
  /** as far as the front is looked for, and of that what the sensor's readings cover */
  axis: FanAxis;
  seen: FanAxis;
  sign: 1 | -1;
}

/**
 * The arrival that belongs to one steep change; the contract's, where that is the steepest. Seen over hours it is the half-way
 * beside that change, seen over a day that of the running mean.
 */
function arrivalAt(
  { curve, axis, seen, sign }: Look,
  steepest: SteepestChange,
  aheadC: number,
  over: 'hours' | 'day' = 'day',
): SensorArrival {
  const lastH = seen.lengthH;
  const behindOf = (fanHour: number) =>
    curve.mean(fanHour + BEHIND_FROM_H, Math.min(fanHour + BEHIND_TO_H, Math.max(lastH, fanHour + BEHIND_FROM_H)));
  const behindC = behindOf(steepest.fanHour);
  const unread = behindUnreadWhy(curve, axis, steepest.fanHour);
  if (unread !== null) return none(unread, aheadC);
  const changeK = sign * (behindC - aheadC);
  if (changeK < LEAST_CHANGE_K) {
    return none(TOO_SMALL, aheadC, behindC);
  }
  if (stillPassing(steepest, lastH)) {
    return none('The fan stopped, or the front was followed no farther, while it was passing this sensor.', aheadC);
  }
  const at =
    over === 'hours'
      ? halfWayBeside(curve, (aheadC + behindC) / 2, sign, steepest.fanHour, lastH, seen.searchH)
      : crossing(curve, seen, sign, steepest, aheadC, behindC);
  if (at === null) {
    return none('The front was not half-way through this sensor before it was followed no farther.', aheadC, behindC);
  }
  const around = readingsAround(curve, at);
  const gapH = around[1] - around[0];
  if (gapH > WIDEST_GAP_H) return none(`${LACKING} ${Math.round(gapH)} fan hours around the arrival.`, aheadC, behindC);
  return { fanHours: at, aheadC, behindC, why: null, hole: gapH > WIDE_HOLE_H ? around : undefined };
}

/** The fan hour of half-way near a steepest change; null where the temperature never goes through it. */
function crossing(
  curve: FanHourCurve,
  axis: FanAxis,
  sign: 1 | -1,
  { fanHour, windowH }: SteepestChange,
  aheadC: number,
  behindC: number,
): number | null {
  const fine = fineSteepest(curve, axis, sign, fanHour - windowH, fanHour + windowH);
  const passageH = (sign * (behindC - aheadC)) / Math.max(fine.slope, 1e-6);
  const halfC = (aheadC + behindC) / 2;
  return halfWay(curve, halfC, sign, fanHour, windowH, passageH, axis.lengthH, axis.searchH);
}

/** The steepest change in sight lies at its very end: it may yet have become steeper. */
function stillPassing(steepest: SteepestChange, lastH: number): boolean {
  return steepest.fanHour + BEHIND_FROM_H >= lastH - AXIS_STEP_H;
}

/** Fan hours of the readings to both sides of a fan hour. */
function readingsAround(curve: FanHourCurve, fanHour: number): [number, number] {
  const after = curve.fanHour.findIndex((x) => x >= fanHour);
  if (after === 0) return [fanHour, fanHour];
  if (after < 0) return [curve.fanHour[curve.fanHour.length - 1], Number.POSITIVE_INFINITY];
  return [curve.fanHour[after - 1], curve.fanHour[after]];
}
