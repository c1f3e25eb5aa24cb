import { firstNotBefore } from '../../base/first-not-before.ts';
import { median } from '../../base/stats/quantile.ts';
import { wholeHours } from '../../base/whole-hours.ts';
import { fanHoursBetween, unknownHoursBetween } from '../fan/spans.ts';
import type { FanSpans, FrontArrival } from '../types.ts';
import { alikeAlong } from './alike-passages.ts';
import type { FanAxis } from './fan-axis.ts';
import { type CampaignSpan, signOf } from './find-campaigns.ts';
import { frontChains } from './front-chain.ts';
import { AHEAD_H, ARRIVAL_WITHIN_H, DAY_H, HOUR_MS, UNKNOWN_H } from './front-limits.ts';
import type { FrontsView } from './fronts-view.ts';
import { type GoodReadings, readingsWithin } from './good-readings.ts';
import { grainDepthAt } from './grain-depth.ts';
import type { HoleCrossing } from './hole-crossing.ts';
import type { Passage } from './passages.ts';
import { type HolePlace, paceOf, placeInHoles } from './place-in-holes.ts';
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
  /** where there are none: the hole of its log in which a front passed all the same */
  crossing: HoleCrossing | null;
  /** told where no passage is chosen */
  none: FrontArrival;
}

const OUT_OF_ORDER =
  'Its temperature moved at a time that does not fit the front that passed the other sensors of this cable.';

const WITH_THE_NEXT = 'Its temperature moved with the front that followed.';

/** When a campaign's front came to each sensor of a bin, or why that is not told. @param later  see campaignAt */
export function binArrivals(
  view: FrontsView,
  campaign: CampaignSpan,
  axis: FanAxis,
  later: readonly FrontArrival[],
): FrontArrival[] {
  const cables = view.input.bin.cables.map(({ id, sensorHeightsM }) =>
    sightedAlong(view, campaign, axis, id, sensorHeightsM, later),
  );
  const places = cables.map((sighted) =>
    sighted
      .map((one, index) => ({ ...one, index }))
      .filter((one) => one.passages.length > 0)
      .sort((a, b) => a.fromEntryM - b.fromEntryM),
  );
  const chosen = frontChains(places);
  const seen = cables.map((sighted, i) => seenAlong(sighted, places[i], chosen[i]));
  const paces = seen.flatMap((cable) => paceOf(cable.map(({ place }) => place)) ?? []);
  const paceHM = paces.length === 0 ? null : median(paces);
  return seen.flatMap((cable) => cableArrivals(view, axis, cable, paceHM));
}

function sightedAlong(
  view: FrontsView,
  campaign: CampaignSpan,
  axis: FanAxis,
  cable: string,
  heightsM: readonly number[],
  later: readonly FrontArrival[],
): Sighted[] {
  return heightsM.map((heightM, at) => {
    const one = sightedAt(view, campaign, axis, cable, at + 1, heightM);
    const next = later.find((other) => other.cable === cable && other.sensor === at + 1)?.arrivedMs;
    if (next === undefined || next === null) return one;
    const [nextH] = axis.hoursAt(Float64Array.of(next));
    const passages = one.passages.filter(({ fanHours }) => fanHours < nextH - ARRIVAL_WITHIN_H);
    if (passages.length > 0 || one.passages.length === 0) return { ...one, passages };
    return { ...one, passages, none: { ...one.base, why: WITH_THE_NEXT } };
  });
}

/** What a sensor tells once the cables' passages were held against each other. */
interface Seen {
  base: FrontArrival;
  passage: Passage | null;
  /** where the front passed in a hole of the log */
  crossing: HoleCrossing | null;
  place: HolePlace;
  /** fan hours of other passages that its readings speak for nearly as much */
  alike: readonly number[];
  /** told where there is neither */
  none: FrontArrival;
}

function seenAlong(
  sighted: readonly Sighted[],
  places: readonly { index: number }[],
  chosen: readonly number[],
): Seen[] {
  const alike = alikeAlong(
    places.map(({ index }, at) => ({
      passages: sighted[index].passages,
      chosen: chosen[at] < 0 ? null : sighted[index].passages[chosen[at]],
    })),
  );
  return sighted.map((one, index) => {
    const { base, fromEntryM } = one;
    const at = places.findIndex((other) => other.index === index);
    const passage = at < 0 || chosen[at] < 0 ? null : one.passages[chosen[at]];
    const inHole = passage?.hole === undefined ? null : { ...passage, hole: passage.hole };
    const crossing = at < 0 ? one.crossing : inHole;
    const toldH = crossing === null ? (passage?.fanHours ?? null) : null;
    const none = at < 0 ? one.none : { ...base, why: OUT_OF_ORDER };
    return { base, passage, crossing, place: { fromEntryM, toldH, crossing }, alike: alike[at] ?? [], none };
  });
}

