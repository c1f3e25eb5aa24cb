import type { Fan } from '../../bin/fan.ts';
import { energyCost } from '../../money/energy-cost.ts';
import { FAN_ON, type FanSeason, type FanSpans } from '../types.ts';
import { HEATER_REL_SD, heaterInPowerW, heaterInputW, heaterSpans, heaterUse } from './heater-use.ts';
import type { Part } from './parts.ts';
import type { TariffBill } from './tariff-bill.ts';

/** What the heater of a fan cost, and the assumption behind it; `part` null where no price is known. */
export interface HeatCost {
  part: Part | null;
  note: string | null;
}

/**
 * Heat burned or drawn while the fan ran: hours x output / efficiency x price. Where no log tells when the heater burned it is
 * taken to run whenever its fan does, and the interval reaches down to no heat. An electric heater without a price of its own
 * is priced by the tariff's energy rules (what it adds to the demand is in the demand charge), unless the fan's own power
 * shows that its meter or current includes it: then it is in the energy already.
 */
export function heatCost(fan: Fan, season: FanSeason, bill: TariffBill | undefined, runningW: number): HeatCost {
  const heater = fan.heater;
  if (heater === null) return { part: { value: 0, sd: 0, more: 0 }, note: null };
  const inputW = heaterInputW(heater);
  const assumed = assumedOf(fan.id, season);
  if (heater.fuel === 'electric') {
    if (heaterInPowerW(fan, season, runningW) > 0) {
      return {
        part: { value: 0, sd: 0, more: 0 },
        note: `The power of fan ${fan.id} includes its electric heater, whose cost is in the energy.`,
      };
    }
    if (heater.pricePerJ === null) {
      if (bill === undefined) {
        return { part: null, note: `the electric heater of fan ${fan.id} has neither a price nor a tariff` };
      }
      const costOf = (spans: FanSpans) => energyCost(spans, bill.rates).cost;
      const whole = Float64Array.from(season.spans.state, (state) => (state === FAN_ON ? inputW : 0));
      return {
        part: partOf(
          costOf({ ...season.spans, powerW: whole }),
          costOf(heaterSpans(season, inputW)),
          costOf(heaterSpans(season, inputW, 'least')),
          season,
        ),
        note: `${assumed} It draws beside the fan's meter, at the tariff's energy price${bill.tariff.demand.length > 0 ? '; what it adds to the demand charge is counted there' : ''}.`,
      };
    }
  }
  if (heater.pricePerJ === null) return { part: null, note: `the fuel of fan ${fan.id}'s heater has no price` };
  return { part: heatPart(season, 3600 * inputW * heater.pricePerJ), note: assumed };
}

/** What the heater came to in the hours that it burned, of so much in each: fuel or money. */
export function heatPart(season: FanSeason, perHour: number): Part {
  const { hours, untoldHours } = heaterUse(season);
  return partOf(perHour * season.onHours, perHour * (hours + untoldHours), perHour * hours, season);
}

/** By what the heater's hours are counted. */
function assumedOf(fanId: string, { heater, onHours }: FanSeason): string {
  const said = (of: number) => (of < 10 ? of.toFixed(1) : of.toFixed(0));
  if (heater === undefined)
    return `The heater of fan ${fanId} is taken to run whenever the fan does; nothing tells that, so the lower ends of the intervals reach down to no heat.`;
  const untold =
    heater.untoldHours > 0
      ? `; in ${said(heater.untoldHours)} h that can't be told, which count as burned, and not in the lower ends`
      : '';
  return `By the warming of the plenum's air over the outdoor air the heater of fan ${fanId} burned in ${said(heater.hours)} of the fan's ${said(onHours)} h${untold}.`;
}

/** @param whole  of all hours of the fan  @param value  of those in which the heater may have burned  @param sure  of those in which it did */
function partOf(whole: number, value: number, sure: number, season: FanSeason): Part {
  const more = season.onHours > 0 ? (whole * season.unknownHours) / season.onHours : 0;
  return { value, sd: HEATER_REL_SD * value, more, less: value - sure, leastSd: HEATER_REL_SD * sure };
}
