import { median } from '../../base/stats/quantile.ts';
import { weightedQuantile } from '../../base/stats/weighted.ts';
import { wholeHours } from '../../base/whole-hours.ts';
import type { Bin } from '../../season/season.ts';
import type { SensorSeries } from '../../tables/sensors.ts';
import { cumulativeFanHours, momentOfFanHour, unknownHoursBetween } from '../fan/spans.ts';
import { fillTimes } from '../grain/fill-times.ts';
import { believedReadings } from '../moisture/sensor-readings.ts';
import { FAN_ON, type FanSpans } from '../types.ts';
import { fanPieces } from './fan-pieces.ts';
import { UNKNOWN_H } from './front-limits.ts';
import { grainDepthAt } from './grain-depth.ts';
import { inOrder } from './in-order.ts';
import { type MoistureDays, moistureDays } from './moisture-days.ts';
import type { MoistureArrival, MoistureFront, MoistureFronts } from './moisture-front-types.ts';
import { moisturePassage } from './moisture-passage.ts';

/** A change under this, fraction, is no front: readings in moving air err by 0.4 point at each end. */
const LEAST_CHANGE_WB = 0.015;
/** Fewer fan hours dry nothing that a sensor could tell. */
const LEAST_FAN_H = 48;
/** Fewer days of readings tell no passage. */
const LEAST_DAYS = 4;
/** An arrival whose interval is wider than this part of the campaign is no date. */
const WIDEST_PART = 0.5;
/** Behind the front: the later part of the fan hours, in which the grain where the air enters has long been passed. */
const BEHIND_FROM = 0.5;

export interface MoistureFrontsInput {
  bin: Bin;
  series: readonly SensorSeries[];
  spans: FanSpans;
  /** of the front, should there be one */
  number: number;
}

interface Seen {
  base: MoistureArrival;
  fromEntryM: number;
  days: MoistureDays;
}

/**
 * The drying front (or that of conditioning) by the moisture sensors: at each, the fan hour at which its moisture had gone
 * half of the way from what it was to what the grain nearest to where the air enters had come to behind the front.
 * A front of temperature runs ahead of it, some fifty times as fast, and is told apart.
 */
export function moistureFronts({ bin, series, spans, number }: MoistureFrontsInput): MoistureFronts {
  const none = (why: string): MoistureFronts => ({ front: null, why });
  const times = fillTimes(bin);
  const fromMs = times.begunMs ?? Number.NEGATIVE_INFINITY;
  const pieces = fanPieces(spans, fromMs, times.wholeUntilMs ?? Number.POSITIVE_INFINITY);
  if (!spans.state.includes(FAN_ON) || pieces.midMs.length === 0)
    return none('The fan did not run while grain was in the bin.');
  const span = { fromMs: pieces.fromMs[0], toMs: pieces.toMs[pieces.toMs.length - 1] };
  const fanHours = pieces.hours.reduce((sum, one) => sum + one, 0);
  if (fanHours < LEAST_FAN_H)
    return none('The fan ran for less than 48 hours: too little to dry what a sensor could tell.');
  const [startH] = cumulativeFanHours(spans, Float64Array.of(span.fromMs));
  const hoursAt = (at: Float64Array) => cumulativeFanHours(spans, at).map((hours) => Math.max(0, hours - startH));
  const readings = believedReadings(bin, series, 'moisture', spans, span.fromMs, span.toMs + 1);
  if (readings.length === 0) return none('No cable of this bin has good moisture readings while its fans ran.');
  const depthM = times.depthM;
  const all = bin.cables.flatMap((cable) =>
    cable.sensorHeightsM.map((heightM, at): Seen => {
      const own = readings.find((one) => one.cable === cable.id && one.sensor === at + 1);
      const empty: MoistureDays = { timeMs: [], fanHours: [], moistureWb: [], still: [] };
      const days = own === undefined ? empty : moistureDays(own, span.fromMs, hoursAt);
      const above = depthM !== null && heightM >= (grainDepthAt(bin, span.toMs - 1) ?? depthM);
      const few = days.timeMs.length < LEAST_DAYS;
      const why = above
        ? 'The sensor hangs at or above the surface.'
        : few
          ? 'The sensor has too few good moisture readings.'
          : null;
      return {
        base: {
          cable: cable.id,
          sensor: at + 1,
          heightM,
          arrivedMs: null,
          fanHours: null,
          fanHoursInterval: null,
          aheadWb: few ? null : mean(days.moistureWb.slice(0, 2)),
          endWb: few ? null : mean(days.moistureWb.slice(-2)),
          why,
          ...(why === null ? {} : { unseen: true }),
        },
        fromEntryM: bin.air === 'up' ? heightM : (depthM ?? heightM) - heightM,
        days,
      };
    }),
  );
  const seen = all.filter((one) => one.base.unseen !== true);
  const behindWb = behindLevel(seen, fanHours);
  if (behindWb === null) return none('No cable has two sensors in the grain with good moisture readings.');
  const aheadWb = median(seen.map((one) => one.base.aheadWb ?? Number.NaN));
  if (Math.abs(aheadWb - behindWb) < LEAST_CHANGE_WB)
    return none(
      `Where the air enters, the moisture (measured) came to ${percent(behindWb)} against ${percent(aheadWb)} at the start: less than 1.5 points tell no front.`,
    );
  const kind = behindWb < aheadWb ? 'drying' : 'wetting';
  const sign = kind === 'drying' ? -1 : 1;
  const dated = all.map((one) => ({ ...one, base: arrivalOf(one, behindWb, sign, fanHours, kind) }));
  const arrivals = bin.cables.flatMap((cable) => ordered(dated.filter((one) => one.base.cable === cable.id)));
  const told = arrivals.filter((one) => one.fanHours !== null);
  if (told.length === 0)
    return none('The moisture changed, but at no sensor through half-way for days: no front can be dated.');
  if (!wentThrough(arrivals, seen, kind))
    return none(
      'The moisture changed at all heights together, not from where the air enters on: that shows no front (stirring, moved grain, or a sensor fault).',
    );
  return {
    front: {
      number,
      kind,
      span,
      fanHours,
      aheadWb,
      behindWb,
      arrivals: arrivals.map((one) => clocked(one, spans, span.fromMs)),
    },
    why: null,
  };
}

