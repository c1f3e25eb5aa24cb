import { withheld } from '../../base/estimate.ts';
import { isothermsOf } from '../../grain/isotherm.ts';
import { wetFromDry } from '../../grain/moisture-basis.ts';
import type { LoadedSeason } from '../../season/loaded.ts';
import type { SensorSeries } from '../../tables/sensors.ts';
import { HOUR_MS } from '../fronts/front-limits.ts';
import type { BinReview } from '../types.ts';
import { type BinLog, binLog } from './bin-log.ts';
import { type Fit, modelOf, solve } from './fit-bin.ts';
import { fitIntervals } from './fit-intervals.ts';
import { fitParameters } from './fit-parameters.ts';
import { type FitSamples, fitSamples } from './fit-samples.ts';
import { misfitOf, persisting } from './misfit-of.ts';
import type { BinModel } from './model-types.ts';
import { splitRead } from './split-read.ts';
import { verdictOf } from './verdict-of.ts';

const ROUNDS = 6;
const FEW_ROUNDS = 2;

/**
 * Fit the bed to a bin's log: on the first part of its fan hours, judged on the rest; then to all of it.
 *
 * @param series  of the season; read from its tables when left out
 */
export function binModel(loaded: LoadedSeason, review: BinReview, series?: readonly SensorSeries[]): BinModel {
  const log = binLog(loaded, review, series);
  if (typeof log === 'string') return noModel(log);
  const ran = log.fan.on.reduce((sum, share) => sum + share, 0);
  if (ran < 24)
    return noModel(`The fan ran for ${Math.round(ran)} hours while the bin was filled; a model needs a day at least.`);
  const samples = fitSamples(log);
  const split = splitRead(samples);
  const parameters = fitParameters(log);
  const baseM3S = baseFlow(log);
  const model = (isotherm: string, reads: number) => modelOf(log, samples, parameters, isotherm, baseM3S, reads);
  const start = parameters.list.map(() => 0);
  const [usual, ...others] = isothermsToTry(log);
  const first = solve(model(usual, split), parameters, start, ROUNDS);
  const tried = [first, ...others.map((name) => solve(model(name, split), parameters, first.values, FEW_ROUNDS))];
  const trained = tried.reduce((best, one) => (one.cost < best.cost ? one : best));

  const all = samples.readHours.length;
  const whole = model(trained.isotherm, all);
  const carried = whole.shown(trained.values);
  const final = solve(whole, parameters, trained.values, FEW_ROUNDS);
  const intervals = fitIntervals(log, whole, final, parameters);
  const endWb = log.cables.reduce((sum, { share }, c) => sum + share * whole.shown(final.values)[c].endDb, 0);
  const part = (from: number, to: number) => ({
    fromMs: momentOf(log, samples, from),
    toMs: momentOf(log, samples, to),
    fanHours: fanHoursTo(samples, to) - fanHoursTo(samples, from),
  });
  const told = {
    fitted: fittedOf(final),
    cables: log.cables.map(({ cable, share }, c) => ({ cable, share, relative: final.cableFlows[c] })),
    flowM3S: intervals.flowM3S,
    moistureBiasPoints: intervals.moistureBiasPoints,
    endMoistureWb: intervals.endMoistureWb(wetFromDry(endWb)),
    isotherms: tried.map(({ isotherm, cost }) => ({ name: isotherm, cost: cost / trained.cost })),
    trained: { ...part(0, split), misfit: misfitOf(samples, carried, trained.moistureBiasWb, 0, split) },
    unseen: {
      ...part(split, all),
      misfit: misfitOf(samples, carried, trained.moistureBiasWb, split, all),
      persistence: misfitOf(samples, persisting(samples, split), 0, split, all),
    },
    notes: log.notes,
  };
  return { ...told, ...verdictOf(log, told, final, parameters) };
}

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

function fittedOf({ flowM3S, isotherm, moistureBiasWb, startK, wallFactor }: Fit) {
  return { flowM3S, isotherm, moistureBiasWb, startK, wallFactor };
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
