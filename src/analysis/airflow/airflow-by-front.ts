import { humidityRatio } from '../../air/humidity-ratio.ts';
import { specificVolumeM3Kg } from '../../air/volume.ts';
import { type Estimate, estimate, withheld, Z90 } from '../../base/estimate.ts';
import { type Middle, mixtureQuantile } from '../../base/stats/normal-mixture.ts';
import { quantile } from '../../base/stats/quantile.ts';
import type { Bin } from '../../season/season.ts';
import type { SensorSeries } from '../../tables/sensors.ts';
import { goodReadings } from '../fronts/good-readings.ts';
import { CORE_RADIUS } from '../moisture/radial-error.ts';
import type { BinAirflow, BinGrainAmount, BinMoisture, FanSeason, FanSpans } from '../types.ts';
import { type CableFlux, cableFlux } from './cable-flux.ts';
import { cableShares, placeSd } from './cables-apart.ts';
import { mainFanSet } from './fan-sets.ts';
import { type PassingCurve, passingCurve } from './passing-curve.ts';
import { FULL_SHARE } from './pressure-log.ts';
import { type RunWindow, runWindows } from './run-windows.ts';
import { sensorPairs } from './sensor-pairs.ts';
import { constantsSpread, grainHeatJKgK, grainIsotherm, waveRatioAt, waveRatios } from './wave-ratio.ts';

/** The bed model against beds with a drying rate and other isotherms, and against uneven walls (sd). */
const MODEL_SD = 0.03;
/** Humidity of entering air, for its volume: 30 % more or less move that by a third of a percent at 15 degC. */
const USUAL_RH = 0.7;
/**
 * What lies between and beyond the cables may get other air than they (sd). More cables do not see more of the rim: most of the
 * floor lies beyond the outermost of them.
 */
const RADIAL_SD = 0.04;
/** A bin whose only cables hang in the core, which fines leave short of air: sd, as for the points removed there. */
const CORE_ONLY_SD = 0.3;
/** Where the core ends nobody knows: the doubt fades from `CORE_RADIUS` to this share of the radius. Working assumption. */
const CORE_FADES_TO = 0.5;
/** Moisture at the sensors, points (sd), where its interval is not known. */
const MOISTURE_SD = 0.6;
/** A day's mean of a set of windows must come from the same fans for at least this much of its hours. */
const SAME_FANS = 0.8;

export interface FrontAirflowInput {
  bin: Bin;
  /** of this bin */
  series: readonly SensorSeries[];
  /** the bin's fans together */
  spans: FanSpans;
  fans: readonly FanSeason[];
  grain: BinGrainAmount;
  moisture: BinMoisture;
  /** of the station, Pa */
  stationPa: number;
  /** temperature of the entering air at a moment, degC; NaN where not known */
  enteringC: (ms: number) => number;
}

/** Airflow by how fast temperatures were carried up, and what it is made of. */
export interface FrontAirflowFound {
  /** however wide its interval */
  rangeM3S: Estimate;
  /** the logarithm of what the airflow may truly be over the one told: answers, about which the other errors spread; null where none is told */
  errors: { answers: readonly Middle[]; sd: number } | null;
  /** each cable's airflow over the bin's mean, and how fast a change at 10 degC moves past it, m per fan hour */
  cables: BinAirflow['front']['cables'];
  /** which fans ran, as `F1+F2`; empty where there is no answer */
  fanSet: string;
  windows: number;
  fanHours: number;
  depthM: number | null;
  /** relative standard errors by cause */
  parts: readonly { cause: string; relSd: number }[];
  isotherms: readonly string[];
}

type FanWindow = RunWindow & { fans: { set: string; share: number } };

const nothing = (why: string): FrontAirflowFound => ({
  rangeM3S: withheld(why),
  errors: null,
  cables: [],
  fanSet: '',
  windows: 0,
  fanHours: 0,
  depthM: null,
  parts: [],
  isotherms: [],
});

/**
 * Airflow of a bin from the time that changes of temperature take from sensor to sensor, by the balances of heat and water of
 * grain and air (evaporation carries nearly half of the heat). All running counts, not only whole fronts: daily waves and
 * weather go up at the same pace.
 */
