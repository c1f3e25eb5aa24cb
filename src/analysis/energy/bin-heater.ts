import { withheld } from '../../base/estimate.ts';
import type { Fan } from '../../bin/fan.ts';
import type { BinHeater, FanSeason } from '../types.ts';
import { heatPart } from './heat-cost.ts';
import { heaterInPowerW, heaterInputW, heaterUse } from './heater-use.ts';
import { ofParts, scaledPart } from './parts.ts';

/** Fuel without a price is told by its heat. */
const BY_HEAT = { unit: 'kWh', unitJ: 3.6e6 } as const;

/**
 * What a fan's heater burned or drew, and in which hours; null where it has none. The interval is that of its cost.
 *
 * @param part      of the fan's energy that the bin carries
 * @param runningW  the fan's mean power while running
 */
export function binHeater(fan: Fan, season: FanSeason, part: number, runningW: number): BinHeater | null {
  const { heater } = fan;
  if (heater === null) return null;
  const { unit, unitJ } = heater.sold ?? BY_HEAT;
  const told = { fanId: fan.id, fuel: heater.fuel, unit };
  const hoursFrom = season.heater === undefined ? 'fan' : 'plenum';
  if (heaterInPowerW(fan, season, runningW) > 0) {
    const within = withheld(`The power of fan ${fan.id} includes its electric heater, which nothing tells apart.`);
    return { ...told, hoursFrom, hours: within, used: within };
  }
  const { hours, untoldHours } = heaterUse(season);
  // Of the fan's starts and stops those in which it burned have their part.
  const sd = season.onHours > 0 ? (season.onHoursSd ?? 0) / season.onHours : 0;
  const burned = hours + untoldHours;
  return {
    ...told,
    hoursFrom,
    hours: ofParts([
      { value: burned, sd: sd * burned, more: season.unknownHours, less: untoldHours, leastSd: sd * hours },
    ]),
    used: ofParts([scaledPart(heatPart(season, (3600 * heaterInputW(heater)) / unitJ), part)]),
  };
}
