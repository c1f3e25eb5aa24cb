import { wholeHours } from '../../base/whole-hours.ts';
import type { Isotherm } from '../../grain/isotherm.ts';
import { isothermOf } from '../../grain/isotherm.ts';
import type { LoadedSeason } from '../../season/loaded.ts';
import type { Bin, Season } from '../../season/season.ts';
import { type SensorSeries, sensorSeries } from '../../tables/sensors.ts';
import { plenumRows, weatherRows } from '../air-rows.ts';
import { logsEnd } from '../fan/logs-end.ts';
import { unloggedFans } from '../fan/unlogged-fans.ts';
import { airLog } from '../fronts/air-log.ts';
import { enteringAir } from '../fronts/entering-air.ts';
import { statedWarming } from '../fronts/fan-warming.ts';
import { HOUR_MS } from '../fronts/front-limits.ts';
import { fillTimes } from '../grain/fill-times.ts';
import { PACKING_MOST } from '../grain/weight-by-volume.ts';
import { isothermNamed } from '../moisture/isotherm-named.ts';
import type { BinReview } from '../types.ts';
import { airByHour } from './air-by-hour.ts';
import { type CableLog, cableLogs } from './cable-logs.ts';
import { type FanShares, fanShares } from './fan-shares.ts';
import { hoursOfWeather, type WeatherHours } from './hours-of-weather.ts';
import { hoursInPart } from './logged-shares.ts';
import { relativeFlowByHour } from './relative-flow.ts';
import { sharesByPressure } from './shares-by-pressure.ts';
import { type StartReading, startReadings } from './start-profile.ts';
import { tariffOf } from './tariff-of.ts';

/** A bin's season as a bed can be driven by it: what was logged, hour by hour from when the bin was filled. */
export interface BinLog {
  bin: Bin;
  season: Season;
  review: BinReview;
  /** UTC, the first full hour */
  startMs: number;
  endMs: number;
  /** hours */
  count: number;
  depthM: number;
  floorAreaM2: number;
  /** dry matter of bulk grain, kg/m3 */
  dryDensityKgM3: number;
  weather: WeatherHours;
  fan: FanShares;
  /** airflow over that with the fans that ran most, [hours] */
  relativeFlow: Float64Array;
  /** [hours], degC: air that entered, as the plenum logged it with the fan on; NaN where outdoor air and the fan's warming tell it */
  enteringC: Float64Array;
  /** median warming by the plenum's readings, K; null where they do not tell it */
  warmingK: number | null;
  /** of the air that the fan took in, m3 per kg dry air: mean, and [hours] */
  meanVolumeM3Kg: number;
  volumeM3Kg: Float64Array;
  cables: readonly CableLog[];
  /** by which the cables make moisture of humidity */
  cableIsotherm: Isotherm;
  /** whether season.yaml says so; else it is the crop's usual one */
  cableStated: boolean;
  /** how the sensors read before the fan had done much, [cables][sensors] */
  startReads: readonly (readonly StartReading[])[];
  /** moisture at the start by sensors, tickets or as stated, wet basis; NaN where nothing tells it */
  startWb: number;
  /** what a reader must know, whole sentences */
  notes: readonly string[];
}

/** Of this long after filling the readings tell the start, h, unless the fan was on before; then of the first hours. */
const START_H = 24;
const FEW_H = 4;
/** A season shorter than this, h, is none. */
const SHORTEST_H = 72;

/**
 * @param series  of the season; read from its tables when left out
 * @returns       a sentence where the bin cannot be driven by its log
 */
