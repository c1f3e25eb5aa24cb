import type { Estimate } from '../base/estimate.ts';
import type { Bin } from '../season/season.ts';
import type { Comparison } from './compare/comparison.ts';
import type { BillShare } from './energy/bill-types.ts';
import type { DemandWays } from './energy/demand-ways-types.ts';
import type { CampaignSpeed } from './fronts/campaign-speed.ts';
import type { MoistureFronts } from './fronts/moisture-front-types.ts';
import type { BinLayers } from './moisture/layer-types.ts';
import type { MoistureStages } from './moisture/stage-types.ts';
import type { TicketsHeld } from './moisture/ticket-agreement-types.ts';
import type { BinProbes } from './probes/probe-types.ts';
import type { MoistureRates } from './rates/moisture-rates-types.ts';
import type { UnitEnergy } from './unit-costs/unit-energy-types.ts';
import type { UsefulHours } from './useful/useful-hours-types.ts';

/** A stretch of time, ms UTC, [from, to). */
export interface Span {
  fromMs: number;
  toMs: number;
}

export const FAN_OFF = 0;
export const FAN_ON = 1;
export const FAN_UNKNOWN = 2;

/** A fan through time: spans that follow each other without hole or overlap. Each array is [spans]. */
export interface FanSpans {
  startMs: Float64Array;
  endMs: Float64Array;
  /** FAN_OFF, FAN_ON or FAN_UNKNOWN */
  state: Uint8Array;
  /** mean electric power, W; 0 when off, NaN when unknown */
  powerW: Float64Array;
  /** the earliest and the latest moment at which each span may have begun, ms UTC; left out where that is startMs */
  startFromMs?: Float64Array;
  startToMs?: Float64Array;
  /** [samples], ms UTC, rising: when the log that told the runs was sampled; left out where none was */
  sampledMs?: Float64Array;
}

export type EnergySource = 'meter' | 'power' | 'current' | 'nameplate';
export type RunSource = 'current' | 'power' | 'meter' | 'state' | 'run_hours';

/** One fan's season. */
export interface FanSeason {
  fanId: string;
  /** null: no log of this fan */
  runsFrom: RunSource | null;
  energyFrom: EnergySource | null;
  spans: FanSpans;
  onHours: number;
  unknownHours: number;
  starts: number;
  energyKwh: number;
  /** relative standard error of energy and power, by the way they were measured */
  energyRelSd: number;
  /** how on was told from off, how the power was had, in words for the page */
  how: string;
  /** what was found wrong with the log and its meters, whole sentences */
  notes?: readonly string[];
  /** stretches whose running hours are known from a meter, but not when in them they were: spread evenly */
  spread?: readonly Span[];
  /** standard error of onHours, h */
  onHoursSd?: number;
}

