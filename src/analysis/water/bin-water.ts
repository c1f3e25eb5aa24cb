import { type Estimate, withheld } from '../../base/estimate.ts';
import { type Isotherm, isothermsOf } from '../../grain/isotherm.ts';
import type { Bin, Season } from '../../season/season.ts';
import { statedHeaters } from '../../season/stated-heaters.ts';
import type { SensorSeries } from '../../tables/sensors.ts';
import type { AirflowFound } from '../airflow/bin-airflow.ts';
import { onAt } from '../fan/spans.ts';
import { unloggedFans } from '../fan/unlogged-fans.ts';
import { fillTimes } from '../grain/fill-times.ts';
import { weightByVolume } from '../grain/weight-by-volume.ts';
import { isothermNamed } from '../moisture/isotherm-named.ts';
import type { Ticket } from '../moisture/tickets.ts';
import {
  type BinFan,
  type BinGrainAmount,
  type BinMoisture,
  type BinWater,
  FAN_ON,
  type FanSpans,
  type Span,
} from '../types.ts';
import { likelyWater, orderOf } from './disagreement.ts';
import { grainWarmth } from './grain-warmth.ts';
import { humidityLog, temperatureLog } from './humidity-log.ts';
import { leavingAir } from './leaving-air.ts';
import { settledShare } from './settled-share.ts';
import { untoldHeat } from './untold-heat.ts';
import { waterByAir } from './water-by-air.ts';
import { waterBySensors } from './water-by-sensors.ts';
import { ticketNotes, waterByTickets } from './water-by-tickets.ts';

export interface BinWaterInput {
  bin: Bin;
  season: Season;
  /** of this bin */
  series: readonly SensorSeries[];
  /** null where no log tells */
  spans: FanSpans | null;
  grain: BinGrainAmount;
  moisture: BinMoisture;
  airflow: AirflowFound;
  fan: Pick<BinFan, 'fans' | 'doubt'>;
  tickets: readonly Ticket[];
  /** the bin's plenum, and outdoors: columns `time`, `temp_c`, `rh`, `flags`, and outdoors `dew_point_c` */
  plenum: Readonly<Record<string, Float64Array>>;
  weather: Readonly<Record<string, Float64Array>>;
  /** of the station, Pa */
  stationPa: number;
}

/** A part of the water by air that fell before or after the sensors' account, told where it is more than this share. */
const OUTSIDE_SHARE = 0.05;

/** Water that left a bin by sensors, by the air and by scale tickets, and whether they agree. */
export function binWater(input: BinWaterInput): BinWater {
  const { bin, grain, moisture, airflow } = input;
  const bySensors = waterBySensors(grain, moisture);
  const fill = fillTimes(bin);
  const ofTickets = [input.tickets, fill, weightByVolume(bin, fill.depthM)] as const;
  const byTickets = waterByTickets(...ofTickets);
  const air = byAirOf(input);
  const pairs = [orderOf(air.between, bySensors), orderOf(byTickets, bySensors), orderOf(byTickets, air.between)];
  const known = pairs.filter((order) => order !== null);
  return {
    bySensors,
    byAir: air.all,
    byTickets,
    byAirBetween: air.between,
    agree: known.length === 0 ? null : known.every((order) => order === 'overlap'),
    likely: likelyWater(bySensors, air.between, byTickets, airflow.told),
    air: air.air,
    notes: [...notesOf(input, air), ...(byTickets.value === null ? [] : ticketNotes(...ofTickets))],
    why: whyOf(bySensors, air.all, byTickets),
  };
}

/** A bin without any account of its water, with one reason for all of it. */
export function missingWater(why: string): BinWater {
  const none = withheld(why);
  return {
    bySensors: none,
    byAir: none,
    byTickets: none,
    byAirBetween: none,
    agree: null,
    likely: [],
    air: null,
    notes: [],
    why,
  };
}

/** Short runs after long rests tell what the bed does while it settles, and not what leaves it. */
const LEAST_SETTLED = 0.2;
const UNSETTLED =
  'Most of the fan hours lie in short runs between rests of three days or more: while the bed settles, the air that leaves is not in balance with the grain at the last sensors.';

