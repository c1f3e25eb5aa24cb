import { firstNotBefore } from '../../base/first-not-before.ts';
import type { Bin } from '../../season/season.ts';
import type { SensorSeries } from '../../tables/sensors.ts';
import { fanHoursBetween, unknownHoursBetween } from '../fan/spans.ts';
import { type BinFronts, type Campaign, FAN_ON, type FanSpans, type FrontArrival } from '../types.ts';
import type { AirLog } from './air-log.ts';
import { campaignSpeed } from './campaign-speed.ts';
import { dailySwing } from './daily-swing.ts';
import { type EnteringAir, enteringAir } from './entering-air.ts';
import { type FanAxis, fanAxis } from './fan-axis.ts';
import { type FanPieces, fanPieces } from './fan-pieces.ts';
import { statedWarming } from './fan-warming.ts';
import { type CampaignSpan, findCampaigns, signOf } from './find-campaigns.ts';
import { frontChain } from './front-chain.ts';
import { noFrontFormed } from './front-formed.ts';
import { AHEAD_H, DAY_H, HOUR_MS, UNKNOWN_H } from './front-limits.ts';
import { type GoodReadings, goodReadings, readingsWithin } from './good-readings.ts';
import { grainDepthAt } from './grain-depth.ts';
import { grainMean } from './grain-mean.ts';
import type { Passage } from './passages.ts';
import { sensorPassages } from './sensor-passages.ts';
import { tellStalled } from './stalled.ts';
import { turnedBack } from './turned-back.ts';

/** Only a sensor this near to where the air enters can meet the front in the campaign's first moment. */
const AT_ENTRY_M = 1;
/** Grain at rest keeps its temperature for so long, but near walls. */
const STILL_DAYS = 5;

export interface FrontsInput {
  bin: Bin;
  /** of this bin; others are left aside */
  sensors: readonly SensorSeries[];
  /** the bin's fans together */
  fan: FanSpans;
  /** the bin's plenum log, good readings; empty where none */
  plenum: AirLog;
  /** outdoor air of the season, good readings; empty where none */
  weather: AirLog;
}

const nothing = (why: string): BinFronts => ({ campaigns: [], why });

/** Campaigns of a bin's fans and when their fronts arrived at each sensor. */
export function binFronts(input: FrontsInput): BinFronts {
  const { bin, fan } = input;
  if (bin.cables.length === 0) return nothing('No cable is described for this bin, so no front can be seen.');
  if (!fan.state.includes(FAN_ON)) return nothing('The fan log shows no running.');
  const fromMs = bin.grain.filledMs ?? Number.NEGATIVE_INFINITY;
  const toMs = bin.grain.unloadedMs ?? Number.POSITIVE_INFINITY;
  const pieces = fanPieces(fan, fromMs, toMs);
  if (pieces.midMs.length === 0) return nothing('The fan did not run while grain was in the bin.');
  const readings = input.sensors
    .filter((series) => series.bin === bin.id)
    .map((series) => goodReadings(series, fromMs, toMs))
    .filter((one) => one.timeMs.length > 0);
  if (readings.length === 0) return nothing('No cable of this bin has good temperature readings.');
  const grainC = grainMean(bin, readings, pieces.midMs);
  if (grainC.every(Number.isNaN)) return nothing('No sensor in the grain has a reading near the hours the fan ran.');
  const air = enteringAir(pieces, fan, input.plenum, input.weather, bin.air, statedWarming(bin.goal).usualK);
  if (air.tempC.every(Number.isNaN)) {
    return nothing('Neither plenum nor weather readings tell the air that the fan pushed in.');
  }
  const found = findCampaigns(pieces, air.tempC, grainC, dailySwing(readings, pieces.midMs));
  const view: View = { input, pieces, readings, air, grainC };
  const campaigns = found.map((_, index) => campaignAt(view, found, index));
  const real = found.filter(
    (one, index) => !noFrontFormed(bin, one, campaigns[index]) && !turnedBack(pieces, one, campaigns[index]),
  );
  if (real.length === 0) {
    return nothing(
      "The day's mean air was never clearly cooler or warmer than the grain for long enough to send a front through.",
    );
  }
  // A stretch that proved to be no campaign must not cut short the one before it: that one is worked out anew.
  const kept = real.map((one, index) => {
    const was = found.indexOf(one);
    const sameEnd = found[was + 1] === real[index + 1];
    return sameEnd ? { ...campaigns[was], number: index + 1 } : campaignAt(view, real, index);
  });
  return { campaigns: kept, why: null };
}

