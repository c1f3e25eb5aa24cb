import type { Fan } from '../../bin/fan.ts';
import type { LoadedSeason } from '../../season/loaded.ts';
import { type AirRows, plenumRows } from '../air-rows.ts';
import type { FanSeason } from '../types.ts';
import { runningPowerW } from './fan-cost.ts';
import { heaterHours } from './heater-hours.ts';
import { heaterInPowerW } from './heater-use.ts';

/** The fan's season with what the plenum of a bin tells of its heater: of one that no other fan blows into. */
export function withHeaterHours(loaded: LoadedSeason, fan: Fan, own: FanSeason, weather: AirRows): FanSeason {
  if (fan.heater === null || heaterInPowerW(fan, own, runningPowerW(fan, own)) > 0) return own;
  for (const bin of loaded.season.bins) {
    if (bin.air !== 'up' || bin.fanIds.length !== 1 || bin.fanIds[0] !== fan.id) continue;
    const { temperatures } = plenumRows(loaded.tables, bin.id);
    const heater = heaterHours(fan, own, temperatures, weather.temperatures);
    if (heater !== null) return { ...own, heater };
  }
  return own;
}
