/** A way in which a bin may differ from its fitted model. */
export interface Doubt {
  /** multiplies the air that goes through the grain; the fan's power stays */
  airFactor: number;
  /** added to the grain's moisture, wet basis, fraction */
  moistureWb: number;
  /** multiplies the thin-layer rate */
  rateFactor: number;
}

/** About what a fit on a season's log leaves open in air and moisture, at once and to the side where each makes it worse (or better). */
const FITTED = [
  { airFactor: 1, moistureWb: 0 },
  { airFactor: 0.93, moistureWb: 0.002 },
  { airFactor: 1.07, moistureWb: -0.002 },
];
/** Published rates of one crop near outdoor temperatures lie apart by a factor of two, see `THIN_LAYERS`. */
const RATES = [1, 2];

/** The bin as fitted, then each other of what air, moisture and rate may be: three by two. */
export const DOUBTS: readonly Doubt[] = RATES.flatMap((rateFactor) =>
  FITTED.map((fitted) => ({ ...fitted, rateFactor })),
);
