import { errorText } from '../../base/error-text.ts';
import { withheld, Z90, Z95 } from '../../base/estimate.ts';
import { zoneOf } from '../../base/zone.ts';
import { sensorShares } from '../../bin/shares.ts';
import type { Bin, Season } from '../../season/season.ts';
import { statedHeaters } from '../../season/stated-heaters.ts';
import type { SensorSeries } from '../../tables/sensors.ts';
import type { AirRows } from '../air-rows.ts';
import { farmPressurePa } from '../airflow/entering-temperature.ts';
import { type FillTimes, fillTimes } from '../grain/fill-times.ts';
import { ASSUMED_ACCURACY_K, ASSUMED_BIAS_K } from '../moisture/temperature-interval.ts';
import type { BinMoisture, BinTemperature, FanSpans, Span } from '../types.ts';
import { isothermsInUse } from '../useful/isotherms-in-use.ts';
import { leavingAir } from '../water/leaving-air.ts';
import { blownHours } from './blown-hours.ts';
import { coldestWeek } from './coldest-week.ts';
import { conditionAlerts } from './condition-alerts.ts';
import type { BinCondition } from './condition-types.ts';
import { fanHoursByDay } from './fan-hours-by-day.ts';
import { grainAge, missingAge } from './grain-age.ts';
import { grainDays } from './grain-days.ts';
import { hourlyReadings } from './hourly-readings.ts';
import { outdoorDays, outdoorSteps } from './outdoor-days.ts';
import { daysOfGrain, outdoorGap } from './outdoor-gap.ts';
import { placeDays } from './place-days.ts';
import { edgesOf } from './place-edges.ts';
import { placeMoistures } from './place-moistures.ts';
import { type PlaceTrack, placeTracks } from './place-tracks.ts';
import { restThroughout } from './rest-throughout.ts';
import { roofHours } from './roof-hours.ts';
import { selfWarming } from './self-warming.ts';
import { STEP_MS, stepGrid, stepMiddles } from './step-grid.ts';
import { wettestPlace } from './wettest-place.ts';

export interface ConditionInput {
  bin: Bin;
  season: Season;
  /** of this bin */
  series: readonly SensorSeries[];
  /** of its fans that have a log */
  spans: FanSpans | null;
  /** every fan of the bin has a log */
  fansTold: boolean;
  moisture: BinMoisture;
  temperature: BinTemperature;
  weather: AirRows;
}

/** Grain at these temperatures lets insects develop at all, and best. fields-1992 */
export const INSECTS_C = { develop: [13, 35], best: [25, 33] } as const;

/** How a bin's grain kept: its storage time, warming of its own, warmth beside the weather, insects, a wet roof. */
export function binCondition(input: ConditionInput): BinCondition {
  try {
    return worked(input);
  } catch (error) {
    // What breaks here takes neither the bin's moisture nor its money along.
    return missingCondition(`It could not be worked out: ${errorText(error)}`);
  }
}

function worked(input: ConditionInput): BinCondition {
  const { bin, season, series, moisture, weather } = input;
  const zone = zoneOf(season.site.timeZone);
  const fill = fillTimes(bin);
  const span = storageSpan(bin, series, fill);
  if (span === null) return missingCondition('No temperature of the grain could be believed.');
  const spans = input.spans ?? (bin.fanIds.length === 0 ? restThroughout(span) : null);
  const grid = stepGrid(span.fromMs, span.toMs);
  const atMs = stepMiddles(grid);
  const outdoors = outdoorDays(weather.temperatures, zone);
  const blownH = blownHours(input.fansTold ? spans : null, grid);
  const tracks = placeTracks(bin, series, spans, grid, {
    outdoorC: outdoorSteps(outdoors, atMs, zone),
    blownH,
    heated: statedHeaters(season, bin).length > 0,
  });
  const errors = season.sensors;
  const placeSdK =
    Math.hypot(errors.temperature.accuracyK ?? ASSUMED_ACCURACY_K, errors.temperature.biasK ?? ASSUMED_BIAS_K) / Z95;
  const meanSdK = meanSdOf(input);
  const moistures = placeMoistures({
    tracks,
    moisture,
    goal: bin.goal,
    fill,
    spans,
    atMs,
    errors: errors.moisture,
  });
  const age = grainAge({
    bin,
    grid,
    tracks,
    moistures,
    placeSdK,
    meanSdK,
    depthM: fill.depthM,
    zone,
    weather: outdoors.size > 0,
  });
  const days = placeDays(tracks, grid, zone, blownH);
  const shares = sharesOf(bin, fill, tracks);
  const grain = grainDays(days, shares, outdoors);
  const gap = outdoorGap(grain, meanSdK);
  const drawnMs = bin.grain.depthSteps.map((step) => step.fromMs);
  const warming = selfWarming(
    tracks.map((track) => ({ ...track, ...edgesOf(bin, track) })),
    days,
    fanHoursByDay(input.fansTold ? spans : null, days.dayMs, fill.fullMs, drawnMs, zone),
    outdoors,
    errors.temperature.accuracyK ?? ASSUMED_ACCURACY_K,
  );
  const part = { age, warming, outdoors: gap, wettest: wettestPlace(bin, moisture, errors.moisture) };
  return {
    span,
    ...part,
    insects: {
      develop: daysOfGrain(days, shares, INSECTS_C.develop, meanSdK),
      best: daysOfGrain(days, shares, INSECTS_C.best, meanSdK),
    },
    roofHours: roofOf(input, span),
    ...coldestWeek(grain, meanSdK),
    grainDays: grain,
    alerts: conditionAlerts({ ...part, meanWb: moisture.end.value }),
    why: null,
  };
}

