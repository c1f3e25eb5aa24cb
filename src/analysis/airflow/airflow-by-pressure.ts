import { type Estimate, estimate, withheld, Z90 } from '../../base/estimate.ts';
import { mixtureQuantile } from '../../base/stats/normal-mixture.ts';
import { median } from '../../base/stats/quantile.ts';
import { airflowOfPressure } from '../../bin/airflow-of-pressure.ts';
import { resistancePaM } from '../../bin/airflow-resistance.ts';
import { type ResistanceCurve, resistanceCurveOf } from '../../bin/resistance-curves.ts';
import type { Bin } from '../../season/season.ts';
import { packingRange } from './packing-range.ts';
import { byStage, FULL_SHARE, type PressureLog } from './pressure-log.ts';
import { setsOfPressure } from './sets-of-pressure.ts';

/** Fewer readings tell no usual pressure. */
const LEAST_READINGS = 5;
/** A pressure sensor, 90 %: the larger of a share of the reading and 12 Pa (0.05 in. of water). Working assumption. */
const SENSOR_SHARE = 0.04;
const SENSOR_PA = 12;
/** A stated depth, 90 %. Working assumption, as in the weight by volume. */
const DEPTH_SHARE = 0.04;
/** Published constants against grain of the season, 90 %, as a share of the airflow. Working assumption. */
const CONSTANTS_SHARE = 0.08;

/** One stretch of depth and fans. */
export interface PressureStage {
  depthM: number;
  fanSet: string;
  readings: number;
  pressurePa: number;
  flowM3S: Estimate;
}

export interface PressureAirflowFound {
  flowM3S: Estimate;
  /** by depth and fans, in order of first appearance */
  stages: readonly PressureStage[];
  /** the one that the value is of; null where there is none */
  stage: PressureStage | null;
  factor: readonly [low: number, high: number];
  /** the sets of constants that spoke */
  sets: readonly ResistanceCurve['set'][];
  inMeasuredRange: boolean;
}

/**
 * Airflow by the plenum's static pressure, through the resistance of the grain.
 *
 * @param fanSet  which fans the value is wanted for; null: those that were logged most at full depth
 */
export function airflowByPressure(
  bin: Bin,
  log: PressureLog,
  depthM: number | null,
  fanSet: string | null,
): PressureAirflowFound {
  const factor = packingRange(bin);
  const none = (why: string, stages: readonly PressureStage[] = []): PressureAirflowFound => ({
    flowM3S: withheld(why),
    stages,
    stage: null,
    factor,
    sets: [],
    inMeasuredRange: true,
  });
  if (depthM === null) return none('The depth of the grain is not known, so a pressure tells no airflow.');
  if (log.timeMs.length === 0) return none('No static pressure was logged while a fan ran.');
  const curve = resistanceCurve(bin.grain.crop);
  if (curve === null) return none(`No published resistance to airflow is known for ${bin.grain.crop}.`);
  const stages = stagesOf(bin, log, factor);
  const full = stages.filter((one) => one.depthM >= FULL_SHARE * depthM && one.readings >= LEAST_READINGS);
  const stage =
    full.find((one) => one.fanSet === fanSet) ?? [...full].sort((a, b) => b.readings - a.readings)[0] ?? null;
  if (stage === null)
    return none('Fewer than five static pressures were logged with the fan on and the bin full.', stages);
  const { sets, inMeasuredRange } = toldBy(bin, stage.pressurePa, stage.depthM, factor);
  return { flowM3S: stage.flowM3S, stages, stage, factor, sets, inMeasuredRange };
}

/** The standard constants of a crop; null where none are published. */
export function resistanceCurve(crop: string): ResistanceCurve | null {
  try {
    return resistanceCurveOf(crop);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

function stagesOf(bin: Bin, log: PressureLog, factor: readonly [number, number]): PressureStage[] {
  return [...byStage(log).values()].map((own) => {
    const pressurePa = median(own.map((i) => log.pressurePa[i]));
    const depthM = log.depthM[own[0]];
    return {
      depthM,
      fanSet: log.fanSet[own[0]],
      readings: own.length,
      pressurePa,
      flowM3S: toldBy(bin, pressurePa, depthM, factor).flowM3S,
    };
  });
}

interface Told {
  flowM3S: Estimate;
  sets: readonly ResistanceCurve['set'][];
  inMeasuredRange: boolean;
}

/** The airflow of one pressure: the standard set's, with what sets, packing, sensor and depth leave open. */
function toldBy(bin: Bin, pressurePa: number, depthM: number, [least, most]: readonly [number, number]): Told {
  const { crop } = bin.grain;
  const bed: Bed = [crop, pressurePa, depthM, bin.airflowFactor, (Math.PI / 4) * bin.diameterM ** 2];
  const answers = answersOf(bed);
  if (answers === null)
    return {
      flowM3S: withheld(
        `A static pressure of ${Math.round(pressurePa)} Pa lies far outside what was ever measured in a bed of ${crop} this deep; the sensor or the depth may be wrong.`,
      ),
      sets: [],
      inMeasuredRange: false,
    };
  const [{ flowM3S: value, velocityMS, inMeasuredRange }] = answers;
  const exponent = flowExponent(crop, velocityMS);
  const sensor = Math.max(SENSOR_SHARE, SENSOR_PA / pressurePa);
  const sideSd = (packing: number) =>
    Math.hypot(exponent * Math.log(packing), exponent * sensor, exponent * DEPTH_SHARE, CONSTANTS_SHARE) / Z90;
  const [belowSd, aboveSd] = [sideSd(most / bin.airflowFactor), sideSd(bin.airflowFactor / least)];
  const sets = setsOfPressure(...bed, (belowSd + aboveSd) / 2);
  // Where constants for aeration rates speak beside the standard ones, the truth lies with either, each with all other errors about it.
  const middles = sets.map(({ lnFlow, within }) => ({ at: lnFlow - Math.log(value), weight: within }));
  const low = mixtureQuantile(0.05, middles, belowSd);
  const high = mixtureQuantile(0.95, middles, aboveSd);
  return {
    flowM3S: estimate(value, value * Math.exp(low), value * Math.exp(high)),
    sets: sets.map((one) => one.set),
    inMeasuredRange,
  };
}

type Bed = Parameters<typeof airflowOfPressure>;

function answersOf(bed: Bed) {
  try {
    return airflowOfPressure(...bed);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/** By what power of the pressure the airflow rises near a velocity. */
function flowExponent(crop: string, velocityMS: number): number {
  const { a, b } = resistanceCurveOf(crop);
  const rise = Math.log(resistancePaM(a, b, 1.1 * velocityMS) / resistancePaM(a, b, velocityMS));
  return Math.log(1.1) / rise;
}
