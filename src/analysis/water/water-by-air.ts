import { type Estimate, estimate, withheld, Z90, Z95 } from '../../base/estimate.ts';
import type { Isotherm } from '../../grain/isotherm.ts';
import type { SensorErrors } from '../../season/season.ts';
import { ASSUMED_ACCURACY, ASSUMED_BIAS } from '../moisture/reading-parts.ts';
import { ASSUMED_ACCURACY_K, ASSUMED_BIAS_K } from '../moisture/temperature-interval.ts';
import type { BinGrainAmount, BinMoisture, BinWater, Span } from '../types.ts';
import { type AirPiece, type AirPiecesInput, airPieces } from './air-pieces.ts';
import { beyondSensors } from './beyond-sensors.ts';
import { type HeatBalance, heatBalance } from './heat-balance.ts';
import { type HumidityBalance, humidityBalance } from './humidity-balance.ts';
import { type Cause, joinedCauses } from './joined-causes.ts';

/** Less of the fan hours with both airs known tells no season. */
const LEAST_COVERED = 0.6;
/** What the uncovered hours took out may differ from the usual by so much (sd). Working assumption. */
const FILLED_SD = 0.5;
/** How far the air at the last sensors stands for the air that leaves everywhere, share of the water (sd). */
const PLACE_SD = 0.06;

