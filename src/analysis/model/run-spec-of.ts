import { median } from '../../base/stats/quantile.ts';
import { isothermOf } from '../../grain/isotherm.ts';
import type { LoadedSeason } from '../../season/loaded.ts';
import { wallConductanceWM3K } from '../../simulation/bed/bed.ts';
import { mediumOf } from '../../simulation/bed/medium-of.ts';
import { doubtedSpec } from '../../simulation/doubt/doubted-spec.ts';
import type { Blower } from '../../simulation/run/blower.ts';
import type { LevelStep, RunSpec } from '../../simulation/run/run-spec.ts';
import { HOUR_MS } from '../fronts/front-limits.ts';
import type { BinReview } from '../types.ts';
import { type AirColumn, airColumns } from './air-columns.ts';
import { type BinLog, binLog } from './bin-log.ts';
import { blowerOf } from './blower-of.ts';
import { burntHours } from './burnt-hours.ts';
import type { FittedValues, MayBe } from './fitted-values.ts';
import { layersOf } from './layers-of.ts';
import { loggedShares } from './logged-shares.ts';
import { type Profile, startProfiles, valueAtHeight } from './start-profile.ts';

/** A bin's season ready to run, or the reason why it is not. */
export type RunFound =
  | {
      spec: RunSpec;
      /** the bin as fitted, then each that it may be, see `mayBes` */
      specs: readonly RunSpec[];
      /** part of each hour in which the fans ran by their log, [hours], see `loggedShares` */
      logged: Float64Array;
      /** of its bed, in their order */
      columns: readonly AirColumn[];
      notes: readonly string[];
      why: null;
    }
  | { spec: null; why: string };

/**
 * What a run of a bin's own season needs beside a strategy: weather, clock and prices hour by hour from when it was filled,
 * the grain as the cables told it then, its depth, its fans.
 *
 * @param fitted  of a fit; left out: airflow as the review tells it, the stated isotherm, the cables taken at their word
 * @param mayBes  of the same fit; none when left out
 */
export function runSpecOf(
  loaded: LoadedSeason,
  review: BinReview,
  fitted: Partial<FittedValues> = {},
  mayBes: readonly MayBe[] = [],
): RunFound {
  const log = binLog(loaded, review);
  if (typeof log === 'string') return { spec: null, why: log };
  const flowM3S = fitted.flowM3S ?? review.airflow.flowM3S.value;
  if (flowM3S === null) return { spec: null, why: `The airflow of ${review.bin.name} is not known.` };
  const columns = airColumns(log, fitted.cableFlows ?? log.cables.map(() => 1));
  const spec = specOf(log, { ...fitted, flowM3S }, columns);
  const others = mayBes.map((one) =>
    doubtedSpec(specOf(log, one.fitted, airColumns(log, one.fitted.cableFlows)), one.doubt),
  );
  return { spec, specs: [spec, ...others], logged: loggedShares(log), columns, notes: log.notes, why: null };
}

function specOf(
  log: BinLog,
  fitted: Partial<FittedValues> & Pick<FittedValues, 'flowM3S'>,
  columns: readonly AirColumn[],
): RunSpec {
  const { bin } = log;
  const { crop } = bin.grain;
  const isotherm = isothermOf(crop, fitted.isotherm ?? bin.grain.isotherm ?? undefined);
  const medium = mediumOf(crop, log.dryDensityKgM3, {
    isotherm: isotherm.name,
    respirationFactor: fitted.respirationFactor,
    heatFactor: fitted.heatFactor,
    rateFactor: fitted.rateFactor,
    moistureShiftDb: fitted.isothermShiftDb,
  });
  const cableIsotherm = fitted.cableIsotherm === undefined ? log.cableIsotherm : isothermOf(crop, fitted.cableIsotherm);
  const { moistureBiasWb = 0, isothermShiftDb = 0, offsetsWb, aboveAirWb } = fitted;
  const profiles = startProfiles(log, { isotherm, cableIsotherm, moistureBiasWb, offsetsWb, aboveAirWb }).map(
    (one) => ({
      ...one,
      moistureDb: one.moistureDb.map((moistureDb) => moistureDb + isothermShiftDb),
    }),
  );
  const bed = {
    medium,
    airShares: columns.map(({ airShare }) => airShare),
    areaShares: columns.map(({ areaShare }) => areaShare),
    depthM: log.depthM,
    layers: layersOf(log),
    air: bin.air,
    pressurePa: log.weather.hours.pressurePa,
    wallWM3K: (fitted.wallFactor ?? 1) * wallConductanceWM3K(medium.conductivityWMK, bin.diameterM / 2),
  };
  const startK = fitted.startK ?? 0;
  const burnt = burntHours(log);
  return {
    bed,
    floorAreaM2: log.floorAreaM2,
    hours: log.weather.hours,
    ...(bin.air === 'down' ? { headspaceK: fitted.enteringK } : {}),
    levels: levelsOf(log, fitted.flowM3S, meanStart(log, profiles, startK), fitted),
    start: startOfColumns(log, profiles, startK, columns),
    endHour: log.count,
    ...(burnt === null ? {} : { burnt }),
    goal: bin.goal,
    targetWb: bin.grain.targetMoistureWb,
    targetC: bin.grain.targetTempC,
  };
}

