import { type Estimate, estimate, withheld } from '../../base/estimate.ts';
import type { Bin } from '../../season/season.ts';
import type { CableSpread } from './cable-spread.ts';
import { type DepthStage, depthStages } from './depth-stages.ts';
import { type ErrorPart, joinErrors } from './error-part.ts';
import { type MoistureMoment, sensorMoment } from './moisture-moment.ts';
import { DAY_MS, likelyHours, loggedHours } from './moment-window.ts';
import { type ObservedMoisture, observeMoisture } from './observed-moisture.ts';
import { pointsRemoved } from './points-removed.ts';
import { BIAS } from './reading-parts.ts';
import type { MoistureStage, MoistureStages } from './stage-types.ts';

/** A stage with fewer fan hours than this takes out next to nothing: common practice is 0.3 to 0.5 point in 24 good hours. */
const FEW_HOURS = 6;
/** What 24 fan hours take out at most, sd in points, where a stage is too short to be read. */
const DAY_POINTS_SD = 0.3;

/**
 * Points by stage of a bin filled or emptied in steps, each from the sensors in the grain that lay there all through it,
 * so that the mean's change by grain that came or went counts as no drying; then the balance: the sum of each stage's
 * points by the dry matter in place.
 *
 * @param pooled  spread between cables in the season's other bins
 * @returns       null where the depth does not change while the bin holds grain
 */
export function moistureStages(observed: ObservedMoisture, pooled: CableSpread | null): MoistureStages | null {
  const { input, fill } = observed;
  const times = input.series.filter((one) => one.bin === input.bin.id && one.timeMs.length > 0);
  if (fill.depthM === null || times.length === 0) return null;
  const firstMs = Math.min(...times.map((one) => one.timeMs[0]));
  const lastMs = Math.max(...times.map((one) => one.timeMs[one.timeMs.length - 1])) + 1;
  const spans = depthStages(input.bin, firstMs, lastMs);
  if (spans.length < 2) return null;
  const read = spans.map((stage) => readStage(observed, stage, pooled));
  const stages = read.map(
    (one, i): MoistureStage => ({
      span: spans[i].span,
      depthM: spans[i].depthM,
      share: spans[i].depthM / fill.depthM!,
      fanHours: one.logged,
      likelyHours: one.fanHours,
      startWb: one.start?.mean.value ?? null,
      endWb: one.end?.mean.value ?? null,
      points: one.points,
      mixed: i === 0 ? null : mixedBetween(read[i - 1].end, one.start),
    }),
  );
  const full = spans.findIndex((stage) => stage.depthM >= 0.9 * fill.depthM!);
  const outside = stages.filter(
    ({ span }) => span.toMs <= (fill.filledMs ?? span.fromMs) || span.fromMs >= (fill.wholeUntilMs ?? span.toMs),
  );
  const hours = outside.map((one) => one.likelyHours);
  return {
    stages,
    perFullBushel: summed(stages, (stage) => stage.share),
    stayed: summed(stages.slice(full), () => 1),
    outsideFanHours: hours.some((one) => one === null) ? null : hours.reduce((sum: number, one) => sum + one!, 0),
    notes: notesOf(stages),
  };
}

interface ReadStage {
  fanHours: number | null;
  logged: Estimate;
  start: MoistureMoment | null;
  end: MoistureMoment | null;
  points: Estimate;
}

function readStage({ input }: ObservedMoisture, stage: DepthStage, pooled: CableSpread | null): ReadStage {
  const { fromMs, toMs } = stage.span;
  const bin: Bin = {
    ...input.bin,
    grain: {
      ...input.bin.grain,
      depthSteps: [{ fromMs: Number.NEGATIVE_INFINITY, depthM: stage.depthM }],
      filledMs: fromMs,
      unloadedMs: toMs,
    },
  };
  const fanHours = input.spans === null ? null : likelyHours(input.spans, fromMs, toMs);
  const logged =
    input.spans === null ? withheld('No log tells when the fan ran.') : loggedHours(input.spans, fromMs, toMs);
  const own = observeMoisture({ ...input, bin, tickets: [] });
  const start = own.moments.start === null ? null : sensorMoment(own, 'start', pooled);
  const end = own.moments.end === null ? null : sensorMoment(own, 'end', pooled);
  if (start !== null && end !== null)
    return { fanHours, logged, start, end, points: pointsRemoved(own, start, end, pooled).points };
  const read = input.series.some((one) => one.bin === bin.id && one.timeMs.some((ms) => ms >= fromMs && ms < toMs));
  const why = !read
    ? 'The cables were not read in that time.'
    : (own.moments.startWhy ?? own.moments.endWhy ?? 'The moisture is not known.');
  if (fanHours !== null && fanHours <= FEW_HOURS) {
    const most = (DAY_POINTS_SD * fanHours) / 24;
    return { fanHours, logged, start, end, points: estimate(0, -most, 2 * most) };
  }
  return { fanHours, logged, start, end, points: withheld(why) };
}

/** The bias that all sensors share stands in both means and cancels. */
function mixedBetween(before: MoistureMoment | null, after: MoistureMoment | null): Estimate {
  if (before?.mean.value == null || after?.mean.value == null)
    return withheld('The mean before or after the change of depth is not known.');
  const points = 100 * (before.mean.value - after.mean.value);
  const own = (moment: MoistureMoment): readonly ErrorPart[] => moment.parts.filter((part) => part.cause !== BIAS);
  const { half90 } = joinErrors([...own(before), ...own(after)]);
  return estimate(points, points - half90, points + half90);
}

/** Each stage has other fronts, other days and, in part, other grain in place: half-widths join as squares. */
function summed(stages: readonly MoistureStage[], weight: (stage: MoistureStage) => number): Estimate {
  const lacking = stages.find((one) => one.points.value === null);
  if (stages.length === 0) return withheld('There is no stage.');
  if (lacking !== undefined) {
    const days = Math.round((lacking.span.toMs - lacking.span.fromMs) / DAY_MS);
    const { value: told } = lacking.fanHours;
    const hours = told === null ? 'no log tells when the fan ran' : `${Math.round(told)} fan hours in the log`;
    return withheld(`The stage of ${days} days (${hours}) can’t be told: ${lacking.points.why}`);
  }
  const value = stages.reduce((sum, stage) => sum + weight(stage) * stage.points.value!, 0);
  const side = (end: 0 | 1) =>
    Math.hypot(...stages.map((stage) => weight(stage) * (stage.points.interval![end] - stage.points.value!)));
  return estimate(value, value - side(0), value + side(1));
}

function notesOf(stages: readonly MoistureStage[]): string[] {
  const moved = stages.flatMap(({ mixed }) => (mixed?.interval == null ? [] : [mixed]));
  const clear = moved.filter(({ interval }) => interval![0] > 0 || interval![1] < 0).length;
  if (clear === 0) return [];
  return [
    `${clear} of ${stages.length - 1} changes of depth moved the mean clearly, by grain that came or went; none of it is counted as drying.`,
  ];
}
