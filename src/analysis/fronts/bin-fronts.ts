import { fanHoursBetween } from '../fan/spans.ts';
import { type BinFronts, type Campaign, FAN_ON, type FrontArrival } from '../types.ts';
import { binArrivals } from './cable-arrivals.ts';
import { campaignSpeed } from './campaign-speed.ts';
import { creptCampaigns, creptThrough, withCrept } from './crept-campaigns.ts';
import { dailySwing } from './daily-swing.ts';
import { type EnteringAir, enteringAir } from './entering-air.ts';
import { eachWentBy, fallsWithin } from './falls-within.ts';
import { fanAxis } from './fan-axis.ts';
import { type FanPieces, fanPieces } from './fan-pieces.ts';
import { statedWarming } from './fan-warming.ts';
import { type CampaignSpan, findCampaigns } from './find-campaigns.ts';
import { noFrontFormed } from './front-formed.ts';
import { DAY_H } from './front-limits.ts';
import type { FrontsInput, FrontsView } from './fronts-view.ts';
import { goodReadings } from './good-readings.ts';
import { grainMean } from './grain-mean.ts';
import { tellStalled } from './stalled.ts';
import { turnedBack } from './turned-back.ts';

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
  if (input.heated === true && bin.air === 'up' && air.warmingFrom !== 'plenum') {
    return nothing(
      'A heater warms the air that enters, and no plenum log tells by how much: whether that air was cooler or warmer than the grain is not known.',
    );
  }
  const swingK = dailySwing(readings, pieces.midMs);
  const view: FrontsView = { input, pieces, readings, air, grainC };
  const clear = told(
    view,
    findCampaigns(pieces, air.tempC, grainC, swingK),
    (one, campaign) => !noFrontFormed(bin, one, campaign) && !turnedBack(pieces, one, campaign),
  );
  const crept = creptCampaigns(view, swingK, clear.spans);
  const tried = withCrept(clear.spans, crept);
  const passed = crept.filter((one) => creptThrough(campaignAt(view, tried, tried.indexOf(one))));
  const whole = passed.length === 0 ? clear : told(view, withCrept(clear.spans, passed), () => true);
  const campaigns = whole.spans
    .flatMap((one, index) => byFalls(view, one, whole.spans[index + 1]) ?? [whole.campaigns[index]])
    .map((one, index) => ({ ...one, number: index + 1 }));
  if (campaigns.length === 0) {
    return nothing(
      "The day's mean air was never clearly cooler or warmer than the grain for long enough to send a front through.",
    );
  }
  return { campaigns, why: null };
}

/** The campaigns that hold, in order. One that proved to be none must not cut short the one before it: that one is worked out anew. */
function told(
  view: FrontsView,
  found: readonly CampaignSpan[],
  holds: (one: CampaignSpan, campaign: Campaign) => boolean,
): { spans: CampaignSpan[]; campaigns: Campaign[] } {
  const all = found.map((_, index) => campaignAt(view, found, index));
  const spans = found.filter((one, index) => holds(one, all[index]));
  const campaigns = spans.map((one, index) => {
    const was = found.indexOf(one);
    const sameEnd = found[was + 1] === spans[index + 1];
    return sameEnd ? { ...all[was], number: index + 1 } : campaignAt(view, spans, index);
  });
  return { spans, campaigns };
}

/** The falls of the air within a campaign, each with its own front, where the sensors saw them; null where they did not. */
function byFalls(view: FrontsView, one: CampaignSpan, next: CampaignSpan | undefined): Campaign[] | null {
  // The hours of warming campaigns are added up: of two that overlap some would count twice.
  if (one.kind === 'warming') return null;
  const falls = fallsWithin(view.pieces, view.air.tempC, one);
  if (falls.length === 1) return null;
  const out: Campaign[] = [];
  // From the last on: what that front passed was not the one before's.
  for (const fall of [...falls].reverse()) {
    out.unshift(campaignAt(view, next === undefined ? [fall] : [fall, next], 0, out[0]?.arrivals));
  }
  return eachWentBy(out, view.input.bin.air) ? out : null;
}

/** @param later  arrivals of a front that follows while this one may still be under way */
function campaignAt(
  view: FrontsView,
  found: readonly CampaignSpan[],
  index: number,
  later: readonly FrontArrival[] = [],
): Campaign {
  const { pieces, input, air, grainC } = view;
  const one = found[index];
  const startMs = one.span.fromMs;
  const runToMs = pieces.runToMs[one.run];
  const untilMs = followedUntil(view, one, found[index + 1]);
  const axis = fanAxis(input.fan, startMs, untilMs, pieces.runFromMs[one.run], runToMs);
  const arrivals = tellStalled(binArrivals(view, one, axis, later), input.bin.air);
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
function followedUntil({ pieces, input }: FrontsView, one: CampaignSpan, next: CampaignSpan | undefined): number {
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
