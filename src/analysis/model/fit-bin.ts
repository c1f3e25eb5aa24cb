import { Z95 } from '../../base/estimate.ts';
import { isothermOf } from '../../grain/isotherm.ts';
import { wetFromDry } from '../../grain/moisture-basis.ts';
import { wallConductanceWM3K } from '../../simulation/bed/bed.ts';
import { mediumOf } from '../../simulation/bed/medium-of.ts';
import type { BinLog } from './bin-log.ts';
import { fansPower } from './fans-power.ts';
import {
  ABOVE_AIR,
  BIAS,
  BREATH,
  CABLES_K,
  ENTERING,
  FIRST_CABLE,
  type FitParameters,
  FLOW,
  HEAT,
  RATE,
  SHIFT,
  SLIP,
  START,
  USUAL_RATE,
  WALL,
} from './fit-parameters.ts';
import type { FitSamples } from './fit-samples.ts';
import { betweenCablesSd } from './grain-between.ts';
import type { IsothermChoice } from './isotherm-choices.ts';
import { layersOf } from './layers-of.ts';
import { PAPERS, type PaperMoistures } from './paper-moistures.ts';
import { type CableValues, type Played, playCable, type Shown } from './play-cable.ts';
import { levelsOf, meanStart } from './run-spec-of.ts';
import { startProfiles } from './start-profile.ts';

/** What the bed leaves out, as a standard error beside the sensors' own: K, and points in still and in moving air. */
const BED_SD_K = 0.8;
const BED_SD_STILL = 0.3;
const BED_SD_MOVING = 0.5;
/** Where nothing is stated: what 95 % of sensors keep. */
const TEMPERATURE_K = 0.5;
const MOISTURE_POINTS = 0.5;
/** Samples of one sensor go together for about two days, and what the bed lacks is shared by some sensors: so many count as one. */
const TOGETHER = 24;
/** A sample farther off than this many standard errors pulls no more than in proportion. */
const FAR = 3;

/** A fit's state: values in units, and the bed with them. */
export interface Fit {
  isotherm: string;
  cableIsotherm: string;
  /** in units, see `fitParameters` */
  values: number[];
  /** sum of squares, priors included */
  cost: number;
  flowM3S: number;
  /** that by which the power of fans and heaters warms the air */
  heatedM3S: number;
  /** by cable, over the bin's mean */
  cableFlows: number[];
  moistureBiasWb: number;
  startK: number;
  wallFactor: number;
  respirationFactor: number;
  heatFactor: number;
  rateFactor: number;
  /** what the grain holds more than its isotherm says, fraction of dry matter */
  isothermShiftDb: number;
  /** what it held at the start more than cables told that were read in moving air alone, fraction, wet basis */
  aboveAirWb: number;
  /** what the air that enters was warmer than log and fans say, K */
  enteringK: number;
  /** what all of the cables' thermometers read too much, K */
  cablesK: number;
}

/** A bin played with given values, remembered by cable. */
export interface Model {
  /** by cable */
  shown(values: readonly number[]): Shown[];
  /** residuals over their standard errors, then the priors, then tickets and hand samples, [samples + parameters + 3] */
  residuals(values: readonly number[]): Float64Array;
  /** mean moisture of the grain at the start and at the end, wet basis */
  startWb(values: readonly number[]): number;
  endWb(values: readonly number[]): number;
  fitAt(values: readonly number[], cost: number): Fit;
}

/**
 * @param choice     of the isotherms
 * @param baseM3S    airflow where the fit starts
 * @param lastRead   hours read that count, from the first
 * @param offsetsWb  what each sensor reads too much beside the shared bias, [cables][sensors]
 */
