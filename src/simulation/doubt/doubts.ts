/** A way in which a bin may differ from its fitted model. */
export interface Doubt {
  /** multiplies the air that goes through the grain; the fan's power stays */
  airFactor: number;
  /** added to the grain's moisture, wet basis, fraction */
  moistureWb: number;
  /** multiplies the thin-layer rate */
  rateFactor: number;
  /** multiplies the air of the column that has least, where a bed has several; their mean stays */
  shortFactor: number;
}

/** About a standard error of what a fit on a season's log leaves: air, the grain's water, and the air of the part short of it. */
const AIR = 0.05;
const MOISTURE_WB = 0.0015;
const SHORT = 0.15;
/** Published rates of one crop near outdoor temperatures lie apart by a factor of two, see `THIN_LAYERS`. */
const RATE = 2;

const AS_FITTED: Doubt = { airFactor: 1, moistureWb: 0, rateFactor: 1, shortFactor: 1 };

/**
 * The bin as fitted, then each other of what air, moisture and rate may be; air and moisture at once, where each makes it worse or better.
 *
 * @param openWb  half of how far the isotherms that go with the log part at the end, fraction, wet basis; counts where it is more than usual
 */
export function doubtsOf(openWb = 0): readonly Doubt[] {
  const moistureWb = Math.max(MOISTURE_WB, openWb);
  return [
    AS_FITTED,
    { ...AS_FITTED, airFactor: 1 - AIR, moistureWb },
    { ...AS_FITTED, airFactor: 1 + AIR, moistureWb: -moistureWb },
    { ...AS_FITTED, shortFactor: 1 - SHORT },
    { ...AS_FITTED, shortFactor: 1 + SHORT },
    { ...AS_FITTED, rateFactor: RATE },
  ];
}

/** Where the isotherm is not in doubt. */
export const DOUBTS = doubtsOf();
