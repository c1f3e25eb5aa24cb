import { withheld } from '../../base/estimate.ts';
import { wholeHours } from '../../base/whole-hours.ts';
import { aimsAtTemperature } from '../../season/goal.ts';
import type { LoadedSeason } from '../../season/loaded.ts';
import { type SensorSeries, sensorSeries } from '../../tables/sensors.ts';
import { HOUR_MS } from '../fronts/front-limits.ts';
import type { BinReview } from '../types.ts';
import { type BinLog, binLog } from './bin-log.ts';
import { clockDoubts } from './clock-check.ts';
import { misplacedSensors, openEndOf } from './cross-checks.ts';
import { depthDoubts } from './depth-check.ts';
import { type Fit, type Model, modelOf } from './fit-bin.ts';
import { fitIntervals, weightOf } from './fit-intervals.ts';
import { fitParameters } from './fit-parameters.ts';
import { type FitSamples, fitSamples } from './fit-samples.ts';
import type { FittedValues } from './fitted-values.ts';
import { flowDoubts } from './flow-checks.ts';
import { type IsothermChoice, isothermChoices } from './isotherm-choices.ts';
import { airLost, leakNotes } from './leak-joined.ts';
import { mayBes } from './may-be.ts';
import { misfitOf, persisting } from './misfit-of.ts';
import type { BinModel } from './model-types.ts';
import { paperMoistures } from './paper-moistures.ts';
import { scanCables } from './scan-cables.ts';
import { sensorOffsets } from './sensor-offsets.ts';
import { solve } from './solve-fit.ts';
import { splitRead } from './split-read.ts';
import { sureEnd, sureFlow } from './sure-numbers.ts';
import { verdictOf } from './verdict-of.ts';

/** A fan that ran for less leaves no model to be made. */
export const LEAST_FAN_H = 24;
/** Rounds of a fit: the first, by the usual isotherms; each other's; the nearest ones'. */
const ROUNDS = { first: 2, other: 1, near: 4 } as const;
/** Steps of a round: of a fit that is kept, and of one that only shows whether an isotherm comes near. */
const LONG = 3;
const SHORT = 2;
/** Isotherms whose sums of squares on the first part lie farther from the best's are ruled out; so many of the others go on to the whole. */
const NEAR_COST = 9;
const MOST_FINALS = 6;
/** A sum of squares of the whole season so much above the best's: seven times less likely, no more. */
const WITHIN_REACH = 4;
/** What a fit may still gain by being fitted to its end. */
const MAY_COME_NEAR = 15;

/** Fit the bed to a bin's log: on the first part of its fan hours, judged on the rest; then to all of it. */
export function binModel(loaded: LoadedSeason, review: BinReview): BinModel {
  const own = sensorSeries(loaded.tables.readings).filter((one) => one.bin === review.bin.id);
  const log = binLog(loaded, review, own);
  return typeof log === 'string' ? noModel(log) : modelOfLog(log, own);
}