export function modelOf(
  log: BinLog,
  samples: FitSamples,
  { list }: FitParameters,
  choice: IsothermChoice,
  baseM3S: number,
  lastRead: number,
  offsetsWb: readonly Float64Array[],
  papers: PaperMoistures,
): Model {
  const isotherm = isothermOf(log.bin.grain.crop, choice.grain);
  const cableIsotherm = isothermOf(log.bin.grain.crop, choice.cable);
  const medium = mediumOf(log.bin.grain.crop, log.dryDensityKgM3, { isotherm: isotherm.name });
  const wallWM3K = wallConductanceWM3K(medium.conductivityWMK, log.bin.diameterM / 2);
  const first = startProfiles(log, { isotherm, cableIsotherm, moistureBiasWb: 0, offsetsWb });
  const played: Played = {
    log,
    medium,
    isotherm,
    cableIsotherm,
    layers: layersOf(log),
    levels: levelsOf(log, baseM3S, meanStart(log, first, 0)),
    readHours: samples.readHours.slice(0, lastRead),
    sampledReads: new Set(papers.samples.map((one) => one.read)),
  };
  const known = log.cables.map(() => new Map<string, Shown>());
  const at = (values: readonly number[], k: number) =>
    values[k] * (values[k] < 0 ? (list[k].unitBelow ?? list[k].unit) : list[k].unit);
  // Of a fan that blows into other bins too all of its air is warmed alike, however much of it comes here.
  const { shared } = fansPower(log);
  const valuesOf = (values: readonly number[], cable: number): CableValues => ({
    flowFactor: Math.exp(at(values, FLOW) + (list.length > FIRST_CABLE ? at(values, FIRST_CABLE + cable) : 0)),
    wallWM3K: wallWM3K * Math.exp(at(values, WALL)),
    startK: at(values, START) - at(values, CABLES_K),
    respirationFactor: Math.exp(at(values, BREATH)),
    heatFactor: Math.exp(at(values, HEAT)),
    rateFactor: USUAL_RATE * Math.exp(at(values, RATE)),
    slip: at(values, SLIP),
    fansFlowFactor: shared ? 1 : Math.exp(at(values, FLOW)),
    enteringK: at(values, ENTERING),
    cablesK: at(values, CABLES_K),
  });
  const shown = (values: readonly number[]) => {
    let profiles: ReturnType<typeof startProfiles> | null = null;
    return log.cables.map((_, cable) => {
      const own = valuesOf(values, cable);
      const key = `${own.flowFactor} ${own.wallWM3K} ${own.startK} ${own.respirationFactor} ${own.slip} ${own.heatFactor} ${own.rateFactor} ${own.fansFlowFactor} ${own.enteringK} ${own.cablesK} ${at(values, BIAS)} ${at(values, ABOVE_AIR)}`;
      const before = known[cable].get(key);
      if (before !== undefined) return before;
      profiles ??= startProfiles(log, {
        ...{ isotherm, cableIsotherm, offsetsWb },
        moistureBiasWb: at(values, BIAS),
        aboveAirWb: at(values, ABOVE_AIR),
      });
      const made = playCable(played, cable, profiles[cable], own);
      if (known[cable].size > 30) known[cable].clear();
      known[cable].set(key, made);
      return made;
    });
  };
  const sds = sdsOf(log);
  const samplesRead = samples.cables.reduce((sum, { sensors }) => sum + sensors * played.readHours.length, 0);
  const residuals = (values: readonly number[]) => {
    const out = new Float64Array(2 * samplesRead + list.length + PAPERS);
    const biasWb = at(values, BIAS);
    let next = 0;
    shown(values).forEach(({ tempC, moistureWb }, cable) => {
      const own = samples.cables[cable];
      for (let i = 0; i < tempC.length; i++) {
        const sensor = i % own.sensors;
        const read = (i - sensor) / own.sensors;
        const rest = samples.near[read] === 1 ? 1 : 2;
        const moisture = samples.moving[read] === 1 ? sds.moving : sds.still;
        const told = moistureWb[i] + biasWb + offsetsWb[cable][sensor];
        out[next] = eased((tempC[i] - own.tempC[i]) / (sds.tempK * rest));
        out[next + 1] = eased((told - own.moistureWb[i]) / (moisture * rest));
        next += 2;
      }
    });
    out.set(values, next);
    out.set(paperResiduals(values), next + list.length);
    return out;
  };
  const meanWb = (values: readonly number[], of: 'startDb' | 'endDb') =>
    wetFromDry(shown(values).reduce((sum, one, cable) => sum + log.cables[cable].share * one[of], at(values, SHIFT)));
  const betweenSd = betweenCablesSd(log);
  const whole = lastRead === samples.readHours.length;
  const paperResiduals = (values: readonly number[]) => {
    const { start, end } = papers;
    const read = papers.samples.filter((one) => one.read < lastRead);
    const made = shown(values);
    const offs = read.map(({ cables, heightM, read: when, wb }) => {
      const moistures = cables.map((cable) => valueInLayers(made[cable].sampledDb.get(when)!, heightM, log.depthM));
      return wetFromDry(moistures.reduce((sum, one) => sum + one, 0) / cables.length + at(values, SHIFT)) - wb;
    });
    return [
      start === null ? 0 : (meanWb(values, 'startDb') - start.wb) / Math.hypot(start.sd, betweenSd),
      end === null || !whole ? 0 : (meanWb(values, 'endDb') - end.wb) / Math.hypot(end.sd, betweenSd),
      offs.length === 0 ? 0 : offs.reduce((sum, one) => sum + one, 0) / offs.length / papers.samplesSd,
    ];
  };
  const fitAt = (values: readonly number[], cost: number): Fit => {
    const flows = log.cables.map((_, cable) => baseM3S * valuesOf(values, cable).flowFactor);
    const flowM3S = flows.reduce((sum, flow, cable) => sum + flow * log.cables[cable].share, 0);
    const { startK, respirationFactor, heatFactor, rateFactor, fansFlowFactor, enteringK, cablesK } = valuesOf(
      values,
      0,
    );
    return {
      isotherm: isotherm.name,
      cableIsotherm: cableIsotherm.name,
      values: [...values],
      cost,
      flowM3S,
      heatedM3S: baseM3S * fansFlowFactor,
      cableFlows: flows.map((flow) => flow / flowM3S),
      moistureBiasWb: at(values, BIAS),
      startK,
      wallFactor: Math.exp(at(values, WALL)),
      respirationFactor,
      heatFactor,
      rateFactor,
      isothermShiftDb: at(values, SHIFT),
      aboveAirWb: at(values, ABOVE_AIR),
      enteringK,
      cablesK,
    };
  };
  return {
    shown,
    residuals,
    startWb: (values) => meanWb(values, 'startDb'),
    endWb: (values) => meanWb(values, 'endDb'),
    fitAt,
  };
}

