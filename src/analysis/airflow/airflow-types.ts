import type { Estimate } from '../../base/estimate.ts';

export type AirflowWay = 'model' | 'front' | 'pressure';

/** A bin's airflow, m3/s of the entering air, at full depth with the fans that ran most, by independent ways. */
export interface BinAirflow {
  byPressure: Estimate;
  /** by pressure and power of the fans weighed between published constants; missing where it may well be more than 20 % off */
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
  /** do the intervals by fronts (however wide) and by pressure overlap; null where one is missing */
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
