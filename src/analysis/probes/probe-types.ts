import type { Estimate } from '../../base/estimate.ts';

/** One hand sample. NaN is missing. */
export interface ProbeReading {
  timeMs: number;
  heightM: number;
  fromCentreM: number;
  /** wet basis, fraction */
  moistureWb: number;
  tempC: number;
}

/** What the air did where cables were read: whether the fan ran, as its log tells. */
export type ProbeAir = 'still' | 'moving' | 'unknown';

/** One cable beside a hand sample. */
export interface CableBeside {
  cable: string;
  /** the sensors that tell it, with their parts of the value, which add up to 1 */
  parts: readonly { sensor: number; share: number }[];
  /** cable less probe, points */
  offset: number;
  /** standard error in points by the cable's own readings and places */
  sd: number;
}

/** A hand sample beside what the cables say of its place and day. */
export interface ProbePair {
  reading: ProbeReading;
  /** cables that hang at its distance from the centre; several where the sample could be near any of them */
  cables: readonly string[];
  /** sensors used, by cable and number */
  sensors: readonly string[];
  /** wet basis, fraction */
  cableWb: number;
  air: ProbeAir;
  /** by each of these cables */
  byCable: readonly CableBeside[];
  /** standard error in points by not knowing which of the cables the sample lies near; 0 where there is one */
  between: number;
  /** cables less probe, points; positive where the cables read wetter */
  offset: number;
  /** standard error in points, without the error that all readings of one meter share */
  sd: number;
  /** the grain was colder than a hand meter reads well */
  cold: boolean;
  /** false: cold beside enough warm ones, or far from all others */
  counted: boolean;
  /** far from all others: a mistaken number, or another place */
  far?: boolean;
}

/** Offset over several hand samples. */
export interface ProbeOffset {
  /** cables less probe, points */
  offset: Estimate;
  pairs: number;
}

/** One sensor's own offset. */
export interface SensorOffset extends ProbeOffset {
  cable: string;
  sensor: number;
  /** by how much more it is off than the other sensors, points, where that is sure; null where it is not, or none other is told */
  beyondOthers: Estimate | null;
  /** the bin's moisture at the end and its points removed with this sensor's offset taken off; wet basis, fraction; points */
  corrected: { end: Estimate; pointsRemoved: Estimate };
}

/** What the season's numbers would be if the cables read as the probes do. */
export interface CorrectedNumbers {
  /** wet basis, fractions */
  end: Estimate;
  pointsRemoved: Estimate;
  overdryingLossBushels: Estimate;
  overdryingLoss: Estimate;
}

export interface BinProbes {
  pairs: readonly ProbePair[];
  /** hand samples that no sensor is near enough to, and why, by reason */
  unmatched: readonly { count: number; why: string }[];
  bin: ProbeOffset;
  /** by the cables that hang at one distance from the centre, in the order of their first sample */
  rings: readonly (ProbeOffset & { cables: readonly string[] })[];
  /** by the sensors that samples lie beside, in the order of cables and heights */
  sensors: readonly SensorOffset[];
  /** by local day */
  days: readonly (ProbeOffset & { dayMs: number; cold: number })[];
  /** points that 95 % of readings keep, taken for the meter */
  meterLimit: number;
  corrected: CorrectedNumbers | null;
  notes: readonly string[];
  why: string | null;
}