interface View {
  input: FrontsInput;
  pieces: FanPieces;
  readings: readonly GoodReadings[];
  air: EnteringAir;
  grainC: Float64Array;
}

function campaignAt(view: View, found: readonly CampaignSpan[], index: number): Campaign {
  const { pieces, input, air, grainC } = view;
  const one = found[index];
  const startMs = one.span.fromMs;
  const runToMs = pieces.runToMs[one.run];
  const untilMs = followedUntil(view, one, found[index + 1]);
  const axis = fanAxis(input.fan, startMs, untilMs, pieces.runFromMs[one.run], runToMs);
  const arrivals = tellStalled(
    input.bin.cables.flatMap((cable) => cableArrivals(view, one, axis, cable.id, cable.sensorHeightsM)),
    input.bin.air,
  );
  // The front under way is part of the campaign.
  const toMs = Math.max(one.span.toMs, ...arrivals.map(({ arrivedMs }) => arrivedMs ?? Number.NEGATIVE_INFINITY));
  return {
    number: index + 1,
    kind: one.kind,
    span: { fromMs: startMs, toMs },
    fanHours: fanHoursBetween(input.fan, startMs, toMs),
    ...meansOf(pieces, air, grainC, one),
    arrivals,
    speed: campaignSpeed(arrivals, input.bin.air),
  };
}

/**
 * How far the front is followed: the air crosses the grain's mean while part of the front is still under way, at the
 * earliest half-way, so as many fan hours again, within the run and up to the next campaign.
 */
function followedUntil({ pieces, input }: View, one: CampaignSpan, next: CampaignSpan | undefined): number {
  const limitMs = Math.min(pieces.runToMs[one.run], next?.span.fromMs ?? Number.POSITIVE_INFINITY);
  const againH = Math.max(DAY_H, fanHoursBetween(input.fan, one.span.fromMs, one.span.toMs));
  for (let i = one.last + 1, hours = 0; i < pieces.midMs.length && pieces.fromMs[i] < limitMs; i++) {
    hours += pieces.hours[i];
    if (hours >= againH) return Math.min(limitMs, pieces.toMs[i]);
  }
  return Math.max(one.span.toMs, limitMs);
}

function meansOf(pieces: FanPieces, air: EnteringAir, grainC: Float64Array, { first, last }: CampaignSpan) {
  let sum = 0;
  let hours = 0;
  let plenumHours = 0;
  for (let i = first; i <= last; i++) {
    if (Number.isNaN(air.tempC[i])) continue;
    sum += pieces.hours[i] * air.tempC[i];
    hours += pieces.hours[i];
    if (air.fromPlenum[i] === 1) plenumHours += pieces.hours[i];
  }
  const airFrom = plenumHours >= hours / 2 ? ('plenum' as const) : ('weather' as const);
  return { airC: sum / hours, grainC: grainC[first], airFrom };
}

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

function cableArrivals(
  view: View,
  campaign: CampaignSpan,
  axis: FanAxis,
  cable: string,
  heightsM: readonly number[],
): FrontArrival[] {
  const sighted = heightsM.map((heightM, at) => sightedAt(view, campaign, axis, cable, at + 1, heightM));
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
    return told(view, axis, one, passage);
  });
}

function told({ input }: View, axis: FanAxis, { base }: Sighted, passage: Passage): FrontArrival {
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
  { input, readings, pieces }: View,
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
