import type { Bin } from '../../season/season.ts';
import type { Campaign, FrontArrival } from '../types.ts';
import { LACKING } from './blind-why.ts';
import type { EndTemperature } from './end-temperature.ts';
import { LEAST_CHANGE_K } from './front-limits.ts';

/**
 * What a campaign did at a sensor:
 * - passed: the front came by (its fan hours may still be unknown);
 * - followed: no front to date, the grain there was as cold (or warm) as the air already, or followed it all the same;
 * - held: the grain there stayed clearly apart from the air, the front did not get there;
 * - untold: nothing was read that could tell;
 * - unseen: the sensor hangs above the grain or is dead; it is counted nowhere.
 */
export type Outcome = 'passed' | 'followed' | 'held' | 'untold' | 'unseen';

export interface SensorOutcome {
  arrival: FrontArrival;
  /** its temperature at the end of the campaign; looked up only where the front was not seen to come */
  endC: number | null;
  outcome: Outcome;
}

/** How a reason begins that finds a change, but none that fits the front along the cable. */
export const MOVED = 'Its temperature moved';

/** Reasons of the analysis that decide where its temperatures do not; a test holds them against its words. */
export const TELLING_REASONS: readonly { says: string; outcome: Outcome }[] = [
  { says: 'The temperature was past half-way when the campaign began', outcome: 'followed' },
  { says: MOVED, outcome: 'followed' },
];
/** Only want of readings leaves open what happened; for any other reason without temperatures no front was seen to come. */
export const WANT_OF_READINGS = 'good readings';

/** Grain that went half of the way to the air is behind the front: the definition of an arrival. */
const HALF = 0.5;

/** What the campaign did at each sensor, in the order of its arrivals. */
export function outcomesOf(campaign: Campaign, air: Bin['air'], end: EndTemperature = () => null): SensorOutcome[] {
  return campaign.arrivals.map((arrival) => {
    const endC = cameBy(arrival) ? null : end(campaign, arrival.cable, arrival.sensor);
    return { arrival, endC, outcome: outcomeOf(arrival, endC, campaign, air) };
  });
}

function outcomeOf(one: FrontArrival, endC: number | null, campaign: Campaign, air: Bin['air']): Outcome {
  if (one.unseen === true) return 'unseen';
  if (cameBy(one)) return 'passed';
  const told = TELLING_REASONS.find(({ says }) => one.why?.startsWith(says));
  if (told !== undefined) return told.outcome;
  // Where the front went on along the cable it went by here too, in steps too small to date.
  const beyond = wentBeyond(one, campaign, air);
  const { aheadC, behindC } = one;
  const sign = campaign.kind === 'warming' ? 1 : -1;
  const apartK = (tempC: number | null) => (tempC === null ? Number.NaN : sign * (campaign.airC - tempC));
  if (aheadC === null && one.why?.includes(WANT_OF_READINGS)) return 'untold';
  // A log that broke off amid the front and did not come back cannot say where it went.
  if (inHole(one) && endC === null && !beyond) return 'untold';
  if (beyond || apartK(aheadC) < LEAST_CHANGE_K || apartK(endC) < LEAST_CHANGE_K) return 'followed';
  // Behind the steepest change, or at the end where it went on in steps.
  const wentHalf = [behindC, endC].some((tempC) => apartK(tempC) <= HALF * apartK(aheadC));
  return wentHalf ? 'followed' : 'held';
}

/** The log has a hole where the front may have passed. */
export function inHole({ why }: Pick<FrontArrival, 'why'>): boolean {
  return why?.startsWith(LACKING) === true;
}

/** The front came to a sensor of the same cable that lies farther along the air. */
function wentBeyond(one: FrontArrival, campaign: Campaign, air: Bin['air']): boolean {
  return campaign.arrivals.some(
    (other) =>
      other.cable === one.cable &&
      cameBy(other) &&
      other.heightM !== one.heightM &&
      other.heightM > one.heightM === (air === 'up'),
  );
}

/** A sensor that took part in the cooling, undated, with no dated one beyond it: the front's last hours are not known. */
export function endsUndated({ arrival, outcome }: SensorOutcome, campaign: Campaign, air: Bin['air']): boolean {
  if (outcome !== 'followed' || wentBeyond(arrival, campaign, air)) return false;
  const sign = campaign.kind === 'warming' ? 1 : -1;
  return arrival.aheadC === null || sign * (campaign.airC - arrival.aheadC) >= LEAST_CHANGE_K;
}

function cameBy(one: FrontArrival): boolean {
  return one.arrivedMs !== null || one.fanHours !== null;
}
