import type { Estimate } from '../../base/estimate.ts';
import type { Bin, Season } from '../../season/season.ts';
import type { SensorSeries } from '../../tables/sensors.ts';
import { type FillTimes, fillTimes } from '../grain/fill-times.ts';
import type { FanSpans } from '../types.ts';
import { type CablePoints, cablePoints, meanMoisture, type SensorChange } from './cable-points.ts';
import { LOG_LEFT_OUT_LIMITS, MOISTURE_LIMITS } from './moisture-limits.ts';
import { movingAirError } from './moving-air-error.ts';
import { type SensorMoments, sensorMoments } from './sensor-moments.ts';
import { believedReadings, type SensorReadings } from './sensor-readings.ts';
import type { Ticket } from './tickets.ts';

export interface BinMoistureInput {
  bin: Bin;
  season: Season;
  /** of the season or of the bin; others' sensors are left out */
  series: readonly SensorSeries[];
  /** the bin's fans together; null where no log tells */
  spans: FanSpans | null;
  /** true: no log tells because that of a fan is left out, which worked for longer than it says */
  logLeftOut?: boolean;
  /** the bin's fan hours, as the fan page states them */
  fanHours: Estimate;
  /** the bin's loads; empty where there are none */
  tickets: readonly Ticket[];
}

/** What a bin's own sensors say, before the season's other bins are heard about the spread between cables. */
export interface ObservedMoisture {
  input: BinMoistureInput;
  fill: FillTimes;
  sensors: readonly SensorReadings[];
  moments: SensorMoments;
  /** sensors with both moistures; empty where a moment is lacking */
  changes: readonly SensorChange[];
  cables: readonly CablePoints[];
  /** points removed by sensors; NaN where a moment is lacking */
  points: number;
  movingAir: { sd: number; stops: number };
}

/** The part of a bin's moisture that hangs on no other bin. */
export function observeMoisture(input: BinMoistureInput): ObservedMoisture {
  const { bin, series, spans, logLeftOut = false } = input;
  const fill = fillTimes(bin);
  const from = fill.filledMs ?? Number.NEGATIVE_INFINITY;
  const to = fill.wholeUntilMs ?? Number.POSITIVE_INFINITY;
  const sensors = believedReadings(bin, series, 'moisture', spans, from, to);
  const moments = sensorMoments(
    bin,
    fill,
    sensors,
    spans,
    logLeftOut ? LOG_LEFT_OUT_LIMITS : MOISTURE_LIMITS,
    'moisture',
    logsMoisture(bin, series),
  );
  const both = moments.start !== null && moments.end !== null;
  const changes = both ? moments.rows.map((row) => ({ ...row, startWb: row.start.value, endWb: row.end.value })) : [];
  const shares = changes.map((one) => one.share);
  const mean = (of: (one: SensorChange) => number) => meanMoisture(changes.map(of), shares);
  const points = both ? 100 * (mean((one) => one.startWb) - mean((one) => one.endWb)) : Number.NaN;
  const used = sensors.map(
    (one) => moments.rows.find((row) => row.cable === one.cable && row.sensor === one.sensor)?.share ?? 0,
  );
  const unsettled = [moments.start, moments.end].some((window) => window !== null && !window.stillAir);
  return {
    input,
    fill,
    sensors,
    moments,
    changes,
    cables: both ? cablePoints(changes) : [],
    points,
    movingAir: unsettled ? movingAirError(sensors, used, spans) : { sd: 0, stops: 0 },
  };
}

/** The bin's cables, where they were read at all, gave a moisture at some time, to be believed or not; many have thermometers alone. */
function logsMoisture(bin: Bin, series: readonly SensorSeries[]): boolean {
  const own = series.filter((one) => one.bin === bin.id);
  return own.length === 0 || own.some((one) => one.moistureWb.some((moisture) => !Number.isNaN(moisture)));
}
