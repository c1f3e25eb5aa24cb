import type { Bin } from '../../season/season.ts';
import type { Campaign } from '../types.ts';
import { type CampaignSpan, signOf } from './find-campaigns.ts';
import { CLEARLY_K, DAY_H, LEAST_CFM_PER_BUSHEL } from './front-limits.ts';
import { grainDepthAt } from './grain-depth.ts';
import { ruleOfThumbHours } from './rule-of-thumb.ts';

/** Grain that a front went through takes at least this part of what lies between it and the air. */
const LEAST_PART = 1 / 3;

/**
 * True where the air sent no front into the grain although it had the time: the sensors nearest to where the air enters
 * did not follow it, or it was not clearly cooler or warmer after all. Damp grain in dry air is cooler than the air that cools it, for weeks; that is no warming campaign.
 */
export function noFrontFormed(bin: Bin, { kind }: CampaignSpan, campaign: Campaign): boolean {
  if (campaign.arrivals.some(({ arrivedMs }) => arrivedMs !== null)) return false;
  const apartK = signOf(kind) * (campaign.airC - campaign.grainC);
  if (apartK < CLEARLY_K) return true;
  const depthM = grainDepthAt(bin, campaign.span.fromMs) ?? Number.POSITIVE_INFINITY;
  const seen = campaign.arrivals.filter(({ heightM }) => heightM < depthM);
  const fromEntry = (heightM: number) => (bin.air === 'up' ? heightM : depthM - heightM);
  const nearest = seen.reduce((least, one) => Math.min(least, fromEntry(one.heightM)), Number.POSITIVE_INFINITY);
  const part = Math.min(1, Math.max(0, nearest / depthM));
  const dueH = DAY_H + (Number.isFinite(part) ? part : 1) * ruleOfThumbHours(LEAST_CFM_PER_BUSHEL);
  if (campaign.fanHours < dueH) return false;
  const sign = signOf(kind);
  const wanted = LEAST_PART * apartK;
  return seen
    .filter(({ heightM }) => fromEntry(heightM) - nearest < 0.05)
    .every(({ aheadC, behindC }) => aheadC === null || behindC === null || sign * (behindC - aheadC) < wanted);
}