/** The same of a log that was read before. @param own  the bin's series */
function modelOfLog(log: BinLog, own: readonly SensorSeries[]): BinModel {
  const ran = log.fan.on.reduce((sum, share) => sum + share, 0);
  if (ran < LEAST_FAN_H)
    return noModel(`The fan ran for ${wholeHours(ran)} while the bin was filled; a model needs a day at least.`);
  const samples = fitSamples(log);
  const split = splitRead(samples);
  const baseM3S = baseFlow(log);
  const parameters = fitParameters(log, baseM3S);
  const none: readonly Float64Array[] = log.cables.map(({ sensors }) => new Float64Array(sensors.length));
  const papers = paperMoistures(
    log,
    samples.readHours.map((hour) => log.startMs + (hour + 1) * HOUR_MS),
  );
  const model = (choice: IsothermChoice, reads: number, offsets = none) =>
    modelOf(log, samples, parameters, choice, baseM3S, reads, offsets, papers);
  const tryOne = (
    choice: IsothermChoice,
    values: readonly number[],
    rounds: number,
    reads: number,
    from = none,
    steps = LONG,
  ): Tried => {
    let one = model(choice, reads, from);
    let fit = solve(one, parameters, values, rounds, steps);
    let offsets: readonly Float64Array[] = from;
    for (let again = 0; again < (rounds > 2 ? 2 : 1); again++) {
      offsets = sensorOffsets(log, samples, one.shown(fit.values), fit.moistureBiasWb, reads);
      one = model(choice, reads, offsets);
      fit = solve(one, parameters, fit.values, 1, steps === LONG ? LONG : 1);
    }
    return { choice, fit, offsets, model: one };
  };
  const [usual, ...others] = isothermChoices(log);
  const atOnce = tryOne(
    usual,
    parameters.list.map(() => 0),
    ROUNDS.first,
    split,
  );
  const freed = scanCables(atOnce.model, parameters, atOnce.fit.values);
  const first = freed === atOnce.fit.values ? atOnce : tryOne(usual, freed, ROUNDS.first, split, atOnce.offsets);
  const screened = [
    first,
    ...others.map((choice) => tryOne(choice, first.fit.values, ROUNDS.other, split, first.offsets, SHORT)),
  ].sort(byCost);
  // Those that may still come near are fitted to their end: cut short, the truth may stand fifth.
  const [near, ...farther] = screened;
  const finish = (one: Tried) => tryOne(one.choice, one.fit.values, ROUNDS.near, split, one.offsets);
  const best = finish(near);
  const tried = [
    best,
    ...farther.map((one) => (one.fit.cost - best.fit.cost < MAY_COME_NEAR ? finish(one) : one)),
  ].sort(byCost);
  const trained = tried[0];

  const all = samples.readHours.length;
  const carried = model(trained.choice, all, trained.offsets).shown(trained.fit.values);
  const finals = tried
    .filter((one) => one.fit.cost - trained.fit.cost < NEAR_COST)
    .slice(0, MOST_FINALS)
    .map((one) => tryOne(one.choice, one.fit.values, 1, all, one.offsets))
    .sort(byCost);
  const final = finals[0];
  const ends = finals
    .filter((one) => one.fit.cost - final.fit.cost < WITHIN_REACH)
    .map((one) => one.model.endWb(one.fit.values));
  const openEnd = openEndOf(ends);
  const intervals = fitIntervals(log, finals, parameters, papers);
  const part = (from: number, to: number) => ({
    fromMs: momentOf(log, samples, from),
    toMs: momentOf(log, samples, to),
    fanHours: fanHoursTo(samples, to) - fanHoursTo(samples, from),
  });
  const seen = (from: number, to: number) =>
    misfitOf(samples, carried, trained.fit.moistureBiasWb, trained.offsets, from, to);
  const { flowM3S, flowAtCables, moistureBiasPoints, endMoistureWb } = intervals;
  const told = {
    fitted: fittedOf(final, intervals.flowOverCables),
    cables: log.cables.map(({ cable, share }, c) => ({ cable, share, relative: final.fit.cableFlows[c] })),
    flowM3S: sureFlow(flowM3S, log.floorAreaM2 * log.depthM),
    moistureBiasPoints,
    endMoistureWb: sureEnd(endMoistureWb, openEnd?.why ?? null),
    isotherms: tried.map(({ fit }) => ({
      name: fit.isotherm,
      cable: fit.cableIsotherm,
      cost: fit.cost - trained.fit.cost,
    })),
    trained: { ...part(0, split), misfit: seen(0, split) },
    unseen: {
      ...part(split, all),
      misfit: seen(split, all),
      persistence: misfitOf(samples, persisting(samples, split), 0, null, split, all),
    },
    notes: log.notes,
  };
  const play = (other: BinLog) => {
    const { choice, fit, offsets } = final;
    return modelOf(other, samples, parameters, choice, baseM3S, all, offsets, papers).shown(fit.values);
  };
  const doubts = [
    ...misplacedSensors(samples, final.model.shown(final.fit.values)),
    ...depthDoubts(log, own),
    ...flowDoubts(log, flowM3S, flowAtCables),
    ...airLost(log, final.fit.flowM3S * intervals.flowOverCables, flowM3S),
    ...clockDoubts(log, samples, play),
    ...(openEnd?.guess === true && !aimsAtTemperature(log.bin.goal) ? [openEnd] : []),
  ];
  const verdict = verdictOf(log, told, final.fit, parameters, doubts);
  if (!verdict.trusted) return { ...told, mayBes: [], ...verdict };
  const weighed = finals.map((one) => ({ ...one, weight: weightOf(one.fit, final.fit) }));
  const valuesOf = (of: Tried, fit: Fit) => fittedOf({ ...of, fit }, intervals.flowOverCables);
  const notes = [...told.notes, ...leakNotes(log, flowM3S)];
  return { ...told, notes, mayBes: mayBes(log, weighed, parameters, papers, valuesOf, intervals.placeSd), ...verdict };
}

/** A fit with one isotherm. */
export interface Tried {
  choice: IsothermChoice;
  fit: Fit;
  model: Model;
  offsets: readonly Float64Array[];
}

const byCost = (a: Tried, b: Tried) => a.fit.cost - b.fit.cost;

function noModel(why: string): BinModel {
  return {
    fitted: null,
    cables: [],
    flowM3S: withheld(why),
    moistureBiasPoints: withheld(why),
    endMoistureWb: withheld(why),
    mayBes: [],
    isotherms: [],
    trained: null,
    unseen: null,
    trusted: false,
    why,
    wouldHelp: [],
    notes: [],
  };
}

function fittedOf({ fit, offsets }: Tried, flowOverCables: number): FittedValues {
  const { values: _, cost: __, ...fitted } = fit;
  return { ...fitted, flowM3S: fit.flowM3S * flowOverCables, offsetsWb: offsets };
}

/** Airflow where a fit starts: as told by fronts or pressure, else 1 cfm/bu for drying and 0.15 for aeration (common practice). */
function baseFlow({ bin, review, floorAreaM2, depthM }: BinLog): number {
  const told = review.airflow.flowM3S.value;
  if (told !== null && told > 0) return told;
  const perM3S = aimsAtTemperature(bin.goal) ? 0.002 : 0.0134;
  return perM3S * floorAreaM2 * depthM;
}

function momentOf({ startMs, endMs }: BinLog, { readHours }: FitSamples, read: number): number {
  return read === 0 ? startMs : read >= readHours.length ? endMs : startMs + readHours[read] * HOUR_MS;
}

function fanHoursTo({ fanHours }: FitSamples, read: number): number {
  return read === 0 ? 0 : fanHours[read - 1];
}
