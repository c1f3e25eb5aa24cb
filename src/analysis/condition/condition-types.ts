import type { Estimate } from '../../base/estimate.ts';
import type { Span } from '../types.ts';

/** A sensor of a bin, and where it hangs. */
export interface SensorPlace {
  cable: string;
  /** counted from 1, from the floor up */
  sensor: number;
  heightM: number;
}

/** How far one place of the grain has aged. */
export interface PlaceAge extends SensorPlace {
  /** of the dry matter of those told; sums to 1 */
  share: number;
  /** of the allowable storage time, fraction */
  lifeUsed: Estimate;
  /** of the dry matter, fraction */
  loss: Estimate;
}

/** How far a bin's grain has aged by its crop's storage rule. */
export interface GrainAge {
  /** name, what has happened when the time is over, how far it is data */
  rule: { name: string; criterion: string; honesty: string; sourceKeys: readonly string[] } | null;
  /** of the allowable storage time, fraction: the mean of the grain, and the place that used most of it */
  lifeUsed: Estimate;
  worstLifeUsed: Estimate;
  /** of the dry matter, fraction; missing where the rule counts germination */
  loss: Estimate;
  worstLoss: Estimate;
  worst: SensorPlace | null;
  places: readonly PlaceAge[];
  /** by local day: used so far, fractions, in the mean of the grain and at the place that ends worst */
  days: readonly { dayMs: number; mean: number; worst: number }[];
  notes: readonly string[];
}

/** Warming with the fan at rest that neither air nor warmer grain beside it explains. */
export interface SelfWarming extends SensorPlace {
  span: Span;
  /** from the span's first day to its last, K */
  riseK: number;
  /** above all that lay near it at the span's beginning and what came in from outside, K */
  aboveK: number;
}

export interface WarmingWatch {
  /** the plainest of each place, by time */
  found: readonly SelfWarming[];
  /** places that could be judged for at least one stretch, of all in the grain */
  judged: number;
  of: number;
  /** days of rest in which one could have been seen, at the place seen longest */
  days: number;
  why: string | null;
}

/** The bin's mean grain against the mean outdoor air of the 30 days before. */
export interface OutdoorGap {
  /** days on which the grain was so much warmer that moisture begins to move */
  days: Estimate;
  /** the most, K, and when */
  mostK: Estimate;
  mostMs: number | null;
}

/** Mean of the grain by local day, and what it is held against, C. */
export interface GrainDay {
  dayMs: number;
  meanC: number | null;
  /** how cold and how warm the mean may have been on days carried between readings taken far apart; else the mean */
  meanLowC: number | null;
  meanHighC: number | null;
  warmestC: number | null;
  coldestC: number | null;
  /** mean of the outdoor air of the 30 days before */
  outdoorC: number | null;
}

/** The sensor whose grain ended wettest. */
export interface WettestPlace extends SensorPlace {
  /** fraction, wet basis, less what the wettest of many reads high by chance; the interval holds the sensor's own error and the one that all share, not the isotherm */
  endWb: Estimate;
  /** the moisture published for storing the crop up to six months (where none was read, longer), where the sensor ended above it by more than its errors and the grain is still in the bin; fraction */
  aboveWb: number | null;
}

/** What a reader should act on. */
export type ConditionAlert =
  | { kind: 'time used up' | 'time may be used up'; place: SensorPlace; lifeUsed: Estimate }
  /** the place that ended farthest above what lay near it, and how many others of the bin warmed too */
  | { kind: 'warmed by itself'; place: SensorPlace; found: SelfWarming; others: number }
  | { kind: 'warmer than outdoors'; days: Estimate }
  /** the wettest place ended above what is published for storing the crop, while the mean was so much */
  | { kind: 'ended wet'; place: WettestPlace; limitWb: number; meanWb: number | null };

export interface BinCondition {
  span: Span | null;
  age: GrainAge;
  warming: WarmingWatch;
  outdoors: OutdoorGap;
  /** days of the grain (its mean over all places) warm enough for insects to develop, and at their best */
  insects: { develop: Estimate; best: Estimate };
  /** fan hours in which the air that left the grain could wet the roof */
  roofHours: Estimate;
  /** coldest week of the mean grain, and how far it has warmed since; C and K */
  coldest: Estimate;
  coldestMs: number | null;
  warmedSinceK: Estimate;
  grainDays: readonly GrainDay[];
  /** null where no sensor tells the moisture at the end */
  wettest: WettestPlace | null;
  alerts: readonly ConditionAlert[];
  why: string | null;
}
