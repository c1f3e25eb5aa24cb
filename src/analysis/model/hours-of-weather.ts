import { relativeHumidityOfRatio } from '../../air/humidity-ratio.ts';
import { standardPressurePa } from '../../air/pressure.ts';
import { zoneOf } from '../../base/zone.ts';
import type { Tariff } from '../../money/tariff.ts';
import type { Season } from '../../season/season.ts';
import type { Hours } from '../../simulation/run/hours.ts';
import type { AirRows } from '../air-rows.ts';
import { betweenReadings } from '../fronts/between-readings.ts';
import { HOUR_MS } from '../fronts/front-limits.ts';
import { moistAirLog } from '../useful/moist-air-log.ts';
import { hoursOfTariff } from './hours-of-tariff.ts';

/** Holes up to this long, h, are bridged by a straight line. */
const BRIDGED_H = 6;
const DAY_H = 24;

/** Outdoor air of a season hour by hour, and what of it is made up. */
export interface WeatherHours {
  hours: Hours;
  /** hours of holes longer than six hours, in which the air of the same hour of the nearest days stands */
  madeUpHours: number;
  /** hours altogether */
  count: number;
}

/**
 * Outdoor air without a gap from the season's weather, with local clock and prices.
 *
 * @param startMs  UTC, on the full hour
 * @param count    hours, 1 or more
 * @returns        null where no weather was logged within these hours
 */
export function hoursOfWeather(
  season: Season,
  tariff: Tariff | null,
  weather: AirRows,
  startMs: number,
  count: number,
): WeatherHours | null {
  const pressurePa = pressureOf(season, weather);
  const log = moistAirLog(weather.rows, pressurePa);
  const midMs = Float64Array.from({ length: count }, (_, hour) => startMs + (hour + 0.5) * HOUR_MS);
  const { temperatures, humidities } = log;
  const tempC = betweenReadings(temperatures.timeMs, temperatures.tempC, midMs, BRIDGED_H * HOUR_MS);
  const humidityRatio = betweenReadings(humidities.timeMs, humidities.ratio, midMs, BRIDGED_H * HOUR_MS);
  const madeUp = new Set([...fillHoles(tempC), ...fillHoles(humidityRatio)]);
  if (Number.isNaN(tempC[0] + humidityRatio[0])) return null;
  const rh = tempC.map((t, i) => Math.min(1, relativeHumidityOfRatio(t, humidityRatio[i], pressurePa)));
  const zone = zoneOf(season.site.timeZone);
  const hours: Hours = {
    startMs,
    tempC,
    rh,
    humidityRatio,
    pressurePa,
    ...hoursOfTariff(tariff, zone, startMs, count),
  };
  return { hours, madeUpHours: madeUp.size, count };
}

/** The station's mean pressure where it was logged, else the standard one of the site's height. */
function pressureOf(season: Season, { rows }: AirRows): number {
  const logged = (rows.pressure_pa ?? new Float64Array()).filter((pa) => pa > 60_000 && pa < 108_000);
  if (logged.length === 0) return standardPressurePa(season.site.elevationM ?? 0);
  return logged.reduce((sum, pa) => sum + pa, 0) / logged.length;
}

/** Fill NaN by the same hour of the nearest day that has one. @returns the hours filled */
function fillHoles(values: Float64Array): number[] {
  const told = values.slice();
  const filled: number[] = [];
  for (let hour = 0; hour < told.length; hour++) {
    if (!Number.isNaN(told[hour])) continue;
    filled.push(hour);
    values[hour] = nearestDay(told, hour);
  }
  return filled;
}

function nearestDay(told: Float64Array, hour: number): number {
  for (let away = DAY_H; away <= told.length + DAY_H; away += DAY_H) {
    for (const at of [hour - away, hour + away]) if (!Number.isNaN(told[at] ?? Number.NaN)) return told[at];
  }
  return told.find((value) => !Number.isNaN(value)) ?? Number.NaN;
}
