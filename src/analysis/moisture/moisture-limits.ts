import type { Goal } from '../../season/season.ts';
import { MOST_PASSED, mostPassed } from './missed-cooling.ts';
import { DAY_MS, type MomentName, type MomentWindow } from './moment-window.ts';
import type { MomentLimits } from './sensor-moments.ts';

/** Beyond this many fan hours (and this share of all) outside the two days, the points would not be those the fans removed. */
const MISSED_HOURS = 24;
const MISSED_SHARE = 0.25;
/** Without a fan log, days that the readings may come late or end early. */
const BLIND_DAYS = 30;
/** The same where a fan log is left out because the fan worked for longer than it says; own judgement. */
const LEFT_OUT_DAYS = 2;

/**
 * When a day of moisture readings may stand for the start or the end.
 *
 * Still air within 24 fan hours: at the usual drying airflow that many hours take out 0.1 to 0.2 point, less than a
 * reading in moving air may lean. (Common practice: 0.3 to 0.5 point in a good drying day of a full bin is much.)
 */
export const MOISTURE_LIMITS: MomentLimits = {
  stillWithinFanHours: 24,
  // Points are defined by whole days of still air.
  oneStateFanHours: null,
  tooFar(moment, window, seasonFanHours) {
    if (Number.isNaN(seasonFanHours)) {
      return window.slidMs > BLIND_DAYS * DAY_MS ? blind(moment, window) : null;
    }
    if (window.missedFanHours <= MISSED_HOURS || window.missedFanHours <= MISSED_SHARE * seasonFanHours) return null;
    const hours = Math.round(window.missedFanHours);
    return moment === 'start'
      ? `The first believable moistures come about ${hours} fan hours after filling, too late to tell the moisture at the start.`
      : `The last believable moistures come about ${hours} fan hours before the end, too early to tell the moisture at the end.`;
  },
};

/** The same without a log that the plenum or the grain contradicts: of a fan that is known to have run nothing tells when. */
export const LOG_LEFT_OUT_LIMITS: MomentLimits = {
  ...MOISTURE_LIMITS,
  tooFar: (moment, window) =>
    window.slidMs > LEFT_OUT_DAYS * DAY_MS
      ? blind(moment, window, 'moistures', 'the fan log, which would tell what happened in between, is left out')
      : null,
};

function blind(
  moment: MomentName,
  window: MomentWindow,
  what = 'moistures',
  lack = 'no fan log tells what happened in between',
): string {
  const days = Math.round(window.slidMs / DAY_MS);
  return moment === 'start'
    ? `The first believable ${what} come ${days} days after filling, and ${lack}.`
    : `The last believable ${what} come ${days} days before the end, and ${lack}.`;
}

/**
 * When a day of temperatures may stand for the start or the end: nearer, since a cooling front crosses a well-aired bin
 * in a day of fan running, and because a temperature read in moving air does not lean. A start has to be read before a front
 * may have passed most of the bin.
 */
export const temperatureLimits = (goal: Goal): MomentLimits => ({
  stillWithinFanHours: 3,
  // A front of a well-aired bin moves temperatures at once: a mean of before and after is neither.
  oneStateFanHours: 3,
  tooFar(moment, window, seasonFanHours) {
    const days = Math.round(window.slidMs / DAY_MS);
    const hours = Math.round(window.missedFanHours);
    const passed = moment === 'start' && mostPassed(goal, window.missedFanHours) > MOST_PASSED;
    if (window.missedFanHours <= 24 && days <= 14 && !passed) return null;
    if (Number.isNaN(seasonFanHours)) return blind(moment, window, 'temperatures');
    return moment === 'start'
      ? `The first believable temperatures come ${days} days and about ${hours} fan hours after filling, too late to tell the temperature at the start.`
      : `The last believable temperatures come ${days} days and about ${hours} fan hours before the end, too early to tell the temperature at the end.`;
  },
});
