import type { Estimate } from '../../base/estimate.ts';

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
    /** share of the hours in which the plenum told the humidity of the entering air */
    plenumShare: number;
    /** the same of its temperature alone */
    warmthShare: number;
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
