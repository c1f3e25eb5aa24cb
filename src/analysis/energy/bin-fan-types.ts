import type { Estimate } from '../../base/estimate.ts';
import type { FuelUnit } from '../../base/fuel-unit.ts';
import type { Heater } from '../../bin/fan.ts';
import type { EnergySource, FanSeason, FanSpans } from '../fan/fan-types.ts';

/** Fan hours of a bin while it held no grain; they are in the bin's hours and cost. */
export interface OutsideStorage {
  hoursBefore: number;
  hoursAfter: number;
  energyKwh: number;
  /** the energy's cost alone; null where it has no price */
  energyCost: number | null;
}

/** What the heater of one of a bin's fans burned or drew. */
export interface BinHeater {
  fanId: string;
  fuel: Heater['fuel'];
  /** its hours are told by the warming of the plenum's air, or taken to be those of its fan */
  hoursFrom: 'plenum' | 'fan';
  hours: Estimate;
  /** the bin's part of it, in `unit`; withheld where the fan's own energy holds it */
  used: Estimate;
  unit: FuelUnit;
}

/** One bin's fan story; costs in the season's currency. */
export interface BinFan {
  fans: readonly FanSeason[];
  /** the bin's fans together: on while any runs; unknown while none is known to run and one is unknown; power summed */
  spans: FanSpans;
  hours: Estimate;
  unknownHours: number | null;
  starts: number | null;
  energyKwh: Estimate;
  /** the least sure way by which more than a tenth of the energy was had */
  energyFrom: EnergySource | null;
  /** which fan's energy comes from what, a whole sentence */
  energyFromHow?: string;
  /** more than 1 % of the hours while the bin held no grain; null or left out: no such */
  outside?: OutsideStorage | null;
  energyCost: Estimate;
  demandCost: Estimate;
  connectedCost: Estimate;
  heatCost: Estimate;
  /** of fans that have one; left out where the fans' hours are not known */
  heaters?: readonly BinHeater[];
  /** energy + demand + connected + heat */
  cost: Estimate;
  kwhPerBushel: Estimate;
  costPerBushel: Estimate;
  /** why the log of one of its fans is left out; left out where none is */
  doubt?: string;
  /** a sentence where any of the above is null or only partly known */
  why: string | null;
  /** by local calendar month, rising: `2024-10` */
  months: readonly {
    month: string;
    hours: number;
    unknownHours: number;
    energyKwh: number;
    energyCost: number | null;
    demandCost: number | null;
    /** the same with their intervals */
    told?: { hours: Estimate; energyKwh: Estimate; energyCost: Estimate; demandCost: Estimate };
  }[];
}
