import { specificVolumeM3Kg } from '../../air/volume.ts';
import { type Estimate, estimate, withheld, Z90, Z95 } from '../../base/estimate.ts';
import type { Isotherm } from '../../grain/isotherm.ts';
import type { Bin, SensorErrors } from '../../season/season.ts';
import { fanPieces } from '../fronts/fan-pieces.ts';
import { dryFromWet } from '../moisture/dry-basis.ts';
import type { BinGrainAmount, BinMoisture, BinWater, FanSpans, Span } from '../types.ts';
import { type HumidityLog, placeIn, valueAt } from './humidity-log.ts';
import { type LeavingAir, MOISTURE_STEP_WB, TEMP_STEP_K } from './leaving-air.ts';

/** Less of the fan hours with both airs known tells no season. */
const LEAST_COVERED = 0.6;
/** What the uncovered hours took out may differ from the usual by so much (sd). Working assumption. */
const FILLED_SD = 0.5;
/** Humidity sensors, fraction of relative humidity (sd). Working assumption: 3 % that 95 % keep in a plenum, 4 % outdoors. */
const PLENUM_RH_SD = 0.015;
const OUTDOOR_RH_SD = 0.02;
/** Cables where season.yaml states nothing, points (sd): each sensor's own error, and one shared by the bin. */
const OWN_SD = 0.5 / Z95;
const SHARED_SD = 0.5 / Z95;
/** Temperature of the cables, K (sd), where nothing is stated. */
const TEMP_SD = 0.4;
/** How far the air at the uppermost sensors stands for the air that leaves everywhere, share of the water (sd). */
const PLACE_SD = 0.08;

export interface WaterByAirInput {
  bin: Bin;
  spans: FanSpans;
  /** m3/s, at full depth with its main fans */
  flowM3S: Estimate;
  relativeAt: (ms: number) => number;
  plenum: HumidityLog;
  outdoor: HumidityLog;
  leaving: (ms: number) => LeavingAir | null;
  /** isotherms beside the one taken, in the order of `LeavingAir.others` */
  others: readonly Isotherm[];
  stationPa: number;
  errors: SensorErrors;
  moisture: BinMoisture;
  grain: BinGrainAmount;
  /** the time that the sensors' account covers; null: all */
  between: Span | null;
}

export interface WaterByAirFound {
  all: Estimate;
  between: Estimate;
  air: BinWater['air'];
}

interface Sums {
  /** kg of dry air that passed in covered hours, and hours */
  air: number;
  hours: number;
  plenumHours: number;
  allAir: number;
  allHours: number;
  entering: number;
  leaving: number;
  /** kg of water, and what each error's step would make of it */
  water: number;
  wetter: number;
  warmer: number;
  plenumRh: number;
  outdoorRh: number;
  others: number[];
}

/**
 * Water that the air carried off: airflow times the humidity ratio of the leaving air less that of the entering air, summed
 * over the fan hours with grain in the bin.
 */
export function waterByAir(input: WaterByAirInput): WaterByAirFound {
  const { flowM3S } = input;
  const none = (why: string): WaterByAirFound => ({ all: withheld(why), between: withheld(why), air: null });
  if (flowM3S.value === null) return none(`The airflow is not known. ${flowM3S.why ?? ''}`.trim());
  const pieces = piecesOf(input);
  if (pieces.length === 0) return none('The fans did not run while grain was in the bin.');
  const all = summed(pieces, () => true, input.others.length);
  const covered = all.hours / all.allHours;
  if (!(covered >= LEAST_COVERED)) {
    const percent = Number.isNaN(covered) ? 0 : Math.round(100 * covered);
    return none(`Entering and leaving air are both known in only ${percent} % of the fan hours.`);
  }
  const { between } = input;
  const part =
    between === null ? all : summed(pieces, (ms) => ms >= between.fromMs && ms < between.toMs, input.others.length);
  const whole = told(input, all);
  return {
    all: whole.water,
    between:
      part.hours / part.allHours >= LEAST_COVERED
        ? told(input, part).water
        : whole.water.why === null && part.allHours === 0
          ? estimate(0, 0, 0)
          : withheld('Entering and leaving air are not known between the two moments.'),
    air: {
      fanHours: all.allHours,
      coveredHours: all.hours,
      plenumShare: all.plenumHours / all.hours,
      enteringRatio: all.entering / all.air,
      leavingRatio: all.leaving / all.air,
      parts: whole.parts,
    },
  };
}

