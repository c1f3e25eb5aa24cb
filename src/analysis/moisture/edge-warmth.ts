import { conduct, makeStrip, type Strip, stripMean } from './strip-conduction.ts';

/** Steps of a quarter day: outdoor air counts by its daily mean, the daily wave dies within a decimetre or two. */
export const STEP_S = 21_600;
/**
 * Thermal diffusivity of bulk grain, m2/s: conductivity 0.14 to 0.18 W/(m K) over 720 kg/m3 times 1.9 to 2.2 kJ/(kg K)
 * (ASAE D243, from memory; Oklahoma State's R-1 per inch, seen, is 0.144).
 */
const DIFFUSIVITIES = [0.9e-7, 1.3e-7] as const;
/** Fan hours in which a strip beside a cable goes most of the way to where the cable went: a front's spread over a bin. */
const FLUSH_HOURS = 12;

/** One edge of the grain that no sensor sees. */
export interface Edge {
  /** from the outermost sensor, m: radii for the rim, heights for floor and surface */
  fromM: number;
  toM: number;
  round: boolean;
  /** share of the bin's grain between them */
  share: number;
  /** of the sensors beside it, C, by step, [steps] */
  innerC: Float64Array;
  /** how much warmer than the day's outdoor air the outside may be on average: from, to, K */
  warmerK: readonly [number, number];
  /** true: the outside may as well have no pull at all (a plenum between floor and outdoor air) */
  mayBeShielded: boolean;
}

/**
 * How far the bin's mean may be off because the grain beyond the outermost sensors has followed the outside: the
 * least and the most, K, over the grain's diffusivity and the sun on the steel.
 *
 * @param outdoorC  day's mean of the outdoor air, by step, C, [steps]
 * @param fanShare  share of each step that the fan ran, [steps]
 */
export function edgeWarmth(edge: Edge, outdoorC: Float64Array, fanShare: Float64Array): [least: number, most: number] {
  const strip = makeStrip(edge.fromM, edge.toM, edge.round);
  const found = DIFFUSIVITIES.flatMap((diffusivity) =>
    edge.warmerK.map((warmer) => offBy(strip, edge.innerC, outdoorC, warmer, fanShare, diffusivity)),
  );
  if (edge.mayBeShielded) found.push(0);
  return [edge.share * Math.min(...found), edge.share * Math.max(...found)];
}

/** Mean of the strip less that of its sensors at the last step. */
function offBy(
  strip: Strip,
  innerC: Float64Array,
  outdoorC: Float64Array,
  warmerK: number,
  fanShare: Float64Array,
  diffusivity: number,
): number {
  const tempC = new Float64Array(strip.volumes.length).fill(innerC[0]);
  for (let i = 0; i < innerC.length; i++) {
    conduct(strip, tempC, innerC[i], outdoorC[i] + warmerK, diffusivity, STEP_S);
    if (!(fanShare[i] > 0)) continue;
    const left = Math.exp((-fanShare[i] * STEP_S) / 3600 / FLUSH_HOURS);
    for (let c = 0; c < tempC.length; c++) tempC[c] = innerC[i] + left * (tempC[c] - innerC[i]);
  }
  return stripMean(strip, tempC) - innerC[innerC.length - 1];
}
