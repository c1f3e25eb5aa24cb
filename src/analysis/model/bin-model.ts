import { withheld } from '../../base/estimate.ts';
import { isothermsOf } from '../../grain/isotherm.ts';
import type { LoadedSeason } from '../../season/loaded.ts';
import { type SensorSeries, sensorSeries } from '../../tables/sensors.ts';
import { HOUR_MS } from '../fronts/front-limits.ts';
import type { BinReview } from '../types.ts';
import { type BinLog, binLog } from './bin-log.ts';
import { clockDoubts, depthDoubts, misplacedSensors, powerDoubts } from './cross-checks.ts';
import { type Fit, type Model, modelOf, solve } from './fit-bin.ts';
import { fitIntervals } from './fit-intervals.ts';
import { fitParameters } from './fit-parameters.ts';
import { type FitSamples, fitSamples } from './fit-samples.ts';
import { misfitOf, persisting } from './misfit-of.ts';
import type { BinModel } from './model-types.ts';
import { sensorOffsets } from './sensor-offsets.ts';
import { splitRead } from './split-read.ts';
import { verdictOf } from './verdict-of.ts';

const ROUNDS = 6;
/** Isotherms whose sums of squares lie farther from the best's are ruled out; so many of the others are carried on. */
const NEAR_COST = 9;
const MOST_FINALS = 2;

/**
 * Fit the bed to a bin's log: on the first part of its fan hours, judged on the rest; then to all of it.
 *
 * @param series  of the season; read from its tables when left out
 */
export function binModel(loaded: LoadedSeason, review: BinReview, series?: readonly SensorSeries[]): BinModel {
  const own = (series ?? sensorSeries(loaded.tables.readings)).filter((one) => one.bin === review.bin.id);
  const log = binLog(loaded, review, own);
  if (typeof log === 'string') return noModel(log);
  const ran = log.fan.on.reduce((sum, share) => sum + share, 0);
  if (ran < 24)
    return noModel(`The fan ran for ${Math.round(ran)} hours while the bin was filled; a model needs a day at least.`);
  const samples = fitSamples(log);
  const split = splitRead(samples);
  const parameters = fitParameters(log);
  const baseM3S = baseFlow(log);
  const none: readonly Float64Array[] = log.cables.map(({ sensors }) => new Float64Array(sensors.length));
  const model = (isotherm: string, reads: number, offsets = none) =>
    modelOf(log, samples, parameters, isotherm, baseM3S, reads, offsets);
  const tryOne = (isotherm: string, values: readonly number[], rounds: number, reads: number, from = none): Tried => {
    let one = model(isotherm, reads, from);
    let fit = solve(one, parameters, values, rounds);
    let offsets: readonly Float64Array[] = from;
    for (let again = 0; again < (rounds > 1 ? 2 : 1); again++) {
      offsets = sensorOffsets(log, samples, one.shown(fit.values), fit.moistureBiasWb, reads);
      one = model(isotherm, reads, offsets);
      fit = solve(one, parameters, fit.values, 1);
    }
    return { fit, offsets, model: one };
  };
  const [usual, ...others] = isothermsToTry(log);
  const first = tryOne(
    usual,
    parameters.list.map(() => 0),
    ROUNDS,
    split,
  );
  const tried = [first, ...others.map((name) => tryOne(name, first.fit.values, 1, split, first.offsets))].sort(byCost);
  const trained = tried[0];

  const all = samples.readHours.length;
  const carried = model(trained.fit.isotherm, all, trained.offsets).shown(trained.fit.values);
  const finals = tried
    .filter((one) => one.fit.cost - trained.fit.cost < NEAR_COST)
    .slice(0, MOST_FINALS)
    .map((one) => tryOne(one.fit.isotherm, one.fit.values, 1, all, one.offsets))
    .sort(byCost);
  const final = finals[0];
  const intervals = fitIntervals(log, finals, parameters);
  const part = (from: number, to: number) => ({
    fromMs: momentOf(log, samples, from),
    toMs: momentOf(log, samples, to),
    fanHours: fanHoursTo(samples, to) - fanHoursTo(samples, from),
  });
  const seen = (from: number, to: number) =>
    misfitOf(samples, carried, trained.fit.moistureBiasWb, trained.offsets, from, to);
  const told = {
    fitted: fittedOf(final.fit),
    cables: log.cables.map(({ cable, share }, c) => ({ cable, share, relative: final.fit.cableFlows[c] })),
    ...intervals,
    isotherms: tried.map(({ fit }) => ({ name: fit.isotherm, cost: fit.cost / trained.fit.cost })),
    trained: { ...part(0, split), misfit: seen(0, split) },
    unseen: {
      ...part(split, all),
      misfit: seen(split, all),
      persistence: misfitOf(samples, persisting(samples, split), 0, null, split, all),
    },
    notes: log.notes,
  };
  const misfitK = (other: BinLog) => {
    const { fit, offsets } = final;
    const played = modelOf(other, samples, parameters, fit.isotherm, baseM3S, all, offsets).shown(fit.values);
    return misfitOf(samples, played, 0, null, 0, all).temperatureK;
  };
  const doubts = [
    ...misplacedSensors(samples, final.model.shown(final.fit.values)),
    ...depthDoubts(log, own),
    ...powerDoubts(log, final.fit.flowM3S),
    ...clockDoubts(log, misfitK),
  ];
  return { ...told, ...verdictOf(log, told, final.fit, parameters, doubts) };
}

/** A fit with one isotherm. */
export interface Tried {
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
    isotherms: [],
    trained: null,
    unseen: null,
    trusted: false,
    why,
    wouldHelp: [],
    notes: [],
  };
}

function fittedOf(fit: Fit) {
  const { flowM3S, isotherm, moistureBiasWb, startK, wallFactor, respirationFactor } = fit;
  return { flowM3S, isotherm, moistureBiasWb, startK, wallFactor, respirationFactor };
}

/** Airflow where a fit starts: as told by fronts or pressure, else 1 cfm/bu for drying and 0.15 for aeration (common practice). */
function baseFlow({ bin, review, floorAreaM2, depthM }: BinLog): number {
  const told = review.airflow.flowM3S.value;
  if (told !== null && told > 0) return told;
  const perM3S = bin.goal === 'cool' || bin.goal === 'hold' ? 0.002 : 0.0134;
  return perM3S * floorAreaM2 * depthM;
}

/** The stated isotherm alone where season.yaml names one for the grain; else the default first and the crop's others. */
function isothermsToTry({ bin, cableIsotherm }: BinLog): string[] {
  if (bin.grain.isotherm !== null) return [bin.grain.isotherm];
  const names = isothermsOf(bin.grain.crop).map(({ name }) => name);
  return [cableIsotherm.name, ...names.filter((name) => name !== cableIsotherm.name)];
}

function momentOf({ startMs, endMs }: BinLog, { readHours }: FitSamples, read: number): number {
  return read === 0 ? startMs : read >= readHours.length ? endMs : startMs + readHours[read] * HOUR_MS;
}

function fanHoursTo({ fanHours }: FitSamples, read: number): number {
  return read === 0 ? 0 : fanHours[read - 1];
}
