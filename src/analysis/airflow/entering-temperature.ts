import { standardPressurePa } from '../../air/pressure.ts';
import { median } from '../../base/stats/quantile.ts';
import type { Bin, Season } from '../../season/season.ts';
import type { AirLog } from '../fronts/air-log.ts';
import { statedWarming } from '../fronts/fan-warming.ts';
import { placeIn, valueAt } from '../water/humidity-log.ts';

/** Temperature of the air that enters: the plenum's, else outdoors and the usual warming by the fan; degC, NaN where not known. */
export function enteringTemperature(bin: Bin, plenum: AirLog, weather: AirLog): (ms: number) => number {
  const warmingK = bin.air === 'up' ? statedWarming(bin.goal).usualK : 0;
  return (ms) => {
    const under = bin.air === 'up' ? placeIn(plenum.timeMs, ms) : null;
    if (under !== null) return valueAt(plenum.tempC, under);
    const outside = placeIn(weather.timeMs, ms);
    if (outside === null) return Number.NaN;
    return valueAt(weather.tempC, outside) + warmingK;
  };
}

/** Air pressure at the farm, Pa: the station's median, else that of its elevation, else of sea level. */
export function farmPressurePa(season: Season, stationPa: ArrayLike<number>): number {
  const logged = median(stationPa);
  if (logged >= 55_000 && logged <= 110_000) return logged;
  return standardPressurePa(season.site.elevationM ?? 0);
}
