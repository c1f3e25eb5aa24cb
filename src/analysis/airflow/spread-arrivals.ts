/** Into so many equal parts a spread arrival is cut. */
export const ARRIVAL_PARTS = 8;
/** Tables are kept for spreads by 5 %. */
const PER_E = 20;
const STEPS = 4000;

const made = new Map<number, Float64Array>();

/**
 * When the parts of a change arrive that spreads on its way, over the mean time of them all: first passage of drift with
 * dispersion, inverse Gaussian of mean 1. Whatever spreads a change in a bed (grain that takes up heat and water late, mixing,
 * conduction) leaves its mean time as the balances of heat and water say.
 *
 * @param spread  variance of the arrival over its mean squared, 0.001 to 2
 * @returns       [ARRIVAL_PARTS], rising, mean 1: the mean of each equal part
 * @source        memory (the inverse Gaussian as first-passage time; moments of dispersed plug flow)
 */
export function spreadArrivals(spread: number): Float64Array {
  const key = Math.round(PER_E * Math.log(spread));
  let found = made.get(key);
  if (found === undefined) {
    found = partsOf(Math.exp(key / PER_E));
    made.set(key, found);
  }
  return found;
}

function partsOf(spread: number): Float64Array {
  const reach = 1 + 9 * Math.sqrt(spread) + 6 * spread;
  const times = Float64Array.from({ length: STEPS }, (_, i) => ((i + 0.5) / STEPS) * reach);
  const density = times.map((t) => Math.exp(-((t - 1) ** 2) / (2 * spread * t)) / t ** 1.5);
  const all = density.reduce((sum, one) => sum + one, 0);
  const parts = new Float64Array(ARRIVAL_PARTS);
  let part = 0;
  let mass = 0;
  for (let i = 0; i < STEPS; i++) {
    let rest = density[i] / all;
    while (rest > 0) {
      const isLast = part === ARRIVAL_PARTS - 1;
      const room = (part + 1) / ARRIVAL_PARTS - mass;
      const take = isLast ? rest : Math.min(rest, room);
      parts[part] += take * times[i] * ARRIVAL_PARTS;
      mass += take;
      rest -= take;
      if (!isLast && take === room) part += 1;
    }
  }
  const mean = parts.reduce((sum, one) => sum + one, 0) / ARRIVAL_PARTS;
  return parts.map((one) => one / mean);
}