/** A piece of fan-on time with what is known of its air. */
interface AirPiece {
  ms: number;
  hours: number;
  /** kg of dry air */
  air: number;
  entering: { ratio: number; perRh: number; plenum: boolean } | null;
  leaving: LeavingAir | null;
}

function piecesOf({
  bin,
  spans,
  flowM3S,
  relativeAt,
  plenum,
  outdoor,
  leaving,
  stationPa,
}: WaterByAirInput): AirPiece[] {
  const dated = bin.grain.depthSteps.filter((step) => step.depthM > 0).map((step) => step.fromMs);
  const fromMs = Math.min(bin.grain.filledMs ?? Number.NEGATIVE_INFINITY, ...dated.filter(Number.isFinite));
  const pieces = fanPieces(spans, fromMs, bin.grain.unloadedMs ?? Number.POSITIVE_INFINITY);
  const out: AirPiece[] = [];
  for (let i = 0; i < pieces.midMs.length; i++) {
    const ms = pieces.midMs[i];
    const relative = relativeAt(ms);
    if (Number.isNaN(relative)) continue;
    const under = bin.air === 'up' ? placeIn(plenum.timeMs, ms) : null;
    const outside = placeIn(outdoor.timeMs, ms);
    const log = under === null ? outdoor : plenum;
    const place = under ?? outside;
    const entering =
      place === null
        ? null
        : { ratio: valueAt(log.ratio, place), perRh: valueAt(log.perRh, place), plenum: under !== null };
    const tempC = place === null ? 10 : valueAt(log.tempC, place);
    const volume = specificVolumeM3Kg(tempC, entering?.ratio ?? 0.005, stationPa);
    out.push({
      ms,
      hours: pieces.hours[i],
      air: (flowM3S.value! * relative * pieces.hours[i] * 3600) / volume,
      entering,
      leaving: leaving(ms),
    });
  }
  return out;
}

function summed(pieces: readonly AirPiece[], counts: (ms: number) => boolean, others: number): Sums {
  const sums: Sums = {
    air: 0,
    hours: 0,
    plenumHours: 0,
    allAir: 0,
    allHours: 0,
    entering: 0,
    leaving: 0,
    water: 0,
    wetter: 0,
    warmer: 0,
    plenumRh: 0,
    outdoorRh: 0,
    others: new Array<number>(others).fill(0),
  };
  for (const { ms, hours, air, entering, leaving } of pieces) {
    if (!counts(ms)) continue;
    sums.allAir += air;
    sums.allHours += hours;
    if (entering === null || leaving === null) continue;
    sums.air += air;
    sums.hours += hours;
    if (entering.plenum) sums.plenumHours += hours;
    sums.entering += air * entering.ratio;
    sums.leaving += air * leaving.ratio;
    sums.water += air * (leaving.ratio - entering.ratio);
    sums.wetter += air * (leaving.wetter - leaving.ratio);
    sums.warmer += air * (leaving.warmer - leaving.ratio);
    sums[entering.plenum ? 'plenumRh' : 'outdoorRh'] += air * entering.perRh;
    leaving.others.forEach((ratio, i) => {
      sums.others[i] += air * (ratio - leaving.ratio);
    });
  }
  return sums;
}

