import type { Campaign } from '../types.ts';
import type { FanPieces } from './fan-pieces.ts';
import type { CampaignSpan } from './find-campaigns.ts';
import { inHole } from './front-outcomes.ts';

/** A front that passed less than this part of the sensors in the grain had not got through when the air turned. */
const PASSED_PART = 2 / 3;

/**
 * True for a swing of the weather in a run that goes on: the air turned back, not the fan's rest ended it, and before its
 * front had passed two thirds of the sensors. Where the fan was stopped the grower ended it, and a front that got nowhere is news.
 * Sensors that a hole of the log makes blind say neither.
 */
export function turnedBack(pieces: FanPieces, one: CampaignSpan, campaign: Campaign): boolean {
  const next = one.last + 1;
  if (next >= pieces.run.length || pieces.run[next] !== one.run) return false;
  return passedPart(campaign) < PASSED_PART;
}

/** True where the front passed two thirds of the sensors that could see it, and there were such. */
export function gotThrough(campaign: Campaign): boolean {
  return passedPart(campaign) >= PASSED_PART;
}

/** Of the sensors that could see a campaign's front, the part that it passed; NaN where none could. */
export function passedPart(campaign: Campaign): number {
  const seen = campaign.arrivals.filter((each) => each.unseen !== true && !inHole(each));
  return seen.filter((each) => each.arrivedMs !== null).length / seen.length;
}
