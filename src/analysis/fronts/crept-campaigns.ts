import { median } from '../../base/stats/quantile.ts';
import type { Campaign } from '../types.ts';
import { dayBefore, dayMean } from './day-mean.ts';
import type { FanPieces } from './fan-pieces.ts';
import { type CampaignSpan, START_PART } from './find-campaigns.ts';
import { byCable } from './front-finding.ts';
import { CLEARLY_K, DAY_H, LEAST_CHANGE_K } from './front-limits.ts';
import type { FrontsView } from './fronts-view.ts';
import { grainDepthAt } from './grain-depth.ts';
import { grainMean } from './grain-mean.ts';
import { gotThrough } from './turned-back.ts';

/** The part of the depth that a front comes to last. */
const FAR_PART = 1 / 3;

/**
 * Campaigns of air that fell so slowly, or in such small steps, that the grain's mean went along with the front and the day's
 * mean never stood clearly apart from it. It did so from the grain that the front had yet to enter, and the grain's mean went a
 * front's change. Where a campaign of the same kind follows at once the two are one: the air has not crossed the grain's mean.
 *
 * @param swingK  [pieces], how far the grain swings with the day to each side
 * @param found   campaigns in time order
 * @returns       candidates, one at most between two of `found`, or one of these begun earlier; see `creptThrough`
 */
export function creptCampaigns(view: FrontsView, swingK: Float64Array, found: readonly CampaignSpan[]): CampaignSpan[] {
  const { pieces, air, grainC } = view;
  const dayC = dayMean(pieces, air.tempC);
  const meanC = dayBefore(pieces, grainC);
  const farC = dayBefore(pieces, farMean(view));
  const crept = freeStretches(pieces, found).flatMap(([from, to]): CampaignSpan[] => {
    const [cooled, warmed] = ([-1, 1] as const).map((sign) => ({ sign, ...widestMove(meanC, from, to, sign) }));
    const way = warmed.changeK > cooled.changeK ? warmed : cooled;
    if (!(way.changeK >= LEAST_CHANGE_K)) return [];
    const apartK = (piece: number) => way.sign * (dayC[piece] - farC[piece]);
    let clear = way.from;
    while (clear <= way.to && !(apartK(clear) >= Math.max(CLEARLY_K, swingK[clear]))) clear += 1;
    if (clear > way.to) return [];
    let first = clear;
    while (first > way.from && apartK(first - 1) >= START_PART * CLEARLY_K) first -= 1;
    const span = { fromMs: pieces.fromMs[first], toMs: pieces.toMs[way.to] };
    return [{ kind: way.sign < 0 ? 'cooling' : 'warming', span, first, last: way.to, run: pieces.run[first] }];
  });
  return crept.map((one) => {
    const next = found.find(({ first }) => first === one.last + 1);
    if (next === undefined || next.kind !== one.kind || next.run !== one.run) return one;
    return { ...next, first: one.first, span: { ...next.span, fromMs: one.span.fromMs } };
  });
}

/**
 * True where a crept front got through, and took longer than a day from a cable's first sensor to its last. A bed that the air
 * goes through within a day follows the weather: its sensors change one after the other without a front.
 */
export function creptThrough(campaign: Campaign): boolean {
  if (!gotThrough(campaign)) return false;
  const cables = [...byCable(campaign.arrivals.filter(({ fanHours }) => fanHours !== null)).values()];
  const tookH = cables.map((of) => {
    const hours = of.map(({ fanHours }) => fanHours ?? 0);
    return Math.max(...hours) - Math.min(...hours);
  });
  return median(tookH) > DAY_H;
}

/** Campaigns in time order with others that are new or begin earlier. */
export function withCrept(found: readonly CampaignSpan[], crept: readonly CampaignSpan[]): CampaignSpan[] {
  const left = found.filter((one) => !crept.some(({ first, last }) => first <= one.first && one.last <= last));
  return [...left, ...crept].sort((a, b) => a.first - b.first);
}

/** Mean temperature of the grain that the air comes to last, [pieces], C; NaN where no sensor of it has a reading. */
function farMean({ input, pieces, readings }: FrontsView): Float64Array {
  const { bin } = input;
  const stated = grainDepthAt(bin, pieces.midMs[pieces.midMs.length - 1]);
  const depthM = stated ?? Math.max(...readings.map(({ heightM }) => heightM));
  const isFar = (heightM: number) =>
    bin.air === 'up' ? heightM >= (1 - FAR_PART) * depthM : heightM <= FAR_PART * depthM;
  return grainMean(
    bin,
    readings.filter(({ heightM }) => isFar(heightM)),
    pieces.midMs,
  );
}

/** [first, last] pieces of each run that no campaign has. */
function freeStretches({ run }: FanPieces, found: readonly CampaignSpan[]): [first: number, last: number][] {
  const taken = new Uint8Array(run.length);
  for (const { first, last } of found) taken.fill(1, first, last + 1);
  const out: [number, number][] = [];
  for (let i = 0; i < run.length; i++) {
    if (taken[i] === 1) continue;
    const before = out.at(-1);
    if (before !== undefined && before[1] === i - 1 && run[i - 1] === run[i]) before[1] = i;
    else out.push([i, i]);
  }
  return out;
}

/** The two pieces within [from, to] between which a mean moved farthest in one direction; NaN K where nothing was read. */
function widestMove(meanC: Float64Array, from: number, to: number, sign: 1 | -1) {
  let start = -1;
  let best = { from, to, changeK: Number.NaN };
  for (let i = from; i <= to; i++) {
    if (Number.isNaN(meanC[i])) continue;
    if (start < 0 || sign * (meanC[i] - meanC[start]) < 0) start = i;
    const changeK = sign * (meanC[i] - meanC[start]);
    if (!(changeK <= best.changeK)) best = { from: start, to: i, changeK };
  }
  return best;
}