function cableArrivals(view: FrontsView, axis: FanAxis, seen: readonly Seen[], paceHM: number | null): FrontArrival[] {
  const placedH = placeInHoles(
    seen.map(({ place }) => place),
    paceHM,
  );
  return seen.map(({ base, passage, crossing, alike, none }, i) => {
    if (crossing === null) return passage === null ? none : datedAt(view, axis, base, passage, alike);
    const [fromH, toH] = crossing.hole;
    const hours = placedH[i] ?? (passage === null ? null : (Math.max(0, fromH) + toH) / 2);
    return hours === null ? none : datedAt(view, axis, base, { ...crossing, fanHours: hours });
  });
}

function datedAt(
  { input }: FrontsView,
  axis: FanAxis,
  base: FrontArrival,
  { aheadC, behindC, fanHours, hole }: Omit<Passage, 'weight'>,
  alike: readonly number[] = [],
): FrontArrival {
  const arrivedMs = axis.momentOf(fanHours);
  if (arrivedMs === null) return base;
  const stood = grainDepthAt(input.bin, arrivedMs);
  if (stood !== null && base.heightM >= stood)
    return { ...base, why: 'The surface fell below the sensor in this campaign.', unseen: true };
  const unknownH = unknownHoursBetween(input.fan, axis.startMs, arrivedMs);
  const ends = hole?.map((hour) => axis.momentOf(Math.max(0, hour)) ?? arrivedMs) ?? [arrivedMs, arrivedMs];
  const others = alike.map((hour) => axis.momentOf(hour)).filter((ms) => ms !== null);
  const within = [
    withinHours(input.fan, axis.startMs, arrivedMs, ends),
    ...others.map((ms) => withinHours(input.fan, axis.startMs, ms, [ms, ms])),
  ];
  const [low, high] = [Math.min(...within.map(([from]) => from)), Math.max(...within.map(([, to]) => to))];
  const placed = hole === undefined ? {} : { placed: true, arrivedInterval: [ends[0], ends[1]] as const };
  const told = { ...base, aheadC, behindC, arrivedMs, ...placed };
  if (unknownH > UNKNOWN_H) {
    const why = `The fan log does not tell for ${wholeHours(unknownH)} before the arrival: it came after ${Math.round(low)} to ${Math.round(high)} fan hours.`;
    return { ...told, why };
  }
  const hours = fanHoursBetween(input.fan, axis.startMs, arrivedMs) + unknownH / 2;
  const wide = unknownH > 0 || hole !== undefined || others.length > 0;
  return { ...told, fanHours: hours, ...(wide ? { fanHoursInterval: [low, high] as const } : {}) };
}

/**
 * Fan hours in which an arrival lies, 90 %; of time that the fan log does not know the fan may have run any part.
 *
 * @param ends  of the hole of the sensor's log, ms UTC; else twice the arrival
 */
function withinHours(fan: FanSpans, startMs: number, arrivedMs: number, ends: readonly number[]): [number, number] {
  const least = (ms: number) => fanHoursBetween(fan, startMs, ms);
  const most = (ms: number) => least(ms) + unknownHoursBetween(fan, startMs, ms);
  return [
    Math.max(0, Math.min(least(ends[0]), least(arrivedMs) - ARRIVAL_WITHIN_H)),
    Math.max(most(ends[1]), most(arrivedMs) + ARRIVAL_WITHIN_H),
  ];
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
    return { base, fromEntryM, passages: [], crossing: null, none };
  };
  if (depthM !== null && heightM >= depthM) return unseen('The sensor hangs at or above the surface.');
  const whole = readings.find((one) => one.cable === cable && one.sensor === sensor);
  if (whole === undefined) return unseen('The sensor has no good readings.');
  const runFromMs = pieces.runFromMs[campaign.run];
  // Before the run the grain stood still; a run under way is needed for a day back, so that its daily wave is seen whole.
  const fromMs = Math.max(axis.startMs - 3 * DAY_H * HOUR_MS, Math.min(runFromMs, axis.startMs) - AHEAD_H * HOUR_MS);
  const toMs = axis.endMs + AHEAD_H * HOUR_MS;
  const near = readingsWithin(whole, heardBefore(input.fan, whole, fromMs, axis.startMs), toMs);
  const { passages, none, blind, crossing = null } = sensorPassages(near, axis, signOf(campaign.kind));
  if (blind === true && none.why !== null) return { ...unseen(none.why), crossing };
  const possible = passages.filter(({ fanHours }) => fanHours > 0 || fromEntryM <= AT_ENTRY_M);
  const early = 'The temperature was past half-way when the campaign began: an earlier front had come.';
  const without = passages.length > 0 ? { ...passages[0], why: early } : none;
  return {
    base,
    fromEntryM,
    passages: possible,
    crossing,
    none: { ...base, aheadC: without.aheadC, behindC: without.behindC, why: without.why },
  };
}
