import type { Estimate } from '../../base/estimate.ts';
import type { TwoWay } from './two-way.ts';

/** A way to run fans that some bin was run by. */
export interface CarriedWay {
  /** of a strategy of the kit, or `hours of B3` */
  id: string;
  title: string;
  /** the bins that were run so */
  binIds: readonly string[];
  /** why it cannot be run elsewhere; null where it can */
  why: string | null;
}

/** One way on one bin's grain, fan and air, in its own season's weather. */
export interface CrossedCell {
  wayId: string;
  /** whether the bin was itself run so */
  own: boolean;
  /** money per legal bushel; the interval spans the doubted runs */
  perBushel: Estimate;
  /** the same per bushel and point removed, where the bin's goal is to dry */
  perBushelPoint: Estimate;
  /** cost over that of the bin's own way, each doubted run against its own */
  overOwn: Estimate;
  /** money per legal bushel in each run, [runs], that as fitted first; null where not known */
  runCosts: readonly number[] | null;
  /** in the run as fitted; null without a run */
  reached: boolean | null;
  /** of the doubted runs, how many reach the target */
  reaching: number;
  runs: number;
}

/** A bin's grain under every bin's way. */
export interface CrossedBin {
  binId: string;
  /** in the order of `Crossed.ways`; empty where the bin's model is not trusted */
  cells: readonly CrossedCell[];
  why: string | null;
}

/** Whether some way could be run on a bin: a trusted model alone has cells that may all be empty. */
export function wasRun({ cells }: Pick<CrossedBin, 'cells'>): boolean {
  return cells.some(({ runs }) => runs > 0);
}

/** Every bin's way to run its fans on every bin's grain. */
export interface Crossed {
  ways: readonly CarriedWay[];
  bins: readonly CrossedBin[];
  /** bins of one goal parted into bin and way, a part for each goal that some bin has */
  parts: readonly CrossedPart[];
}

/** Least and most of each share of a `TwoWay`. */
export type ShareRanges = Record<keyof TwoWay['share'], [number, number]>;

export interface CrossedPart {
  goal: 'dry' | 'cool' | 'condition' | 'hold';
  binIds: readonly string[];
  wayIds: readonly string[];
  /** of the logarithm of money per bushel, [bins x ways]; null where there is too little to part */
  split: TwoWay | null;
  /** least and most of the shares over the doubted runs, the first of each bin beside the first of the others, and so on; null where their costs are not known */
  ranges: ShareRanges | null;
  why: string | null;
}
