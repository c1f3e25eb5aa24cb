import { AS_WHEAT } from '../grain/crops.ts';

/** Constants of the airflow resistance of a grain: Pa per m = a q^2 / ln(1 + b q), q in m3/(s m2). */
export interface ResistanceCurve {
  /** id of the crop table, or `sunflower-confectionery`, which it does not have */
  crop: string;
  /** `low airflow`: fitted to aeration rates alone, where it and the standard curve part by up to a half */
  set: 'standard' | 'low airflow';
  /** Pa s2/m3 */
  a: number;
  /** m2 s/m3 */
  b: number;
  /** superficial velocities that were measured, m/s, both inclusive */
  rangeMS: readonly [low: number, high: number];
  sourceKey: string;
  provenance: 'seen' | 'memory';
  /** what outside the constants' own source bears them out */
  confirmation: string;
}

const row = (
  crop: string,
  a: number,
  b: number,
  low: number,
  high: number,
  confirmation = 'none',
  set: ResistanceCurve['set'] = 'standard',
): ResistanceCurve => ({
  crop,
  set,
  a,
  b,
  rangeMS: [low, high],
  sourceKey: 'asae-d272-3',
  provenance: 'memory',
  confirmation,
});

/** ASAE D272.3 (1996), clean loose dry grain, air upwards. */
export const RESISTANCE_CURVES: readonly ResistanceCurve[] = [
  row('corn', 20700, 30.4, 0.0056, 0.304, 'published static pressures of a Nebraska table, with packing 1.5'),
  row('corn', 9770, 8.55, 0.00025, 0.0203, 'none', 'low airflow'),
  row('soybean', 10200, 16.0, 0.0056, 0.304, 'published fan powers of NDSU, with packing 1.5 and 60 % fan efficiency'),
  row('wheat', 27000, 8.77, 0.0056, 0.203),
  row('wheat', 8410, 2.72, 0.00025, 0.0203, 'none', 'low airflow'),
  row('sorghum', 21200, 8.06, 0.0056, 0.203),
  row('barley', 21400, 13.2, 0.0056, 0.203),
  row('rice', 25700, 13.2, 0.0056, 0.152),
  row('oats', 24100, 13.9, 0.0056, 0.203),
  row('sunflower-confectionery', 11000, 18.1, 0.055, 0.178),
  row('sunflower', 24900, 23.7, 0.025, 0.57),
  row('canola', 52200, 7.27, 0.0243, 0.2633),
];

// The standard has one wheat, and one row for canola and rapeseed.
const SAME_AS: Readonly<Record<string, string>> = { ...AS_WHEAT, rapeseed: 'canola' };

/**
 * The resistance constants of a crop.
 *
 * @param crop  id of the crop table, or a name listed in `RESISTANCE_CURVES`
 * @param set   `low airflow` exists for corn and wheat
 * @throws      RangeError that lists what there is
 */
export function resistanceCurveOf(crop: string, set: ResistanceCurve['set'] = 'standard'): ResistanceCurve {
  const wanted = SAME_AS[crop] ?? crop;
  const found = RESISTANCE_CURVES.find((one) => one.crop === wanted && one.set === set);
  if (found === undefined) {
    const known = RESISTANCE_CURVES.filter((one) => one.set === set).map((one) => one.crop);
    throw new RangeError(`no ${set} resistance constants for "${crop}"; there are ${known.join(', ')}`);
  }
  return found;
}