function byAirOf(input: BinWaterInput) {
  const { bin, season, series, spans, moisture, airflow, stationPa } = input;
  const none = (why: string) => ({ all: withheld(why), between: withheld(why), air: null });
  if (spans === null || airflow.relativeAt === null)
    return none(airflow.told.why ?? 'The airflow of this bin is not known.');
  const unlogged = unloggedFans(bin, input.fan);
  if (unlogged !== null)
    return none(`${unlogged.said}, so the hours in which air carried water off are not all known.`);
  const { filledMs, unloadedMs } = bin.grain;
  const settled = settledShare(spans, filledMs ?? Number.NEGATIVE_INFINITY, unloadedMs ?? Number.POSITIVE_INFINITY);
  if (settled < LEAST_SETTLED) return none(UNSETTLED);
  const isotherm = cableIsotherm(bin, season);
  if (isotherm === null) return none(`No isotherm is known for ${bin.grain.crop}.`);
  const heaters = statedHeaters(season, bin);
  const stated = statedIsotherm(season, bin);
  const others = stated ? [] : isothermsOf(bin.grain.crop).filter((one) => one !== isotherm);
  const cables = airflow.told.front.cables;
  const weightOf = (id: string) => {
    const known = cables.find((one) => one.cable === id);
    return known === undefined ? 1 / bin.cables.length : known.share * known.relative;
  };
  const running = (ms: number) => onAt(spans, ms) === FAN_ON;
  const found = waterByAir({
    bin,
    spans,
    flowM3S: airflow.forWater,
    relativeAt: airflow.relativeAt,
    plenum: humidityLog(input.plenum, stationPa, running),
    plenumWarmth: temperatureLog(input.plenum, running),
    outdoor: humidityLog(input.weather, stationPa),
    leaving: leavingAir(bin, series, isotherm, others, stationPa, weightOf),
    warmth: grainWarmth(bin, series, weightOf),
    isotherm,
    stationPa,
    errors: season.sensors,
    moisture,
    grain: input.grain,
    between: betweenOf(moisture),
  });
  const untold = found.air === null ? null : untoldHeat(bin.air, heaters, found.air);
  if (untold !== null) return none(untold);
  return found;
}

/** From the day of the start to that of the end; null where no day tells them. */
function betweenOf({ start, end }: BinMoisture): Span | null {
  if (start.window === null || end.window === null) return null;
  return { fromMs: start.window.fromMs, toMs: end.window.toMs };
}

function statedIsotherm(season: Season, bin: Bin): boolean {
  const name = season.sensors.moisture.isotherm ?? bin.grain.isotherm;
  return name !== null && isothermNamed(bin.grain.crop, name) !== null;
}

/** By which the cable made moisture of humidity. */
function cableIsotherm(bin: Bin, season: Season): Isotherm | null {
  for (const name of [season.sensors.moisture.isotherm, bin.grain.isotherm]) {
    const found = name === null ? null : isothermNamed(bin.grain.crop, name);
    if (found !== null) return found;
  }
  return isothermNamed(bin.grain.crop);
}

function notesOf(input: BinWaterInput, air: { all: Estimate; between: Estimate; air: BinWater['air'] }): string[] {
  const notes: string[] = [];
  const { all, between } = air;
  if (
    all.value !== null &&
    between.value !== null &&
    Math.abs(all.value - between.value) > OUTSIDE_SHARE * Math.abs(all.value)
  )
    notes.push(
      'The air’s account covers all running with grain in the bin; what went before the sensors’ start or after their end is left out where the two are compared.',
    );
  if (air.air !== null && air.air.plenumShare < 0.5)
    notes.push(
      heatedBy(input)
        ? 'The humidity of the entering air is mostly the outdoor air’s: fan and electric heater warm it and leave its water as it is.'
        : 'The humidity of the entering air is mostly the outdoor air’s: a fan warms it and leaves its water as it is.',
    );
  if (air.air !== null && air.air.coveredHours < 0.95 * air.air.fanHours)
    notes.push(
      'Hours without a reading of the entering or leaving air are counted like the others, and the interval is wider for it.',
    );
  const { start, end } = input.moisture;
  const sources = [start.from, end.from];
  if (sources.includes('sensors')) {
    if (sources.includes('tickets')) notes.push('A moisture of the sensors’ account comes from scale tickets.');
    if (sources.includes('stated')) notes.push('A moisture of the sensors’ account is only stated in season.yaml.');
  }
  return notes;
}

const heatedBy = ({ bin, season }: BinWaterInput) => bin.air === 'up' && statedHeaters(season, bin).length > 0;

function whyOf(...ways: readonly Estimate[]): string | null {
  const whys = ways.flatMap((one) => (one.value === null && one.why !== null ? [one.why] : []));
  return whys.length === 0 ? null : [...new Set(whys)].join(' ');
}