/** With the moment; without fan hours where the fan's log is silent for long before it. */
function clocked(one: MoistureArrival, spans: FanSpans, startMs: number): MoistureArrival {
  if (one.fanHours === null) return one;
  const arrivedMs = momentOfFanHour(spans, startMs, one.fanHours);
  const unknownH = arrivedMs === null ? 0 : unknownHoursBetween(spans, startMs, arrivedMs);
  if (unknownH <= UNKNOWN_H) return { ...one, arrivedMs };
  const why = `The fan log does not tell for ${wholeHours(unknownH)} before the arrival, so its fan hours are not known.`;
  return { ...one, arrivedMs, fanHours: null, fanHoursInterval: null, why };
}

const mean = (values: readonly number[]) => values.reduce((sum, one) => sum + one, 0) / values.length;
const notThere = (kind: MoistureFront['kind']) =>
  `The ${kind} front did not get there: the moisture did not go half of the way and stay there.`;
const percent = (wb: number) => `${(100 * wb).toFixed(1)} %`;

/** Median over the cables of what their sensors nearest to where the air enters held in the later half of the fan hours. */
function behindLevel(seen: readonly Seen[], fanHours: number): number | null {
  const cables = [...new Set(seen.map((one) => one.base.cable))].flatMap((cable) => {
    const own = seen.filter((one) => one.base.cable === cable);
    if (own.length < 2) return [];
    const late = lateLevel(
      own.reduce((least, one) => (one.fromEntryM < least.fromEntryM ? one : least)).days,
      fanHours,
    );
    return late === null ? [] : [late];
  });
  return cables.length === 0 ? null : median(cables);
}

/** Median of a sensor's days in the later half of the fan hours, weighed by these. */
function lateLevel(days: MoistureDays, fanHours: number): number | null {
  const late = [...days.fanHours.keys()].filter((i) => i > 0 && days.fanHours[i] >= BEHIND_FROM * fanHours);
  const hours = late.map((i) => days.fanHours[i] - days.fanHours[i - 1]);
  if (!(hours.reduce((sum, one) => sum + one, 0) > 0)) return null;
  return weightedQuantile(
    late.map((i) => days.moistureWb[i]),
    hours,
    0.5,
  );
}

function arrivalOf(
  { base, days }: Seen,
  behindWb: number,
  sign: 1 | -1,
  fanHours: number,
  kind: MoistureFront['kind'],
): MoistureArrival {
  if (base.unseen === true || base.aheadWb === null) return base;
  // Grain farther on may end drier than that where the air enters, which damp weather wets again.
  const ownWb = lateLevel(days, fanHours) ?? behindWb;
  const levelWb = sign * ownWb > sign * behindWb ? ownWb : behindWb;
  if (sign * (levelWb - base.aheadWb) < LEAST_CHANGE_WB)
    return { ...base, why: 'From the first it was within 1.5 points of what the grain behind the front came to.' };
  const found = moisturePassage(days, (base.aheadWb + levelWb) / 2, sign, fanHours);
  if (found === null)
    return {
      ...base,
      why: notThere(kind),
    };
  if (found.interval[1] - found.interval[0] > WIDEST_PART * fanHours)
    return { ...base, why: 'The moisture went by half-way too slowly to date it.' };
  return { ...base, fanHours: found.fanHours, fanHoursInterval: found.interval };
}

/** A cable's arrivals without those that no one front explains. */
function ordered(cable: readonly Seen[]): MoistureArrival[] {
  const dated = cable
    .filter((one) => one.base.fanHours !== null)
    .sort((a, b) => a.fromEntryM - b.fromEntryM)
    .map(({ base }) => ({ base, fanHours: base.fanHours ?? 0, interval: base.fanHoursInterval ?? ([0, 0] as const) }));
  const fits = inOrder(dated);
  const odd = new Set(dated.filter((_, i) => !fits[i]).map((one) => one.base.sensor));
  return cable.map(({ base }) =>
    odd.has(base.sensor)
      ? {
          ...base,
          fanHours: null,
          fanHoursInterval: null,
          why: 'Its moisture moved at a time that does not fit the front that passed the other sensors of this cable.',
        }
      : base,
  );
}

/** The front came later the farther the air had gone, or did not come there at all. */
function wentThrough(
  arrivals: readonly MoistureArrival[],
  seen: readonly Seen[],
  kind: MoistureFront['kind'],
): boolean {
  const told = seen.flatMap(({ base, fromEntryM }) => {
    const one = arrivals.find((each) => each.cable === base.cable && each.sensor === base.sensor);
    if (one === undefined) return [];
    return one.fanHours === null && one.why !== notThere(kind)
      ? []
      : [{ fromEntryM, hours: one.fanHours ?? Number.POSITIVE_INFINITY }];
  });
  let later = 0;
  let earlier = 0;
  for (const a of told) {
    for (const b of told) {
      if (b.fromEntryM - a.fromEntryM < 0.3 || a.hours === b.hours) continue;
      if (b.hours > a.hours) later += 1;
      else earlier += 1;
    }
  }
  return later >= 2 * earlier && later > 0;
}
