import type { Bin } from '../season/season.ts';
import type { BinAirflow } from './airflow/airflow-types.ts';
import type { Comparison } from './compare/comparison.ts';
import type { BinCondition } from './condition/condition-types.ts';
import type { BillShare } from './energy/bill-types.ts';
import type { BinFan } from './energy/bin-fan-types.ts';
import type { DemandWays } from './energy/demand-ways-types.ts';
import type { TariffMonth } from './energy/tariff-month-types.ts';
import type { FanSeason } from './fan/fan-types.ts';
import type { BinFronts } from './fronts/front-types.ts';
import type { BinGrainAmount } from './grain/grain-types.ts';
import type { BinMoisture, BinTemperature } from './moisture/moisture-types.ts';
import type { BinProbes } from './probes/probe-types.ts';
import type { MoistureRates } from './rates/moisture-rates-types.ts';
import type { GrainSurface } from './surface/surface-types.ts';
import type { UnitCosts } from './unit-costs/unit-costs-types.ts';
import type { UnitEnergy } from './unit-costs/unit-energy-types.ts';
import type { UsefulHours } from './useful/useful-hours-types.ts';
import type { BinWater } from './water/water-types.ts';
import type { Crossed } from './what-if/crossed-types.ts';
import type { BinWhatIf } from './what-if/what-if-types.ts';

export type * from './airflow/airflow-types.ts';
export type * from './energy/bin-fan-types.ts';
export type * from './energy/tariff-month-types.ts';
export * from './fan/fan-types.ts';
export type * from './fronts/front-types.ts';
export type * from './grain/grain-types.ts';
export type * from './moisture/moisture-types.ts';
export type * from './unit-costs/unit-costs-types.ts';
export type * from './water/water-types.ts';

/** A stretch of time, ms UTC, [from, to). */
export interface Span {
  fromMs: number;
  toMs: number;
}

/** Everything the kit says of one bin. */
export interface BinReview {
  bin: Bin;
  /** what broke while this bin was worked out; null when nothing did */
  failure: string | null;
  grain: BinGrainAmount;
  fan: BinFan;
  moisture: BinMoisture;
  temperature: BinTemperature;
  unitCosts: UnitCosts;
  fronts: BinFronts;
  airflow: BinAirflow;
  water: BinWater;
  /** what each fan hour could do to the grain; null or left out where no fan of the bin has a log */
  useful?: UsefulHours | null;
  /** hand samples held against the cables; left out where that was not worked out */
  probes?: BinProbes;
  /** kWh for what drying did; left out where the bin broke */
  unitEnergy?: UnitEnergy;
  /** points per fan hour by period; null or left out where no fan of the bin has a log */
  rates?: MoistureRates | null;
  /** how the grain kept; left out where the bin broke */
  condition?: BinCondition;
  /** how deep it lay by its temperatures at rest; left out where the bin broke */
  surface?: GrainSurface;
}

/** Everything the kit says of one season. */
export interface SeasonReview {
  bins: readonly BinReview[];
  fans: readonly FanSeason[];
  tariffMonths: readonly TariffMonth[];
  /** the utility's bills beside what the fans explain of them; left out where that broke */
  bills?: readonly BillShare[];
  /** demand charges as run and as they might have been; left out where that broke */
  demandWays?: readonly DemandWays[];
  /** the bins beside each other; left out where that broke */
  compared?: Comparison;
  /** each bin's fitted bed and what other ways to run the fan would have come to; left out where that was not asked for */
  whatIf?: readonly BinWhatIf[];
  /** every bin's way to run its fans on every bin's grain; left out with `whatIf`, or where it broke */
  crossed?: Crossed;
  /** what broke that is no one bin's, each a line; none or left out when all is whole */
  failures?: readonly string[];
}