/** From the first grain, or the first reading where no date is stated, until it was out, else the last reading. */
function storageSpan(bin: Bin, series: readonly SensorSeries[], fill: FillTimes) {
  let first = Number.POSITIVE_INFINITY;
  let last = Number.NEGATIVE_INFINITY;
  for (const { timeMs, tempC, tempFlags } of series) {
    for (let i = 0; i < timeMs.length; i++) {
      if (tempFlags[i] !== 0 || Number.isNaN(tempC[i])) continue;
      first = Math.min(first, timeMs[i]);
      last = Math.max(last, timeMs[i]);
    }
  }
  const fromMs = fill.begunMs ?? first;
  if (!Number.isFinite(first)) return null;
  const toMs = bin.grain.unloadedMs ?? last + STEP_MS;
  return toMs > fromMs ? { fromMs, toMs } : null;
}

function sharesOf(bin: Bin, { depthM }: FillTimes, tracks: readonly PlaceTrack[]): number[] {
  if (depthM === null) return tracks.map(() => 1 / tracks.length);
  const has = (cable: string, sensor: number) => tracks.find((one) => one.cable === cable && one.sensor === sensor);
  const placed = sensorShares(bin.diameterM, depthM, bin.cables, (cable, sensor) => has(cable, sensor) !== undefined);
  return tracks.map(
    (track) => placed.find((one) => one.cable === track.cable && one.sensor === track.sensor)?.share ?? 0,
  );
}

/** Standard error of the bin's mean temperature, K: that of its start and end, a kelvin where neither has one. */
function meanSdOf({ temperature }: ConditionInput): number {
  const halves = [temperature.start, temperature.end].flatMap(({ interval }) =>
    interval == null ? [] : [(interval[1] - interval[0]) / 2],
  );
  return halves.length === 0 ? 1 : halves.reduce((sum, one) => sum + one, 0) / halves.length / Z90;
}

function roofOf({ bin, season, series, spans, fansTold, weather }: ConditionInput, span: Span) {
  if (bin.fanIds.length === 0) return withheld('This bin has no fan.');
  const stationPa = farmPressurePa(season, weather.rows.pressure_pa);
  const { main } = isothermsInUse({
    ...bin.grain,
    isotherm: season.sensors.moisture.isotherm ?? bin.grain.isotherm,
  });
  return roofHours({
    spans: fansTold ? spans : null,
    ...span,
    air: bin.air,
    outdoor: weather.temperatures,
    stationPa,
    leaving: leavingAir(bin, series.map(hourlyReadings), main, [], stationPa, () => 1),
  });
}

/** Of a bin that could not be worked out. */
export function missingCondition(why: string): BinCondition {
  const none = withheld(why);
  return {
    span: null,
    age: missingAge(why),
    warming: { found: [], judged: 0, of: 0, days: 0, why },
    outdoors: { days: none, mostK: none, mostMs: null },
    insects: { develop: none, best: none },
    roofHours: none,
    coldest: none,
    coldestMs: null,
    warmedSinceK: none,
    grainDays: [],
    wettest: null,
    alerts: [],
    why,
  };
}