export function airflowByFront(input: FrontAirflowInput): FrontAirflowFound {
  const { bin, grain, moisture, spans } = input;
  if (grain.depthM === null || grain.volumeM3 === null)
    return nothing('The depth of the grain is not known, so a front’s speed tells no airflow.');
  if (grain.dryMatterKg === null || moisture.start.value === null)
    return nothing('The moisture of the grain is not known, and with it how much heat the air carries.');
  if (bin.cables.length === 0) return nothing('No cable is described for this bin, so no front can be timed.');
  const dryMatterKgM3 = grain.dryMatterKg / grain.volumeM3;
  const all = runWindows(bin, spans).map((window) => ({
    ...window,
    fans: mainFanSet(input.fans, spans, window.span.fromMs, window.span.toMs),
  }));
  const windows = mainWindows(all, grain.depthM);
  if (windows.length === 0)
    return nothing(
      all.some(({ depthM, fans }) => depthM >= FULL_SHARE * (grain.depthM ?? 0) && fans.share < SAME_FANS)
        ? 'The bin’s fans ran now together, now one alone, neither for four fifths of any stretch of running: no one airflow stood long enough to time a front by.'
        : 'The fans did not run for 24 hours without days of rest at one depth of the grain, too little to time a front.',
    );
  const curves = input.series.map((one) =>
    passingCurve(goodReadings(one, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY), spans),
  );
  const { crop } = bin.grain;
  const ratios = waveRatios(grainIsotherm(crop, bin.grain.isotherm), crop, input.stationPa);
  const cables = bin.cables.flatMap((cable) => {
    const pairs = windows.flatMap((window, number) =>
      sensorPairs(input, ratios, curves, cable, window, number, dryMatterKgM3),
    );
    const found = cableFlux(cable.id, pairs);
    return found === null ? [] : [found];
  });
  if (cables.length === 0)
    return nothing(
      'No two sensors of a cable saw one change of temperature after the other clearly enough to time it.',
    );
  return joined(input, windows, cables, curves, dryMatterKgM3);
}

/** Windows at full depth with the set of fans that ran longest there. */
function mainWindows(all: readonly FanWindow[], depthM: number): FanWindow[] {
  const full = all.filter((one) => one.depthM >= FULL_SHARE * depthM && one.fans.share >= SAME_FANS);
  const hours = new Map<string, number>();
  for (const one of full) hours.set(one.fans.set, (hours.get(one.fans.set) ?? 0) + one.toH - one.fromH);
  const [set] = [...hours].sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1))[0] ?? [''];
  return full.filter((one) => one.fans.set === set);
}