export interface WaterByAirInput extends Omit<AirPiecesInput, 'flowM3S' | 'fullDepthM'> {
  /** at full depth with its main fans */
  flowM3S: Estimate;
  isotherm: Isotherm;
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

/**
 * Water that the air carried off, summed over the fan hours with grain in the bin: airflow times what its humidity ratio
 * gained. The gain is had in two ways whose errors differ, and the two are joined by their errors: the leaving air in balance
 * with the last grain that it passes, and the balance of heat.
 */
export function waterByAir(input: WaterByAirInput): WaterByAirFound {
  const { flowM3S, grain } = input;
  const none = (why: string): WaterByAirFound => ({ all: withheld(why), between: withheld(why), air: null });
  if (flowM3S.value === null) return none(`The airflow is not known. ${flowM3S.why ?? ''}`.trim());
  if (grain.depthM === null) return none('The depth of the grain is not known.');
  const pieces = airPieces({ ...input, flowM3S: flowM3S.value, fullDepthM: grain.depthM });
  if (pieces.length === 0) return none('The fans did not run while grain was in the bin.');
  const all = accountOf(input, pieces);
  if (all.water.value === null) return none(all.water.why!);
  const { between } = input;
  const within = between === null ? pieces : pieces.filter(({ ms }) => ms >= between.fromMs && ms < between.toMs);
  const { humidity, heat } = all;
  return {
    all: all.water,
    between: within.length === 0 ? estimate(0, 0, 0) : accountOf(input, within).water,
    air: {
      fanHours: pieces.reduce((sum, one) => sum + one.hours, 0),
      coveredHours: all.coveredHours,
      plenumShare: pieces.filter((one) => one.entering?.plenum).length / pieces.length,
      warmthShare: pieces.filter((one) => one.entering?.tempLogged).length / pieces.length,
      byHumidity: wayOf(humidity, 'Moisture of the last grain or humidity of the entering air is not known.'),
      byHeat: wayOf(heat, 'Temperatures of the air or the dry matter are not known.'),
      heatShare: all.heatShare,
      enteringRatio: humidity === null ? null : humidity.enteringKg / humidity.airKg,
      leavingRatio: humidity === null ? null : humidity.leavingKg / humidity.airKg,
      parts: all.parts,
    },
  };
}

/** One way to the gain with its interval, without the airflow's, which both share. */
function wayOf(way: { waterKg: number; sd: number } | null, why: string): Estimate {
  return way === null ? withheld(why) : estimate(way.waterKg, way.waterKg - Z90 * way.sd, way.waterKg + Z90 * way.sd);
}

interface Account {
  water: Estimate;
  humidity: (HumidityBalance & { sd: number }) | null;
  heat: (HeatBalance & { sd: number }) | null;
  heatShare: number;
  coveredHours: number;
  parts: Cause[];
}

function accountOf(input: WaterByAirInput, pieces: readonly AirPiece[]): Account {
  const hours = pieces.reduce((sum, one) => sum + one.hours, 0);
  const airKg = pieces.reduce((sum, one) => sum + one.airKg, 0);
  const humidity = humidityOf(input, pieces, hours);
  const heat = heatOf(input, pieces, hours, airKg);
  const weights = [humidity, heat].map((one) => (one === null ? 0 : 1 / one.sd ** 2));
  const weight = weights[0] + weights[1];
  if (!(weight > 0)) {
    const percent = Math.round((100 * (humidity?.hours ?? heat?.hours ?? coveredOf(pieces))) / hours);
    const why = `Entering and leaving air are both known in only ${percent} % of the fan hours.`;
    return { water: withheld(why), humidity: null, heat: null, heatShare: 0, coveredHours: 0, parts: [] };
  }
  const value = ((humidity?.waterKg ?? 0) * weights[0] + (heat?.waterKg ?? 0) * weights[1]) / weight;
  // Two ways that part by more than their errors allow make both less sure (Birge's ratio).
  const apart =
    humidity === null || heat === null
      ? 1
      : Math.max(1, Math.abs(humidity.waterKg - heat.waterKg) / apartSd(humidity, heat) / 1.5);
  const coveredHours = Math.max(humidity?.hours ?? 0, heat?.hours ?? 0);
  const share = weights.map((one) => one / weight);
  const parts = [
    ...joinedCauses([humidity, heat].map((way, i) => ({ factor: share[i] * apart, parts: way?.parts ?? [] }))),
    { cause: 'leaving air between the cables', sdKg: PLACE_SD * Math.abs(value) },
    { cause: 'hours without a reading', sdKg: Math.abs(value) * (1 - coveredHours / hours) * FILLED_SD },
  ].filter((part) => part.sdKg > 0);
  const half = Z90 * Math.hypot(...parts.map((part) => part.sdKg));
  const ends = airflowEnds(input, value, humidity, heat, share);
  return {
    water: estimate(
      value,
      value - Math.hypot(half, value - Math.min(...ends, value)),
      value + Math.hypot(half, Math.max(...ends, value) - value),
    ),
    humidity,
    heat,
    heatShare: share[1],
    coveredHours,
    parts: [{ cause: 'airflow', sdKg: (Math.max(...ends) - Math.min(...ends)) / 2 / Z90 }, ...parts],
  };
}

/** By how much the two ways may part, kg (sd). */
function apartSd(humidity: HumidityBalance, heat: HeatBalance): number {
  const causes = joinedCauses([
    { factor: 1, parts: humidity.parts },
    { factor: -1, parts: heat.parts },
  ]);
  return Math.max(1, Math.hypot(...causes.map((one) => one.sdKg)));
}

/** The water at the ends of the airflow's interval: the heat that the grain gave up does not hang on it. */
function airflowEnds(
  { flowM3S }: WaterByAirInput,
  value: number,
  humidity: HumidityBalance | null,
  heat: HeatBalance | null,
  share: readonly number[],
): number[] {
  const moved = (humidity === null ? 0 : share[0] * humidity.waterKg) + (heat === null ? 0 : share[1] * heat.ofAirKg);
  return (flowM3S.interval ?? [flowM3S.value!, flowM3S.value!]).map(
    (end) => value + moved * (end / flowM3S.value! - 1),
  );
}

function coveredOf(pieces: readonly AirPiece[]): number {
  return pieces.reduce((sum, one) => sum + (one.entering !== null && one.leaving !== null ? one.hours : 0), 0);
}

function cableSd({ bin, errors }: WaterByAirInput): { moistureWb: number; tempK: number } {
  const count = Math.max(1, bin.cables.length);
  const of = (stated: number | null, otherwise: number) => (stated === null ? otherwise : stated / Z95);
  return {
    moistureWb: Math.hypot(
      of(errors.moisture.accuracyWb, ASSUMED_ACCURACY / 100 / Z95) / Math.sqrt(count),
      of(errors.moisture.biasWb, ASSUMED_BIAS / 100 / Z95),
    ),
    tempK: Math.hypot(
      of(errors.temperature.accuracyK, ASSUMED_ACCURACY_K / Z95) / Math.sqrt(count),
      of(errors.temperature.biasK, ASSUMED_BIAS_K / Z95),
    ),
  };
}

function humidityOf(
  input: WaterByAirInput,
  pieces: readonly AirPiece[],
  hours: number,
): (HumidityBalance & { sd: number }) | null {
  const sds = cableSd(input);
  const found = humidityBalance(pieces, sds.moistureWb, sds.tempK);
  if (!(found.hours >= LEAST_COVERED * hours)) return null;
  const fill = pieces.reduce((sum, one) => sum + one.airKg, 0) / found.airKg;
  const beyond = beyondSensors(input.bin, input.moisture, input.grain);
  const parts = [
    ...found.parts.map(({ cause, sdKg }) => ({ cause, sdKg: sdKg * fill })),
    { cause: 'grain beyond the last sensors', sdKg: 0.5 * Math.abs(beyond) },
  ];
  return {
    ...found,
    waterKg: found.waterKg * fill + beyond,
    parts,
    sd: Math.max(1, Math.hypot(...parts.map((part) => part.sdKg))),
  };
}

function heatOf(
  input: WaterByAirInput,
  pieces: readonly AirPiece[],
  hours: number,
  airKg: number,
): (HeatBalance & { sd: number }) | null {
  const { bin, grain, moisture, isotherm } = input;
  const moistureWb = moisture.start.value;
  if (grain.dryMatterKg === null || moistureWb === null || grain.depthM === null) return null;
  const known = pieces.flatMap((one) =>
    one.entering === null || Number.isNaN(one.leavingC - one.grainWarmedK)
      ? []
      : [
          {
            hours: one.hours,
            airKg: one.airKg,
            enteringC: one.entering.tempC,
            enteringRatio: one.entering.ratio,
            logged: one.entering.tempLogged,
            leavingC: one.leavingC,
            outdoorC: one.outdoorC,
            grainWarmedK: one.grainWarmedK,
          },
        ],
  );
  const found = heatBalance(
    known,
    isotherm,
    bin.grain.crop,
    { dryMatterKg: grain.dryMatterKg, moistureWb },
    Math.PI * bin.diameterM * grain.depthM,
    cableSd(input).tempK,
  );
  if (!(found.hours >= LEAST_COVERED * hours)) return null;
  const fill = airKg / known.reduce((sum, one) => sum + one.airKg, 0);
  const parts = found.parts.map(({ cause, sdKg }) => ({ cause, sdKg: sdKg * fill }));
  return {
    ...found,
    waterKg: found.waterKg * fill,
    ofAirKg: found.ofAirKg * fill,
    parts,
    sd: Math.max(1, Math.hypot(...parts.map((part) => part.sdKg))),
  };
}
