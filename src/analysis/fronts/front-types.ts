import type { Span } from '../types.ts';
import type { CampaignSpeed } from './campaign-speed.ts';
import type { MoistureFronts } from './moisture-front-types.ts';

export type FrontKind = 'cooling' | 'warming';

export interface FrontArrival {
  cable: string;
  sensor: number;
  heightM: number;
  arrivedMs: number | null;
  /** fan hours since the campaign began */
  fanHours: number | null;
  /** 90 %, where wider than ARRIVAL_WITHIN_H to both sides; where the temperature went in two steps nearly alike, either may be the front's */
  fanHoursInterval?: readonly [number, number];
  /** true: its readings lack around the arrival, which stands by the front's pace along the cable; `arrivedInterval`: the hole, ms UTC */
  placed?: boolean;
  arrivedInterval?: readonly [number, number];
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
