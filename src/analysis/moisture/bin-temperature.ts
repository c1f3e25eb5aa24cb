import { weightedMean } from '../../base/stats/weighted.ts';
import type { Bin, SensorErrors } from '../../season/season.ts';
import type { SensorSeries } from '../../tables/sensors.ts';
import type { AirLog } from '../fronts/air-log.ts';
import { fillTimes } from '../grain/fill-times.ts';
import type { BinTemperature, FanSpans, MomentMean } from '../types.ts';
import { grainEdges } from './grain-edges.ts';
import { missedCooling } from './missed-cooling.ts';
import { temperatureLimits } from './moisture-limits.ts';
import type { MomentName } from './moment-window.ts';
import { type SensorMoments, sensorMoments } from './sensor-moments.ts';
import { believedReadings, type SensorReadings } from './sensor-readings.ts';
import { temperatureInterval, temperatureParts } from './temperature-interval.ts';

/** Why an interval is as wide as it is. */
const ANY_OUTDOORS =
  'The outdoor temperatures of the time are not known, so the grain along the wall may have followed any: the intervals of its mean temperature reach that far.';

/** What the interval of the mean needs beside the cables. */
export interface AroundTheGrain {
  /** limits of the sensors, as stated */
  errors: SensorErrors['temperature'];
  /** outdoor air of the season */
  weather: AirLog;
}

/**
 * Mean temperature of the grain at the start and the end, sensors weighing as they do for moisture. Still air is
 * preferred only very near the moment, for a cooling front moves faster than a drying one.
 *
 * The 90 % interval joins the sensors' errors and what lies between them, and reaches as far as the grain beyond the
 * outermost sensors may have followed the weather since it was filled (conduction from wall, surface and floor), and as the
 * fan hours between the moment and the day that was read may have moved it.
 *
 * @param spans   the bin's fans together; null where no log tells
 * @param around  left out: no intervals
 */
export function binTemperature(
  bin: Bin,
  series: readonly SensorSeries[],
  spans: FanSpans | null,
  around: AroundTheGrain | null = null,
): BinTemperature {
  const fill = fillTimes(bin);
  const from = fill.filledMs ?? Number.NEGATIVE_INFINITY;
  const to = fill.wholeUntilMs ?? Number.POSITIVE_INFINITY;
  const sensors = believedReadings(bin, series, 'temperature', spans, from, to);
  const moments = sensorMoments(bin, fill, sensors, spans, temperatureLimits(bin.goal), 'temperature');
  const whys = new Set([moments.startWhy, moments.endWhy].filter((why) => why !== null));
  const intervalOf = (mean: MomentMean, name: MomentName) => {
    if (mean.value === null || mean.window === null || around === null || fill.depthM === null) return null;
    const rows = moments.rows.map((row) => ({ ...row, tempC: row[name].value }));
    const since = Math.min(fill.filledMs ?? firstOf(sensors), mean.window.fromMs);
    const { edges, outdoorKnown } = grainEdges(
      bin,
      fill.depthM,
      moments.rows,
      sensors,
      around.weather,
      spans,
      since,
      mean.window.toMs,
    );
    if (!outdoorKnown) whys.add(ANY_OUTDOORS);
    return temperatureInterval(mean.value, temperatureParts(rows, fill.depthM, bin.diameterM, around.errors, bin.air), [
      ...edges,
      missedCooling(bin, name, mean.value, moments[name]!, around.weather, spans),
    ]);
  };
  const withInterval = (name: MomentName): MomentMean => {
    const mean = momentMean(moments, name);
    return { ...mean, interval: intervalOf(mean, name) };
  };
  const start = withInterval('start');
  const end = withInterval('end');
  return {
    start,
    end,
    why: whys.size === 0 ? null : [...whys].join(' '),
  };
}

function firstOf(sensors: readonly SensorReadings[]): number {
  return Math.min(...sensors.map((one) => one.timeMs[0]));
}

function momentMean(moments: SensorMoments, name: MomentName): MomentMean {
  const window = moments[name];
  if (window === null) return { value: null, window: null, stillAir: false, readings: 0, sensors: 0, fanOn: null };
  const { rows } = moments;
  const shares = rows.map((row) => row.share);
  const fanOn = weightedMean(
    rows.map((row) => row[name].moving),
    shares,
  );
  return {
    value: weightedMean(
      rows.map((row) => row[name].value),
      shares,
    ),
    window: window.span,
    stillAir: window.stillAir,
    readings: rows.reduce((sum, row) => sum + row[name].readings, 0),
    sensors: rows.length,
    fanOn: Number.isNaN(fanOn) ? null : fanOn,
  };
}
