import type { Doubt } from '../../../src/simulation/doubt/doubted-spec.ts';

/** About a standard error of what a fit on a season's log is taken to leave: air, the grain's water, and the air of the part short of it. */
const AIR = 0.05;
const MOISTURE_WB = 0.0015;
const SHORT = 0.15;
/** Published rates of one crop near outdoor temperatures lie apart by a factor of two, see `THIN_LAYERS`. */
const RATE = 2;

const AS_BELIEVED: Doubt = { airFactor: 1, moistureWb: 0, rateFactor: 1, shortFactor: 1 };

/** The bin as believed, then each other of what air, moisture and rate may be; air and moisture at once, where each makes it worse or better. */
export const DOUBTS: readonly Doubt[] = [
  AS_BELIEVED,
  { ...AS_BELIEVED, airFactor: 1 - AIR, moistureWb: MOISTURE_WB },
  { ...AS_BELIEVED, airFactor: 1 + AIR, moistureWb: -MOISTURE_WB },
  { ...AS_BELIEVED, shortFactor: 1 - SHORT },
  { ...AS_BELIEVED, shortFactor: 1 + SHORT },
  { ...AS_BELIEVED, rateFactor: RATE },
];
