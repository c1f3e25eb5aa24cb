/** A rate that holds up to a moisture. */
export interface ScheduleBand {
  /** moisture up to which it holds, itself included, fraction, wet basis; Infinity: no end */
  toWb: number;
  /** for each `perPoints` of moisture, in the schedule's `unit` */
  rate: number;
}

/** What a buyer or a drier posts: a charge, discount or shrink that rises with moisture above a base. */
export interface MoistureSchedule {
  /** nothing is charged up to here, fraction, wet basis; sale and store may have different bases, so different schedules */
  baseWb: number;
  /** points of moisture that one rate is for: 1, or 0.5 for "per half point" */
  perPoints: number;
  /** points that are counted at a time, a started step as a whole one: 1, 0.5, 0.1; null: the moisture as it was read */
  stepPoints: number | null;
  /** rising, at least one */
  bands: readonly ScheduleBand[];
  /** cumulative: each band's rate for the points within it; reached: the rate of the band reached for all points */
  banding: 'cumulative' | 'reached';
  /** of the rates: money per bushel, fraction of the price, or fraction of the weight (a shrink) */
  unit: 'money' | 'price' | 'weight';
  /** which bushels money or a share of the price is counted on: as delivered, or after shrink; a shrink is always on wet ones */
  bushels: 'wet' | 'dry';
  /** loads wetter than this are not taken, fraction, wet basis; null: no limit */
  rejectOverWb: number | null;
}
