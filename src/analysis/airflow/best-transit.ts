/** What fits best; the flux by its logarithm, and its standard error. */
export interface BestTransit {
  logFlux: number;
  logSd: number;
  /** of what is left, K2 */
  meanSquare: number;
  /** the best of those tried before the fit */
  triedLogFlux: number;
}

/** Misfits of neighbouring hours hang together: so many hours count as one. */
const TOGETHER_H = 3;
/** Readings, their steps and noise cannot agree better, K. */
const LEAST_MISFIT_K = 0.25;
/** Fixed errors of two thermometers against each other (sd), as for the mean temperatures: 0.26 K each. */
const OFFSET_SD_K = 0.37;
/** A tenth is what a metre or two at the rates of farm bins spreads (variance over mean squared); a factor of 3 either way. Working assumption. */
const USUAL_SPREAD = Math.log(0.1);
const SPREAD_LOG_SD = 1.2;
const SPREAD_RANGE: readonly [number, number] = [Math.log(0.004), Math.log(1.5)];
/** Moments that must be told, of all. */
const LEAST_MATCHES = 6;
const LEAST_PART = 0.5;
const ROUNDS = 8;
/** Steps for the slopes, longest steps of a round, and where it ends. */
const SLOPE = [0.03, 0.15] as const;
const LONGEST = [0.2, 1] as const;
const SETTLED = 0.003;

type Predict = (logFlux: number, logSpread: number) => Float64Array;

/**
 * Least squares for flux and spread, with the sensors' offset taken out as far as thermometers have one: the best of the tries, then
 * Gauss-Newton.
 *
 * @param predict  temperatures at the second sensor; may return the same array again
 * @param seenC    what it logged, as long
 * @param spanH    fan hours of the stretch
 * @param tries    logarithms of the flux
 * @returns        null where too few moments are told
 */
export function bestTransit(
  predict: Predict,
  seenC: Float64Array,
  spanH: number,
  tries: readonly number[],
): BestTransit | null {
  const effective = Math.min(seenC.length, spanH / TOGETHER_H);
  const at = (flux: number, spread: number, noise: number) => leftOver(predict(flux, spread), seenC, effective, noise);
  let tried: { flux: number; square: number } | null = null;
  for (const flux of tries) {
    const found = at(flux, USUAL_SPREAD, LEAST_MISFIT_K ** 2);
    if (found !== null && (tried === null || found.square < tried.square)) tried = { flux, square: found.square };
  }
  if (tried === null) return null;
  let [flux, spread] = [tried.flux, USUAL_SPREAD];
  let noise = Math.max(LEAST_MISFIT_K ** 2, tried.square);
  const costOf = (square: number, logSpread: number) =>
    (effective * square) / noise + ((logSpread - USUAL_SPREAD) / SPREAD_LOG_SD) ** 2;
  let here = at(flux, spread, noise);
  let logSd = Number.NaN;
  for (let round = 0; round < ROUNDS; round++) {
    if (here === null) return null;
    const byFlux = slope(at(flux + SLOPE[0], spread, noise), at(flux - SLOPE[0], spread, noise), SLOPE[0]);
    const bySpread = slope(at(flux, spread + SLOPE[1], noise), at(flux, spread - SLOPE[1], noise), SLOPE[1]);
    if (byFlux === null || bySpread === null) return null;
    const weight = effective / seenC.length / noise;
    const a = weight * dot(byFlux, byFlux) + 1e-6;
    const b = weight * dot(byFlux, bySpread);
    const c = weight * dot(bySpread, bySpread) + 1 / SPREAD_LOG_SD ** 2;
    const g = weight * dot(byFlux, here.left);
    const h = weight * dot(bySpread, here.left) + (spread - USUAL_SPREAD) / SPREAD_LOG_SD ** 2;
    const whole = a * c - b * b;
    logSd = Math.sqrt(c / whole);
    let step = [(b * h - c * g) / whole, (b * g - a * h) / whole];
    const long = Math.max(1, Math.abs(step[0]) / LONGEST[0], Math.abs(step[1]) / LONGEST[1]);
    step = step.map((one) => one / long);
    let moved = false;
    for (let halved = 0; halved < 4 && !moved; halved++) {
      const nextSpread = Math.min(SPREAD_RANGE[1], Math.max(SPREAD_RANGE[0], spread + step[1]));
      const next = at(flux + step[0], nextSpread, noise);
      if (next !== null && costOf(next.square, nextSpread) < costOf(here.square, spread)) {
        [flux, spread, here, moved] = [flux + step[0], nextSpread, next, true];
      } else step = step.map((one) => one / 2);
    }
    const before = noise;
    noise = Math.max(LEAST_MISFIT_K ** 2, here.square);
    if (!moved || (Math.abs(step[0]) < SETTLED && Math.abs(noise / before - 1) < 0.05)) break;
    here = at(flux, spread, noise);
  }
  return here === null ? null : { logFlux: flux, logSd, meanSquare: here.square, triedLogFlux: tried.flux };
}

/** What the prediction leaves, the offset taken out; null where too few moments are told. */
function leftOver(told: Float64Array, seenC: Float64Array, effective: number, noise: number) {
  let sum = 0;
  let squares = 0;
  let count = 0;
  for (let j = 0; j < told.length; j++) {
    const left = seenC[j] - told[j];
    if (Number.isNaN(left)) continue;
    sum += left;
    squares += left * left;
    count += 1;
  }
  if (count < LEAST_MATCHES || count < LEAST_PART * told.length) return null;
  const mean = sum / count;
  // The part of a mean difference that is the thermometers' and not the air's, by what is known of them beforehand.
  const free = effective / (effective + noise / OFFSET_SD_K ** 2);
  const left = told.map((tempC, j) => (Number.isNaN(tempC) ? 0 : seenC[j] - tempC - free * mean));
  return { left, square: squares / count - free * mean * mean };
}

type Left = ReturnType<typeof leftOver>;

function slope(above: Left, below: Left, step: number): Float64Array | null {
  if (above === null || below === null) return null;
  return above.left.map((one, j) => (one - below.left[j]) / (2 * step));
}

const dot = (a: Float64Array, b: Float64Array): number => {
  let sum = 0;
  for (let j = 0; j < a.length; j++) sum += a[j] * b[j];
  return sum;
};