function told(input: WaterByAirInput, sums: Sums): { water: Estimate; parts: { cause: string; sdKg: number }[] } {
  const { flowM3S, errors, bin } = input;
  const fill = sums.allAir / sums.air;
  const above = beyondSensors(input);
  const value = sums.water * fill + above;
  const points = (wb: number | null, otherwise: number) => (wb === null ? otherwise : (100 * wb) / Z95);
  const moistureSd = Math.hypot(
    points(errors.moisture.accuracyWb, OWN_SD) / Math.sqrt(Math.max(1, bin.cables.length)),
    points(errors.moisture.biasWb, SHARED_SD),
  );
  const tempSd = errors.temperature.accuracyK === null ? TEMP_SD : errors.temperature.accuracyK / Z95;
  const spread = [0, ...sums.others];
  const editions = Math.max(...spread) - Math.min(...spread);
  const parts = [
    {
      cause: 'moisture of the uppermost sensors',
      sdKg: Math.abs(sums.wetter * fill) * (moistureSd / 100 / MOISTURE_STEP_WB),
    },
    {
      cause: 'temperature of the uppermost sensors',
      sdKg: (Math.abs(sums.warmer * fill) * (tempSd / TEMP_STEP_K)) / Math.sqrt(Math.max(1, bin.cables.length)),
    },
    {
      cause: 'humidity of the entering air',
      sdKg: fill * Math.hypot(sums.plenumRh * PLENUM_RH_SD, sums.outdoorRh * OUTDOOR_RH_SD),
    },
    { cause: 'choice of isotherm for the cables', sdKg: (editions * fill) / 2 / Z90 },
    { cause: 'leaving air between and above the sensors', sdKg: Math.hypot(PLACE_SD * Math.abs(value), 0.5 * above) },
    { cause: 'hours without a reading', sdKg: Math.abs(sums.water) * (fill - 1) * FILLED_SD },
  ];
  const half = Z90 * Math.hypot(...parts.map((part) => part.sdKg));
  // More air makes more of it, whichever way it goes.
  const [least, most] = (flowM3S.interval ?? [flowM3S.value!, flowM3S.value!]).map((end) => end / flowM3S.value! - 1);
  const ends = [value * least, value * most];
  // The editions lean to one side, and so does the interval.
  const lean = [(Math.min(...spread) * fill) / Z90, (Math.max(...spread) * fill) / Z90].map(
    (end) => Math.abs(end) * Z90,
  );
  const other = Z90 * Math.hypot(...parts.filter((part) => !part.cause.startsWith('choice')).map((part) => part.sdKg));
  return {
    water: estimate(
      value,
      value - Math.hypot(other, Math.min(...ends), lean[0]),
      value + Math.hypot(other, Math.max(...ends), lean[1]),
    ),
    parts: [{ cause: 'airflow', sdKg: Math.max(Math.abs(ends[0]), Math.abs(ends[1])) / Z90 }, ...parts].filter(
      (part) => part.sdKg > 0 && half >= 0,
    ),
  };
}

/**
 * Grain beyond the last sensors: the air passes them before it leaves, and what that layer gave off is not in their air. Its
 * dry matter times the change of the nearest sensors, kg.
 */
function beyondSensors({ bin, moisture, grain }: WaterByAirInput): number {
  if (grain.dryMatterKg === null || grain.depthM === null) return 0;
  let sum = 0;
  let weight = 0;
  for (const cable of bin.cables) {
    const own = moisture.shares.filter((one) => one.cable === cable.id && one.startWb !== null && one.endWb !== null);
    if (own.length === 0) continue;
    const last = own.reduce((a, b) => ((bin.air === 'up') === a.heightM > b.heightM ? a : b));
    const beyondM = bin.air === 'up' ? grain.depthM - last.heightM : last.heightM;
    const share = own.reduce((total, one) => total + one.share, 0);
    const change = dryFromWet(last.startWb!) - dryFromWet(last.endWb!);
    sum += share * (beyondM / grain.depthM) * change;
    weight += share;
  }
  return weight > 0 ? (grain.dryMatterKg * sum) / weight : 0;
}