export function binLog(loaded: LoadedSeason, review: BinReview, series?: readonly SensorSeries[]): BinLog | string {
  const { season, tables } = loaded;
  const { bin } = review;
  if (review.fan.doubt !== undefined) return review.fan.doubt;
  const unlogged = unloggedFans(bin, review.fan);
  if (unlogged !== null)
    return `${unlogged.said}, so nobody knows in which hours the grain in ${bin.name} got what air.`;
  if (bin.fanIds.length > 0 && review.fan.fans.length === 0) return `No log tells when the fans of ${bin.name} ran.`;
  const { depthM, filledMs, wholeUntilMs } = fillTimes(bin);
  if (depthM === null || !(depthM > 0.3)) return `No depth of the grain in ${bin.name} is stated.`;
  const own = (series ?? sensorSeries(tables.readings)).filter((one) => one.bin === bin.id);
  if (own.length === 0) return `No sensor of ${bin.name} has a log.`;
  const first = Math.min(...own.map((one) => one.timeMs[0]));
  const startMs = Math.ceil(Math.max(filledMs ?? first, first) / HOUR_MS) * HOUR_MS;
  const endMs = Math.min(wholeUntilMs ?? Number.POSITIVE_INFINITY, logsEnd(loaded));
  const count = Math.floor((endMs - startMs) / HOUR_MS);
  if (!(count >= SHORTEST_H)) return `The log of ${bin.name} with the bin filled is shorter than three days.`;

  const spans = review.fan.spans.state.length === 0 ? null : review.fan.spans;
  const outdoor = weatherRows(loaded);
  const weather = hoursOfWeather(season, tariffOf(season, bin), outdoor, startMs, count);
  if (weather === null) return `No weather was logged while ${bin.name} held its grain.`;
  const cables = cableLogs(bin, own, spans, depthM, startMs - HOUR_MS, endMs);
  if (cables.length === 0) return `No sensor of ${bin.name} lies in the grain.`;
  const pressed = plenumRows(tables, bin.id);
  const logged = fanShares(spans, startMs, count);
  const { fan, foundH } =
    spans === null ? { fan: logged, foundH: 0 } : sharesByPressure(logged, spans, pressed.rows, startMs);
  const isotherm = isothermNamed(bin.grain.crop, season.sensors.moisture.isotherm);
  const midMs = Float64Array.from({ length: count }, (_, hour) => startMs + (hour + 0.5) * HOUR_MS);
  const plenum = airLog(pressed.rows);
  const { usualK } = statedWarming(bin.goal);
  const entering = spans === null ? null : enteringAir({ midMs }, spans, plenum, outdoor.temperatures, bin.air, usualK);
  const relativeFlow = relativeFlowByHour(loaded, review, startMs, count, depthM);
  const startWb = review.moisture.start.value ?? bin.grain.moistureInWb ?? Number.NaN;
  if (Number.isNaN(startWb)) return `The moisture of the grain in ${bin.name} at filling is not known.`;
  return {
    bin,
    season,
    review,
    startMs,
    endMs,
    count,
    depthM,
    floorAreaM2: (Math.PI / 4) * bin.diameterM ** 2,
    dryDensityKgM3: dryDensityOf(review, startWb),
    weather,
    fan,
    relativeFlow,
    enteringC: midMs.map((_, hour) => (entering?.fromPlenum[hour] === 1 ? entering.tempC[hour] : Number.NaN)),
    warmingK: entering?.warmingFrom === 'plenum' ? entering.warmingK : null,
    ...airByHour(weather, fan),
    cables,
    cableIsotherm: isotherm ?? isothermOf(bin.grain.crop),
    cableStated: season.sensors.moisture.isotherm !== null && isotherm !== null,
    startReads: startReadings(cables, startWindow(fan, startMs)),
    startWb,
    notes: notesOf(weather, fan, foundH, relativeFlow),
  };
}

/** By tickets the grain is as packed as it lies; by depth and test weight the middle of what packing adds is taken. */
function dryDensityOf({ bin, grain }: BinReview, startWb: number): number {
  const { dryMatterKg, volumeM3, from } = grain;
  const dry =
    dryMatterKg !== null && volumeM3 !== null ? dryMatterKg / volumeM3 : bin.grain.bulkDensityKgM3 * (1 - startWb);
  return from === 'tickets' ? dry : dry * (1 + PACKING_MOST / 2);
}

function startWindow({ on }: FanShares, startMs: number): [number, number] {
  const started = on.findIndex((share) => share > 0);
  const hours = started < 0 ? START_H : Math.min(START_H, Math.max(FEW_H, started));
  return [startMs - HOUR_MS, startMs + hours * HOUR_MS];
}

function notesOf(
  { madeUpHours, count }: WeatherHours,
  fan: FanShares,
  foundH: number,
  relativeFlow: Float64Array,
): string[] {
  const notes: string[] = [];
  if (madeUpHours > 0) {
    notes.push(
      `In ${madeUpHours} of ${count} hours no weather was logged within six hours; the air of the same hour of the nearest day stands for it.`,
    );
  }
  if (foundH >= 1) {
    notes.push(
      `For ${wholeHours(foundH)} of which the fan log says nothing the plenum’s static pressure tells that the fan ran; the bed is played so.`,
    );
  }
  const lost = fan.unknown.reduce((sum, part) => sum + part, 0);
  if (lost >= 1) notes.push(`In ${wholeHours(lost)} the fan log says nothing; the fan is taken to stand still.`);
  const inPart = hoursInPart({ fan, relativeFlow });
  if (inPart >= 1) {
    notes.push(
      `In ${Math.round(inPart)} of its fan hours a part of the fans ran; run again as logged, such an hour counts as that part of an hour with all of them.`,
    );
  }
  return notes;
}
