import type { Span } from '../types.ts';

/** A sensor's part in a front of moisture; moistures wet basis, fractions. */
export interface MoistureArrival {
  cable: string;
  sensor: number;
  heightM: number;
  arrivedMs: number | null;
  /** fan hours since the campaign began */
  fanHours: number | null;
  /** 90 %: the hours in which the moisture was half-way, as far as readings tell it */
  fanHoursInterval: [number, number] | null;
  aheadWb: number | null;
  /** over the last two days of running that were seen */
  endWb: number | null;
  /** not null exactly where fanHours is null */
  why: string | null;
  /** true: above the surface or without good readings; counted nowhere */
  unseen?: boolean;
}

/** The zone in which grain dries (or takes up water) on its way through a bin: one campaign for the season's running. */
export interface MoistureFront {
  /** counted on after the campaigns of temperature */
  number: number;
  kind: 'drying' | 'wetting';
  span: Span;
  fanHours: number;
  /** median of the sensors when the front had not come, and of those nearest to where the air enters behind it */
  aheadWb: number;
  behindWb: number;
  arrivals: readonly MoistureArrival[];
}

/** `why` is null exactly when there is a front. */
export interface MoistureFronts {
  front: MoistureFront | null;
  why: string | null;
}