export type Start = NonNullable<RunSpec['start']>;

/**
 * Temperatures by column, where no cable hangs the mean of all. The moisture of a layer is that of all cables in every column: loads lie
 * across a bin (common practice of filling by a spreader), and by what one cable reads too much its column would never come to its target.
 *
 * @returns  [columns x layers]
 */
export function startOfColumns(
  log: BinLog,
  profiles: readonly Profile[],
  startK: number,
  columns: readonly AirColumn[],
): Start {
  const { moistureDb } = meanStart(log, profiles, startK);
  return {
    tempC: Float64Array.from(
      columns.flatMap(({ cables }) => [
        ...meanStart(log, profiles, startK, cables.length > 0 ? cables : undefined).tempC,
      ]),
    ),
    moistureDb: Float64Array.from(columns.flatMap(() => [...moistureDb])),
  };
}

/**
 * The mean of cables' profiles by their share of the floor, [layers].
 *
 * @param of  places in the log's cables; all when left out
 */
export function meanStart(
  log: BinLog,
  profiles: readonly Profile[],
  startK: number,
  of: readonly number[] = log.cables.map((_, c) => c),
): Start {
  const { cables, depthM } = log;
  const layers = layersOf(log);
  const all = of.reduce((sum, c) => sum + cables[c].share, 0);
  const at = (layer: number, what: keyof Start) => {
    const heightM = ((layer + 0.5) * depthM) / layers;
    const sum = of.reduce(
      (so, c) => so + cables[c].share * valueAtHeight(profiles[c].heightM, profiles[c][what], heightM),
      0,
    );
    return sum / all;
  };
  return {
    tempC: Float64Array.from({ length: layers }, (_, layer) => at(layer, 'tempC') + startK),
    moistureDb: Float64Array.from({ length: layers }, (_, layer) => at(layer, 'moistureDb')),
  };
}

/**
 * The depth at the start and every later one; what comes in later is taken as what lay there first.
 *
 * @param fitted  what is known of the air that enters; left out: as fans and log say
 */
export function levelsOf(
  log: BinLog,
  flowM3S: number,
  start: Start,
  { heatedM3S, enteringK = 0 }: Partial<Pick<FittedValues, 'heatedM3S' | 'enteringK'>> = {},
): LevelStep[] {
  const { bin, startMs, endMs } = log;
  const steps = bin.grain.depthSteps.filter((step) => step.fromMs < endMs && step.depthM > 0);
  const before = steps.filter((step) => step.fromMs <= startMs).at(-1) ?? steps[0];
  const later = steps.filter((step) => step.fromMs > startMs && step !== before);
  const tempC = median([...start.tempC]);
  const moistureDb = median([...start.moistureDb]);
  return [before, ...later].map((step, i) => {
    const blower = blowerOf(log, flowM3S, step.depthM, heatedM3S);
    return {
      hour: i === 0 ? 0 : Math.ceil((step.fromMs - startMs) / HOUR_MS),
      depthM: Math.min(step.depthM, log.depthM),
      tempC,
      moistureDb,
      blower: bin.air === 'down' ? blower : warmedMore(blower, enteringK),
    };
  });
}

/** What the air was warmer comes of fan and heater alike, each by its part; without the heater's the thermometers and the fan have it all. */
function warmedMore(blower: Blower, moreK: number): Blower {
  const { warmingK, heaterK } = blower;
  const fan = heaterK > 0 ? warmingK / (warmingK + heaterK) : 1;
  return { ...blower, warmingK: warmingK + fan * moreK, heaterK: heaterK + (1 - fan) * moreK };
}