/** Straight between the middles of the layers. */
function valueInLayers(values: Float64Array, heightM: number, depthM: number): number {
  const place = Math.min(values.length - 1, Math.max(0, (heightM / depthM) * values.length - 0.5));
  const low = Math.min(values.length - 2, Math.floor(place));
  return values[low] + (place - low) * (values[low + 1] - values[low]);
}

/** Standard errors of one sample, with what goes together counted in. */
function sdsOf({ season }: BinLog): { tempK: number; still: number; moving: number } {
  const { temperature, moisture } = season.sensors;
  // Each sensor's own error is fitted too, in part.
  const points = 50 * (moisture.accuracyWb ?? MOISTURE_POINTS / 100);
  const many = Math.sqrt(TOGETHER);
  const moist = (bed: number) => (many * Math.hypot(points / Z95, bed)) / 100;
  return {
    tempK: many * Math.hypot((temperature.accuracyK ?? TEMPERATURE_K) / Z95, BED_SD_K),
    still: moist(BED_SD_STILL),
    moving: moist(BED_SD_MOVING),
  };
}

/** Pseudo-Huber: as it is near 0, its root far off. What was not read weighs nothing. */
function eased(residual: number): number {
  if (Number.isNaN(residual)) return 0;
  const far = FAR / Math.sqrt(TOGETHER);
  return Math.sign(residual) * far * Math.sqrt(2 * (Math.sqrt(1 + (residual / far) ** 2) - 1));
}
