import type { Estimate } from '../../base/estimate.ts';

/** Sensors against scale tickets at one end of the season. */
export interface MomentAgreement {
  moment: 'start' | 'end';
  /** wet basis, fractions */
  sensors: Estimate;
  tickets: Estimate;
  /** with a moisture */
  loads: number;
  /** weight of these loads over that of the grain as filled; null where one has no weight */
  covered: number | null;
  /** sensors less tickets, points */
  difference: Estimate;
  /** fan hours between loads and readings, mean over the loads; null without a fan log */
  fanHoursBetween: number | null;
  /** false: for part of that time no log tells, and the fans are taken to have run as else */
  hoursLogged: boolean;
  /** the difference that these hours alone would make at the season's mean rate, points; from nothing to twice that rate */
  expected: Estimate & { value: number };
  /** the interval of the difference reaches what is expected; null where the loads are not the bin's mean */
  agree: boolean | null;
  why: string | null;
}

/** Both ends together. */
export interface TicketsHeld {
  start: MomentAgreement | null;
  end: MomentAgreement | null;
  /** by how much all sensors would have to read too wet for both to agree, points */
  sharedBias: Estimate;
  /** difference at the end less that at the start, points: what a shared bias does not explain */
  drift: Estimate;
  /** what agreement or disagreement most likely means, whole sentences */
  likely: readonly string[];
  why: string | null;
}
