import { weightedMean } from '../../base/stats/weighted.ts';
import type { Bin } from '../../season/season.ts';
import type { SensorSeries } from '../../tables/sensors.ts';
import { fillTimes } from '../grain/fill-times.ts';
import type { BinTemperature, FanSpans, MomentMean } from '../types.ts';
import { TEMPERATURE_LIMITS } from './moisture-limits.ts';
import type { MomentName } from './moment-window.ts';
import { type SensorMoments, sensorMoments } from './sensor-moments.ts';
import { believedReadings } from './sensor-readings.ts';

/**
 * Mean temperature of the grain at the start and the end, sensors weighing as they do for moisture. Still air is
 * preferred only very near the moment, for a cooling front moves faster than a drying one.
 *
 * @param spans  the bin's fans together; null where no log tells
 */
export function binTemperature(bin: Bin, series: readonly SensorSeries[], spans: FanSpans | null): BinTemperature {
  const fill = fillTimes(bin);
  const from = fill.filledMs ?? Number.NEGATIVE_INFINITY;
  const to = fill.wholeUntilMs ?? Number.POSITIVE_INFINITY;
  const sensors = believedReadings(bin, series, 'temperature', spans, from, to);
  const moments = sensorMoments(bin, fill, sensors, spans, TEMPERATURE_LIMITS, 'temperature');
  const whys = new Set([moments.startWhy, moments.endWhy].filter((why) => why !== null));
  return {
    start: momentMean(moments, 'start'),
    end: momentMean(moments, 'end'),
    why: whys.size === 0 ? null : [...whys].join(' '),
  };
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
