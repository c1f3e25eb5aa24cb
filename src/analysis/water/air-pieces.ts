import { specificVolumeM3Kg } from '../../air/volume.ts';
import type { Bin } from '../../season/season.ts';
import { fanPieces } from '../fronts/fan-pieces.ts';
import { statedWarming } from '../fronts/fan-warming.ts';
import { grainDepthAt } from '../fronts/grain-depth.ts';
import type { FanSpans } from '../types.ts';
import type { GrainWarmth } from './grain-warmth.ts';
import { type HumidityLog, placeIn, type TemperatureLog, valueAt } from './humidity-log.ts';
import type { LeavingAir } from './leaving-air.ts';

/** The air that goes into the grain. */
export interface EnteringMoistAir {
  ratio: number;
  perRh: number;
  perK: number;
  tempC: number;
  /** the plenum told its humidity; else it is the outdoor air's, of which a fan and an electric heater leave the water as it is */
  plenum: boolean;
  /** the plenum told its temperature; else it is the outdoor air's with the usual warming */
  tempLogged: boolean;
}

/** A piece of fan-on time, an hour or less, with what is known of its air. */
export interface AirPiece {
  ms: number;
  hours: number;
  airKg: number;
  /** the entering air; null where neither plenum nor weather tells it */
  entering: EnteringMoistAir | null;
  /** the leaving air by the moisture of the last sensors; null where they do not tell it */
  leaving: LeavingAir | null;
  /** temperatures, degC, and warming of the grain, K; NaN where not known */
  leavingC: number;
  outdoorC: number;
  grainWarmedK: number;
}

export interface AirPiecesInput {
  bin: Bin;
  spans: FanSpans;
  flowM3S: number;
  relativeAt: (ms: number) => number;
  plenum: HumidityLog;
  /** the plenum's temperatures, its humidity logged or not */
  plenumWarmth: TemperatureLog;
  outdoor: HumidityLog;
  leaving: (ms: number) => LeavingAir | null;
  warmth: GrainWarmth;
  stationPa: number;
  fullDepthM: number;
}

/** All running with grain in the bin, from its first stated depth until it was unloaded, piece by piece. */
export function airPieces(input: AirPiecesInput): AirPiece[] {
  const { bin, spans, flowM3S, relativeAt, outdoor, leaving, warmth, stationPa, fullDepthM } = input;
  const dated = bin.grain.depthSteps.filter((step) => step.depthM > 0).map((step) => step.fromMs);
  const fromMs = Math.min(bin.grain.filledMs ?? Number.NEGATIVE_INFINITY, ...dated.filter(Number.isFinite));
  const pieces = fanPieces(spans, fromMs, bin.grain.unloadedMs ?? Number.POSITIVE_INFINITY);
  const out: AirPiece[] = [];
  for (let i = 0; i < pieces.midMs.length; i++) {
    const ms = pieces.midMs[i];
    const relative = relativeAt(ms);
    const depthM = grainDepthAt(bin, ms) ?? fullDepthM;
    if (Number.isNaN(relative) || !(depthM > 0)) continue;
    const outside = placeIn(outdoor.timeMs, ms);
    const entering = enteringAt(input, ms, outside);
    const volume = specificVolumeM3Kg(entering?.tempC ?? 10, entering?.ratio ?? 0.005, stationPa);
    out.push({
      ms,
      hours: pieces.hours[i],
      airKg: (flowM3S * relative * pieces.hours[i] * 3600) / volume,
      entering,
      leaving: leaving(ms),
      leavingC: warmth.leavingC(ms, depthM),
      outdoorC: outside === null ? Number.NaN : valueAt(outdoor.tempC, outside),
      grainWarmedK:
        ((warmth.meanC(pieces.toMs[i], depthM) - warmth.meanC(pieces.fromMs[i], depthM)) * depthM) / fullDepthM,
    });
  }
  return out;
}

function enteringAt(
  { bin, plenum, plenumWarmth, outdoor }: AirPiecesInput,
  ms: number,
  outside: ReturnType<typeof placeIn>,
): EnteringMoistAir | null {
  const under = bin.air === 'up' ? placeIn(plenum.timeMs, ms) : null;
  const place = under ?? outside;
  if (place === null) return null;
  const log = under === null ? outdoor : plenum;
  const warm = under === null && bin.air === 'up' ? placeIn(plenumWarmth.timeMs, ms) : null;
  const warmedK = under === null && bin.air === 'up' ? statedWarming(bin.goal).usualK : 0;
  return {
    ratio: valueAt(log.ratio, place),
    perRh: valueAt(log.perRh, place),
    perK: valueAt(log.perK, place),
    tempC: warm === null ? valueAt(log.tempC, place) + warmedK : valueAt(plenumWarmth.tempC, warm),
    plenum: under !== null,
    tempLogged: under !== null || warm !== null,
  };
}
