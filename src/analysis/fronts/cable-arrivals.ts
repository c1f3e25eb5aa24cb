import { firstNotBefore } from '../../base/first-not-before.ts';
import { fanHoursBetween, unknownHoursBetween } from '../fan/spans.ts';
import type { FanSpans, FrontArrival } from '../types.ts';
import type { FanAxis } from './fan-axis.ts';
import { type CampaignSpan, signOf } from './find-campaigns.ts';
import { frontChain } from './front-chain.ts';
import { AHEAD_H, ARRIVAL_WITHIN_H, DAY_H, HOUR_MS, UNKNOWN_H } from './front-limits.ts';
import type { FrontsView } from './fronts-view.ts';
import { type GoodReadings, readingsWithin } from './good-readings.ts';
import { grainDepthAt } from './grain-depth.ts';
import type { Passage } from './passages.ts';
import { sensorPassages } from './sensor-passages.ts';

/** Only a sensor this near to where the air enters can meet the front in the campaign's first moment. */
const AT_ENTRY_M = 1;
/** Grain at rest keeps its temperature for so long, but near walls. */
const STILL_DAYS = 5;

/** A sensor before the passages along its cable are held against each other. */
interface Sighted {
  base: FrontArrival;
  fromEntryM: number;
  passages: readonly Passage[];
  /** told where no passage is chosen */
  none: FrontArrival;
}

const OUT_OF_ORDER =
  'Its temperature moved at a time that does not fit the front that passed the other sensors of this cable.';

/** When a campaign's front came to each sensor of a cable, or why that is not told. */
export function cableArrivals(
  view: FrontsView,
  campaign: CampaignSpan,
  axis: FanAxis,
  cable: string,
  heightsM: readonly number[],
  later: readonly FrontArrival[],
): FrontArrival[] {
  const sighted = heightsM.map((heightM, at) => {
    const one = sightedAt(view, campaign, axis, cable, at + 1, heightM);
    const next = later.find((other) => other.cable === cable && other.sensor === at + 1)?.arrivedMs;
    if (next === undefined || next === null) return one;
    const [nextH] = axis.hoursAt(Float64Array.of(next));
    return { ...one, passages: one.passages.filter(({ fanHours }) => fanHours < nextH - ARRIVAL_WITHIN_H) };
  });
  const places = sighted
    .map((one, index) => ({ ...one, index }))
    .filter((one) => one.passages.length > 0)
    .sort((a, b) => a.fromEntryM - b.fromEntryM);
  const chosen = frontChain(places);
  return sighted.map((one, index) => {
    const place = places.findIndex((other) => other.index === index);
    if (place < 0) return one.none;
    const passage = chosen[place] < 0 ? null : one.passages[chosen[place]];
    if (passage === null) return { ...one.base, why: OUT_OF_ORDER };
    return datedAt(view, axis, one, passage);
  });
}

function datedAt({ input }: FrontsView, axis: FanAxis, { base }: Sighted, passage: Passage): FrontArrival {
  const { aheadC, behindC, fanHours } = passage;
  const arrivedMs = axis.momentOf(fanHours);
  if (arrivedMs === null) return base;
  const stood = grainDepthAt(input.bin, arrivedMs);
  if (stood !== null && base.heightM >= stood)
    return { ...base, why: 'The surface fell below the sensor in this campaign.', unseen: true };
  const unknownH = unknownHoursBetween(input.fan, axis.startMs, arrivedMs);
  if (unknownH > UNKNOWN_H) {
    const why = `The fan log does not tell for ${Math.round(unknownH)} hours before the arrival, so its fan hours are not known.`;
    return { ...base, aheadC, behindC, arrivedMs, why };
  }
  return { ...base, aheadC, behindC, arrivedMs, fanHours };
}

/** Where a sensor was silent as the campaign began: its last reading before, if the fan rested since; else `fromMs`. */
function heardBefore(fan: FanSpans, { timeMs }: GoodReadings, fromMs: number, startMs: number): number {
  const next = firstNotBefore(timeMs, fromMs);
  const lastMs = timeMs[next - 1];
  if (next === 0 || timeMs[next] <= startMs || startMs - lastMs > STILL_DAYS * DAY_H * HOUR_MS) return fromMs;
  const ran = fanHoursBetween(fan, lastMs, startMs) + unknownHoursBetween(fan, lastMs, startMs);
  return ran > 0 ? fromMs : lastMs;
}

function sightedAt(
  { input, readings, pieces }: FrontsView,
  campaign: CampaignSpan,
  axis: FanAxis,
  cable: string,
  sensor: number,
  heightM: number,
): Sighted {
  const base: FrontArrival = {
    cable,
    sensor,
    heightM,
    arrivedMs: null,
    fanHours: null,
    aheadC: null,
    behindC: null,
    why: null,
  };
  const depthM = grainDepthAt(input.bin, axis.startMs);
  const fromEntryM = input.bin.air === 'up' ? heightM : (depthM ?? heightM) - heightM;
  const unseen = (why: string): Sighted => {
    const none = { ...base, why, unseen: true };
    return { base, fromEntryM, passages: [], none };
  };
  if (depthM !== null && heightM >= depthM) return unseen('The sensor hangs at or above the surface.');
  const whole = readings.find((one) => one.cable === cable && one.sensor === sensor);
  if (whole === undefined) return unseen('The sensor has no good readings.');
  const runFromMs = pieces.runFromMs[campaign.run];
  // Before the run the grain stood still; a run under way is needed for a day back, so that its daily wave is seen whole.
  const fromMs = Math.max(axis.startMs - 3 * DAY_H * HOUR_MS, Math.min(runFromMs, axis.startMs) - AHEAD_H * HOUR_MS);
  const toMs = axis.endMs + AHEAD_H * HOUR_MS;
  const near = readingsWithin(whole, heardBefore(input.fan, whole, fromMs, axis.startMs), toMs);
  const { passages, none, blind } = sensorPassages(near, axis, signOf(campaign.kind));
  if (blind === true && none.why !== null) return unseen(none.why);
  const possible = passages.filter(({ fanHours }) => fanHours > 0 || fromEntryM <= AT_ENTRY_M);
  const early = 'The temperature was past half-way when the campaign began: an earlier front had come.';
  const without = passages.length > 0 ? { ...passages[0], why: early } : none;
  return {
    base,
    fromEntryM,
    passages: possible,
    none: { ...base, aheadC: without.aheadC, behindC: without.behindC, why: without.why },
  };
}
