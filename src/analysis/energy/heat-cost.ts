import type { Fan } from '../../bin/fan.ts';
import { energyCost } from '../../money/energy-cost.ts';
import { nominalPower } from '../fan/nominal-power.ts';
import type { FanSeason } from '../types.ts';
import { heaterSpans } from './fan-cost.ts';
import type { Part } from './parts.ts';
import type { TariffBill } from './tariff-bill.ts';

// Whether a heater ran with the fan, and at full output, no fan log tells.
const HEATER_REL_SD = 0.1;

/** What the heater of a fan cost, and the assumption behind it; `part` null where no price is known. */
export interface HeatCost {
  part: Part | null;
  note: string | null;
}

/**
 * Heat burned or drawn while the fan ran: hours x output / efficiency x price. The heater is taken to run whenever its
 * fan does. An electric heater without a price of its own is priced by the tariff's energy rules (it adds nothing to the
 * demand shown), unless the fan's own power shows that its meter or current includes it: then it is in the energy already.
 */
export function heatCost(fan: Fan, season: FanSeason, bill: TariffBill | undefined, runningW: number): HeatCost {
  const heater = fan.heater;
  if (heater === null) return { part: { value: 0, sd: 0, more: 0 }, note: null };
  const inputW = heater.outputW / heater.efficiency;
  const assumed = `The heater of fan ${fan.id} is taken to run whenever the fan does`;
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
      const { cost } = energyCost(heaterSpans(season, inputW), bill.rates);
      return {
        part: withUnknown(cost, season),
        note: `${assumed}, beside the fan's meter, at the tariff's energy price${bill.tariff.demand.length > 0 ? '; what it adds to the demand charge is not counted' : ''}.`,
      };
    }
  }
  if (heater.pricePerJ === null) return { part: null, note: `the fuel of fan ${fan.id}'s heater has no price` };
  return { part: withUnknown(season.onHours * 3600 * inputW * heater.pricePerJ, season), note: `${assumed}.` };
}

function withUnknown(value: number, season: FanSeason): Part {
  const more = season.onHours > 0 ? (value * season.unknownHours) / season.onHours : 0;
  return { value, sd: HEATER_REL_SD * value, more };
}

/** What of a fan's own power is its electric heater's, W: all of it where that power shows that meter or current include it, else 0. @param runningW  mean power while running */
export function heaterInPowerW(fan: Fan, { energyFrom }: FanSeason, runningW: number): number {
  const { heater } = fan;
  if (heater === null || heater.fuel !== 'electric' || energyFrom === 'nameplate') return 0;
  const inputW = heater.outputW / heater.efficiency;
  return runningW > nominalPower(fan).powerW + inputW / 2 ? inputW : 0;
}
