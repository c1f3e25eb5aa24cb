import { humidityRatioOfVapour } from '../../../src/air/humidity-ratio.ts';
import type { Hours } from '../../../src/simulation/run/hours.ts';
import { inventWeather, type Weather, weatherAt } from '../../sample/weather.ts';
import type { DrawnBin } from './draw-bin.ts';

const HOUR_MS = 3_600_000;
const LOCAL_MS = -6 * HOUR_MS;

/** The generator's weather, and the same as hours of the kit: means of each hour's two halves. */
export function binHours({ seed, startMs, days, tariff }: DrawnBin): { weather: Weather; hours: Hours } {
  const count = 24 * days;
  const weather = inventWeather(seed, startMs - 24 * HOUR_MS, startMs + (count + 24) * HOUR_MS);
  const middle = (hour: number) => weatherAt(weather, startMs + (hour + 0.5) * HOUR_MS);
  const air = Array.from({ length: count }, (_, hour) => middle(hour));
  const pressurePa = air.reduce((sum, one) => sum + one.pressurePa, 0) / count;
  const local = (hour: number) => new Date(startMs + hour * HOUR_MS + LOCAL_MS);
  const firstDay = Math.floor((startMs + LOCAL_MS) / (24 * HOUR_MS));
  const localHour = Uint8Array.from({ length: count }, (_, hour) => local(hour).getUTCHours());
  const byDay = localHour.map((hour) => (hour >= 6 && hour < 22 ? 1 : 0));
  return {
    weather,
    hours: {
      startMs,
      tempC: Float64Array.from(air, (one) => one.tempC),
      rh: Float64Array.from(air, (one) => one.rh),
      humidityRatio: Float64Array.from(air, (one) => humidityRatioOfVapour(one.vapourPa, pressurePa)),
      pressurePa,
      localHour,
      localMonth: Uint8Array.from({ length: count }, (_, hour) => local(hour).getUTCMonth() + 1),
      localDay: Uint16Array.from(
        { length: count },
        (_, hour) => Math.floor((startMs + hour * HOUR_MS + LOCAL_MS) / (24 * HOUR_MS)) - firstDay,
      ),
      pricePerKwh: Float64Array.from(byDay, (day) => (day === 1 ? tariff.day : tariff.night)),
      demand: tariff.demand > 0 ? [{ pricePerKw: tariff.demand, ratchet: 0, holds: byDay }] : [],
    },
  };
}