/** Fan hours of a bin while it held no grain; they are in the bin's hours and cost. */
export interface OutsideStorage {
  hoursBefore: number;
  hoursAfter: number;
  energyKwh: number;
  /** the energy's cost alone; null where it has no price */
  energyCost: number | null;
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
  /** energy + demand + connected + heat */
  cost: Estimate;
  kwhPerBushel: Estimate;
  costPerBushel: Estimate;
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

/** One tariff's month; money in the season's currency. */
export interface TariffMonth {
  tariffId: string;
  /** local calendar month, `2024-10` */
  month: string;
  energyKwh: number;
  energyCost: number;
  /** per demand rule: measured peak, billed peak (after ratchet), when the peak began, cost */
  demand: readonly {
    peakKw: number;
    billedKw: number;
    atMs: number | null;
    cost: number;
    /** the same with their intervals */
    told?: { peak: Estimate; billed: Estimate; cost: Estimate };
  }[];
  fixed: number;
  connected: number;
  /** what the minimum adds, 0 where the charges exceed it */
  minimumTopUp: number;
  total: number;
  /** the same with their intervals; money for all demand rules together */
  told?: { energyKwh: Estimate; energyCost: Estimate; demandCost: Estimate; total: Estimate };
}

/** How full the bin was and what lay in it. */
export interface BinGrainAmount {
  dryMatterKg: number | null;
  /** weight as filled, wet, kg */
  weightKg: number | null;
  volumeM3: number | null;
  /** weight as filled over the crop's legal bushel weight */
  bushels: number | null;
  /** volume over 1.2445 ft3 */
  volumeBushels: number | null;
  depthM: number | null;
  /** what the weight comes from: scale tickets that cover the filling, or depth and test weight; null where it is not known */
  from?: 'tickets' | 'volume' | null;
  /** 90 %; null where the number is */
  weightKgInterval?: [number, number] | null;
  bushelsInterval?: [number, number] | null;
  dryMatterKgInterval?: [number, number] | null;
  /** what a reader must know of it, whole sentences */
  notes?: readonly string[];
  why: string | null;
}

/** One sensor's part in a start or end mean. */
export interface SensorShare {
  cable: string;
  sensor: number;
  heightM: number;
  /** share of the bin's dry matter, of those used; sums to 1 */
  share: number;
  startWb: number | null;
  endWb: number | null;
  startC: number | null;
  endC: number | null;
}

/** A mean over a window of readings. */
export interface MomentMean {
  /** wet basis, fraction (moisture) or C (temperature) */
  value: number | null;
  window: Span | null;
  /** true: all readings after the fan stood still two hours or more */
  stillAir: boolean;
  readings: number;
  sensors: number;
  /** the same from readings with the fan running, to show beside it; null where there are none */
  fanOn: number | null;
  /**
   * 90 % interval of the value, with the sensors' own errors, which do not cancel in a single moment; of a temperature
   * lopsided where the grain beyond the outermost sensors may have followed the weather; null where it cannot be told
   */
  interval?: [number, number] | null;
  /** moisture only: what the value was read from; null where there is none */
  from?: 'sensors' | 'tickets' | 'stated' | null;
}

export interface BinMoisture {
  /** wet basis, fractions */
  start: MomentMean;
  end: MomentMean;
  /** points, wet basis; positive when removed */
  pointsRemoved: Estimate;
  /** points per 100 fan hours */
  perHundredFanHours: Estimate;
  shares: readonly SensorShare[];
  /** standard errors in points that make up the interval, by cause, and the degrees of freedom */
  errorParts: readonly { cause: string; sd: number }[];
  /** the same for the moisture at the end alone, points */
  endParts?: readonly { cause: string; sd: number }[];
  degreesOfFreedom: number | null;
  /** bottom, middle and top third, and what an unload brings */
  layers?: BinLayers;
  /** sensors against scale tickets */
  tickets?: TicketsHeld;
  /** by the times between which grain came or went; null where the depth did not change */
  stages?: MoistureStages | null;
  /** each cable's own points removed */
  cables: readonly { cable: string; points: number; weight: number }[];
  overdryingLossBushels: Estimate;
  overdryingLoss: Estimate;
  /** weighted mean moisture by day, for the figure; low and high: 10 and 90 % of the grain, by sensor; fractions */
  daily: readonly {
    dayMs: number;
    mean: number | null;
    low: number | null;
    high: number | null;
    stillAir: boolean;
    fanHours: number;
  }[];
  notes: readonly string[];
  why: string | null;
}

export interface BinTemperature {
  start: MomentMean;
  end: MomentMean;
  why: string | null;
}

export interface UnitCosts {
  costPerPoint: Estimate;
  perBushelPoint: Estimate;
  costPerPointAdded: Estimate;
  perBushelPointAdded: Estimate;
  /** one sentence for the block */
  why: string | null;
  whyAdded: string | null;
}

export type FrontKind = 'cooling' | 'warming';

export interface FrontArrival {
  cable: string;
  sensor: number;
  heightM: number;
  arrivedMs: number | null;
  /** fan hours since the campaign began */
  fanHours: number | null;
  aheadC: number | null;
  behindC: number | null;
  why: string | null;
  /** true: the sensor could not see a front at all (above the surface, no good readings), so it is counted nowhere */
  unseen?: boolean;
}

export interface Campaign {
  /** counted from 1 */
  number: number;
  kind: FrontKind;
  span: Span;
  fanHours: number;
  /** mean over the campaign's fan hours of the entering air; grain mean when it began */
  airC: number;
  grainC: number;
  airFrom: 'plenum' | 'weather';
  arrivals: readonly FrontArrival[];
  /** how fast the front went through the grain */
  speed?: CampaignSpeed;
}

export interface BinFronts {
  campaigns: readonly Campaign[];
  why: string | null;
  /** the front of drying or conditioning by the moisture sensors; left out where no fan has a log */
  moisture?: MoistureFronts;
}

export type AirflowWay = 'model' | 'front' | 'pressure';

/** A bin's airflow, m3/s of the entering air, at full depth with the fans that ran most, by independent ways. */
export interface BinAirflow {
  byPressure: Estimate;
  byFront: Estimate;
  byModel: Estimate;
  /** a cross-check by the stated fan curves: at the logged pressure, else where curves and bed balance */
  byFanCurve: Estimate;
  fanCurveFrom: 'logged pressure' | 'operating point' | null;
  /** which way `flowM3S` is: the model's, else the fronts', else the pressure's */
  from: AirflowWay | null;
  flowM3S: Estimate;
  /** cfm per bushel of 1.2445 ft3 */
  cfmPerBushel: Estimate;
  /** nameplate, as stated, per 1000 bushels of volume */
  hpPerThousandBushels: number | null;
  /** do the intervals by fronts and by pressure overlap; null where one is missing */
  agree: boolean | null;
  /** the fans it is told for, `F1+F2` */
  fanSet: string;
  /** what the airflow by pressure stands on; null where there is none */
  pressure: {
    /** median of the readings with these fans on at this depth, Pa */
    pressurePa: number;
    readings: number;
    depthM: number;
    factor: number;
    /** what packing leaves open, 90 % */
    factorRange: readonly [low: number, high: number];
    /** sets of published constants that reach this airflow */
    sets: readonly ('standard' | 'low airflow')[];
  } | null;
  /** every depth and set of fans with static pressures */
  stages: readonly { depthM: number; fanSet: string; readings: number; pressurePa: number; flowM3S: Estimate }[];
  front: {
    /** stretches of running, and their fan hours, in which sensors were timed against each other */
    windows: number;
    fanHours: number;
    /** each cable's share of the floor, its airflow over the bin's mean, and the speed of a change of temperature, m per fan hour */
    cables: readonly {
      cable: string;
      share: number;
      relative: number;
      relativeInterval: readonly [number, number];
      speedMH: number;
      pairs: number;
    }[];
    /** relative standard errors by cause */
    parts: readonly { cause: string; relSd: number }[];
    isotherms: readonly string[];
  };
  /** what a disagreement most likely means, whole sentences; empty where they agree */
  likely: readonly string[];
  notes: readonly string[];
  why: string | null;
}

/** Water that left a bin's grain, kg; below 0 where it took some up. */
export interface BinWater {
  bySensors: Estimate;
  byAir: Estimate;
  byTickets: Estimate;
  /** by air between the moments between which the sensors tell the change: what is held against `bySensors` */
  byAirBetween: Estimate;
  /** do all intervals that can be held against each other overlap; null where fewer than two are known */
  agree: boolean | null;
  /** what a disagreement most likely means, whole sentences; empty where they agree */
  likely: readonly string[];
  /** what the account of the air stands on; null where there is none */
  air: {
    fanHours: number;
    /** of them, those for which both the entering and the leaving air are known */
    coveredHours: number;
    /** share of the covered hours in which the plenum told the entering air */
    plenumShare: number;
    /** the two ways by which the gain of the air was had, and the weight of the one by heat */
    byHumidity: Estimate;
    byHeat: Estimate;
    heatShare: number;
    /** mean humidity ratios, kg/kg, weighted by airflow; null where the cables tell no humidity */
    enteringRatio: number | null;
    leavingRatio: number | null;
    /** standard errors by cause, kg */
    parts: readonly { cause: string; sdKg: number }[];
  } | null;
  notes: readonly string[];
  why: string | null;
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
  /** what broke that is no one bin's, each a line; none or left out when all is whole */
  failures?: readonly string[];
}