/** The cables together, by their rings, with the interval. */
function joined(
  input: FrontAirflowInput,
  windows: readonly FanWindow[],
  cables: readonly CableFlux[],
  curves: readonly PassingCurve[],
  dryMatterKgM3: number,
): FrontAirflowFound {
  const { bin, grain, moisture, stationPa } = input;
  const { crop } = bin.grain;
  const shares = cableShares(bin, grain.depthM!, cables);
  const flux = cables.reduce((sum, one, i) => sum + shares[i] * one.fluxKgM2S, 0);
  const temps = curves.flatMap((curve) =>
    [...curve.fanHour.keys()]
      .filter((i) => windows.some((one) => curve.fanHour[i] >= one.fromH && curve.fanHour[i] <= one.toH))
      .map((i) => curve.tempC[i]),
  );
  const [coldC, warmC] = [quantile(temps, 0.1), quantile(temps, 0.9)];
  const wb = moisture.start.value!;
  const isotherm = grainIsotherm(crop, bin.grain.isotherm);
  const spread = constantsSpread(crop, wb, coldC, warmC, stationPa);
  const middleC = (coldC + warmC) / 2;
  const ratio = (moistureWb: number) =>
    waveRatioAt(isotherm, grainHeatJKgK(crop, moistureWb), moistureWb, stationPa)(middleC);
  const [wetLow, wetHigh] = moisture.start.interval ?? [wb, wb];
  const moistureSd = Math.max(MOISTURE_SD / 100, (wetHigh - wetLow) / 2 / Z90);
  const [lightest, heaviest] = grain.dryMatterKgInterval ?? [grain.dryMatterKg!, grain.dryMatterKg!];
  const placing = placeSd(bin, cables);
  const effective = shares.reduce((sum, share) => sum + share * share, 0);
  const weights = cables.map((one, i) => (shares[i] * one.fluxKgM2S) / flux);
  const parts = [
    {
      cause: 'timing from sensor to sensor',
      relSd: Math.sqrt(cables.reduce((sum, one, i) => sum + (weights[i] * one.ownSd) ** 2, 0)),
    },
    {
      cause: 'weather of the stretches that were timed',
      relSd: cables.reduce((sum, one, i) => sum + weights[i] * one.weatherSd, 0),
    },
    { cause: 'air that differs from place to place', relSd: placing * Math.sqrt(effective) },
    { cause: 'grain between and beyond the cables', relSd: radialSd(bin, cables) },
    { cause: 'moisture of the grain', relSd: Math.abs(ratio(wb + moistureSd) / ratio(wb) - 1) },
    { cause: 'dry matter in a cubic metre', relSd: (heaviest - lightest) / 2 / Z90 / grain.dryMatterKg! },
    { cause: 'the balances themselves', relSd: MODEL_SD },
  ];
  const sd = Math.hypot(...parts.map((part) => part.relSd));
  const enteringC = meanEntering(input, windows);
  const volume = specificVolumeM3Kg(enteringC, humidityRatio(enteringC, USUAL_RH, stationPa), stationPa);
  // The middle of what is open: grain packs to one side only.
  const packed = (lightest + heaviest) / 2 / grain.dryMatterKg!;
  const middle = spread.answers.reduce((sum, one) => sum + one.weight * one.at, 0);
  const answers = spread.answers.map((one) => ({ at: one.at - middle, weight: one.weight }));
  const flow = flux * packed * Math.exp(middle) * volume * (Math.PI / 4) * bin.diameterM ** 2;
  const constantsSd = Math.sqrt(answers.reduce((sum, one) => sum + one.weight * one.at ** 2, 0));
  const end = (p: number) => flow * Math.exp(mixtureQuantile(p, answers, sd));
  const allParts = [...parts, { cause: 'choice of isotherm and specific heat', relSd: constantsSd }];
  return {
    rangeM3S: estimate(flow, end(0.05), end(0.95)),
    errors: { answers, sd },
    cables: cables.map((one, i) => ({
      cable: one.cable,
      share: shares[i],
      relative: one.fluxKgM2S / flux,
      // Its own timing alone: what weather, isotherm and moisture leave open is the same for all cables.
      relativeInterval: [
        (one.fluxKgM2S / flux) * Math.exp(-Z90 * one.ownSd),
        (one.fluxKgM2S / flux) * Math.exp(Z90 * one.ownSd),
      ],
      speedMH: (one.fluxKgM2S * ratio(wb) * 3600) / dryMatterKgM3,
      pairs: one.pairs,
    })),
    fanSet: windows[0].fans.set,
    windows: windows.length,
    fanHours: windows.reduce((sum, one) => sum + one.toH - one.fromH, 0),
    depthM: Math.max(...windows.map((one) => one.depthM)),
    parts: allParts,
    isotherms: spread.isotherms,
  };
}

function radialSd(bin: Bin, cables: readonly CableFlux[]): number {
  const used = bin.cables.filter((one) => cables.some((flux) => flux.cable === one.id));
  const outer = Math.max(...used.map((one) => one.fromCentreM)) / (bin.diameterM / 2);
  const inCore = Math.min(1, Math.max(0, (CORE_FADES_TO - outer) / (CORE_FADES_TO - CORE_RADIUS)));
  return inCore * CORE_ONLY_SD + (1 - inCore) * RADIAL_SD;
}

function meanEntering({ enteringC }: FrontAirflowInput, windows: readonly FanWindow[]): number {
  const temps: number[] = [];
  for (const { span } of windows) {
    for (let ms = span.fromMs; ms < span.toMs; ms += 6 * 3_600_000) temps.push(enteringC(ms));
  }
  const known = temps.filter((tempC) => !Number.isNaN(tempC));
  return known.length === 0 ? 10 : known.reduce((sum, tempC) => sum + tempC, 0) / known.length;
}
