import { Matrix, solve } from 'ml-matrix';
import { Z90 } from '../../base/estimate.ts';
import { slabOf } from '../../grain/conducted.ts';
import { wallConductanceWM3K } from '../../simulation/bed/bed.ts';
import { SURFACE_WM2K } from '../../simulation/bed/conduct.ts';
import { STEP_MS, STEPS_A_DAY } from '../condition/step-grid.ts';

/** A stretch in which the bin stood at rest; arrays are [steps] of a quarter day, degC. */
export interface RestReadings {
  /** of the cable's highest sensor in the grain; NaN where it was not read */
  topC: Float64Array;
  /** of the sensor below it, without holes */
  belowC: Float64Array;
  outdoorC: Float64Array;
}

export interface SurfaceGrain {
  /** between the two sensors, m */
  gapM: number;
  /** from the cable to the wall, m */
  toWallM: number;
  diffusivityM2S: number;
  /** standard error of the root of the diffusivity, a part of it: a distance errs by as much */
  relSd: number;
}

/** How far above a cable's highest sensor the grain ends, m. */
export interface SurfaceDistance {
  bestM: number;
  /** 90 %; the higher is Infinity where nothing that comes in from above is seen */
  intervalM: readonly [low: number, high: number];
  /** root mean square of what is left, K */
  restK: number;
  weeks: number;
}

/** Distances tried, m. */
const TRIED_M = [
  0, 0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1, 1.2, 1.4, 1.6, 1.8, 2.1, 2.5, 3,
];
/** The air film over the surface holds heat back as so much grain of 0.155 W/(m K) does, m. */
const FILM_M = 0.155 / SURFACE_WM2K;
/** Exchange with a wall, over that of a cylinder as far off all around: none, the wall on one side, all around. */
const USUAL_WALL = 0.3;
const OTHER_WALLS = [0, 1];
/** Costs so many times the least and so much over are far from it. */
const FAR_TIMES = 3;
const FAR_OVER = 20;
/** What is left after conduction hangs together for about a week. */
const WEEK = 7 * STEPS_A_DAY;
/** What may be left of a week's readings, K: sensors, grain that is no slab, air that creeps. */
const LEFT_K = 0.3;
/**
 * Air under the roof over the outdoor mean at the start, how that changes to the end, grain at the surface over that at the sensor at the start,
 * how the start bends above the sensor and below (a fan leaves layers), K: mean and sd. Own judgement
 */
const OPEN_K = [
  [2, 3],
  [0, 3],
  [0, 5],
  [0, 3],
  [0, 3],
] as const;
/** Of the profiled cost, for 90 %: two numbers that matter for each other, and what is left is no white noise. */
const WITHIN = 4;
/** Sensors hang so exactly, m. */
const HUNG_SD_M = 0.05;

/**
 * Where the grain ends above a cable, by how much of the weather's warmth and cold reaches the highest sensor while the fans rest: a month's
 * wave is down to a fifth half a metre in, and to a hundredth at a metre and a half.
 *
 * @returns  null where no stretch has readings
 * @source   Fourier's law by `slabOf`; distances by least squares over a roof's warmth and a start that nobody measured
 */
export function surfaceDistance(rests: readonly RestReadings[], grain: SurfaceGrain): SurfaceDistance | null {
  const told = rests.filter(({ topC }) => topC.some((value) => !Number.isNaN(value)));
  const count = told.reduce((sum, { topC }) => sum + topC.filter((value) => !Number.isNaN(value)).length, 0);
  if (count === 0) return null;
  const tryOne = (distanceM: number, wall: number) => {
    const parts = told.map((rest) => misfit(rest, grain, distanceM, wall));
    return {
      distanceM,
      cost: parts.reduce((sum, one) => sum + one.cost, 0),
      square: parts.reduce((sum, one) => sum + one.square, 0),
    };
  };
  const lesser = (a: Tried, b: Tried) => (b.cost < a.cost ? b : a);
  // Every other distance first: those between two that are far off are no nearer.
  const coarse = TRIED_M.map((distanceM, i) => (i % 2 === 0 ? tryOne(distanceM, USUAL_WALL) : null));
  const near = FAR_TIMES * Math.min(...coarse.flatMap((one) => one?.cost ?? [])) + FAR_OVER;
  const isNear = (one: Tried | null | undefined) => one != null && one.cost <= near;
  const screened = TRIED_M.flatMap((distanceM, i) => {
    if (coarse[i] !== null) return [coarse[i]];
    return isNear(coarse[i - 1]) || isNear(coarse[i + 1]) ? [tryOne(distanceM, USUAL_WALL)] : [];
  });
  // The wall moves a distance little: where it is far off already, that is enough to know.
  const tried = screened.map((one) =>
    one.cost > near ? one : OTHER_WALLS.map((wall) => tryOne(one.distanceM, wall)).reduce(lesser, one),
  );
  const best = tried.reduce(lesser);
  const weeks = count / WEEK;
  const limit = best.cost + WITHIN * Math.max(1, best.cost / Math.max(1, weeks));
  const at = tried.indexOf(best);
  const end = (step: 1 | -1): number => {
    for (let i = at; tried[i + step] !== undefined; i += step) {
      const [within, beyond] = [tried[i], tried[i + step]];
      if (beyond.cost <= limit) continue;
      const part = (limit - within.cost) / (beyond.cost - within.cost);
      return within.distanceM + part * (beyond.distanceM - within.distanceM);
    }
    return step === 1 ? Number.POSITIVE_INFINITY : 0;
  };
  const bestM = vertex(tried, at);
  const systematicM = Z90 * Math.hypot(HUNG_SD_M, grain.relSd * bestM);
  const [low, high] = [end(-1), end(1)];
  return {
    bestM,
    intervalM: [
      Math.max(0, bestM - Math.hypot(bestM - low, systematicM)),
      high === Number.POSITIVE_INFINITY ? high : bestM + Math.hypot(high - bestM, systematicM),
    ],
    restK: Math.sqrt(best.square / count),
    weeks,
  };
}

interface Tried {
  distanceM: number;
  cost: number;
  square: number;
}

/** The lowest point of the parabola through the best and its neighbours. */
function vertex(tried: readonly Tried[], at: number): number {
  const [a, b, c] = [tried[at - 1], tried[at], tried[at + 1]];
  if (a === undefined || c === undefined) return b.distanceM;
  const [left, right] = [
    (b.cost - a.cost) / (b.distanceM - a.distanceM),
    (c.cost - b.cost) / (c.distanceM - b.distanceM),
  ];
  const bend = (right - left) / ((c.distanceM - a.distanceM) / 2);
  if (!(bend > 0)) return b.distanceM;
  const found = (a.distanceM + b.distanceM) / 2 - left / bend;
  return Math.min(c.distanceM, Math.max(a.distanceM, found));
}

/** From 0 to 1 and back to 0 over a stretch. */
const bump = (part: number) => 4 * part * (1 - part);

/** What a distance leaves of one stretch, the roof's warmth and the start made as good as they can be; the week's readings count as one. */
function misfit(
  { topC, belowC, outdoorC }: RestReadings,
  { gapM, toWallM, diffusivityM2S }: SurfaceGrain,
  distanceM: number,
  wall: number,
): { cost: number; square: number } {
  const upM = distanceM + FILM_M;
  const run = slabOf({
    thicknessM: gapM + upM,
    placeM: gapM,
    diffusivityM2S,
    stepS: STEP_MS / 1000,
    // A conductance over the heat of a cubic metre is what the diffusivity makes in place of the conductivity.
    sideRate1S: wall * wallConductanceWM3K(diffusivityM2S, Math.max(0.3, toWallM)),
  });
  const steps = topC.length;
  const none = new Float64Array(steps);
  const begunC = topC.find((value) => !Number.isNaN(value))!;
  const plain = run({
    lowerC: belowC,
    upperC: outdoorC,
    sideC: outdoorC,
    startC: (heightM) => (heightM < gapM ? belowC[0] + (heightM / gapM) * (begunC - belowC[0]) : begunC),
  });
  const roof = (upperC: Float64Array, startC = (_: number) => 0) => run({ lowerC: none, upperC, sideC: none, startC });
  const shapes = [
    roof(new Float64Array(steps).fill(1)),
    roof(Float64Array.from(none, (_, step) => step / steps)),
    roof(none, (heightM) => Math.max(0, (heightM - gapM) / upM)),
    roof(none, (heightM) => (heightM > gapM ? bump((heightM - gapM) / upM) : 0)),
    roof(none, (heightM) => (heightM < gapM ? bump(heightM / gapM) : 0)),
  ];
  const read = [...topC.keys()].filter((step) => !Number.isNaN(topC[step]));
  const weight = 1 / (WEEK * LEFT_K ** 2);
  const sumOver = (of: (step: number) => number) => weight * read.reduce((sum, step) => sum + of(step), 0);
  const normal = new Matrix(
    shapes.map((one, p) =>
      shapes.map((other, q) => sumOver((step) => one[step] * other[step]) + (p === q ? 1 / OPEN_K[p][1] ** 2 : 0)),
    ),
  );
  const right = Matrix.columnVector(
    shapes.map(
      (one, p) => sumOver((step) => one[step] * (topC[step] - plain[step])) + OPEN_K[p][0] / OPEN_K[p][1] ** 2,
    ),
  );
  const found = solve(normal, right).to1DArray();
  const off = (step: number) =>
    topC[step] - plain[step] - found.reduce((sum, value, p) => sum + value * shapes[p][step], 0);
  const square = read.reduce((sum, step) => sum + off(step) ** 2, 0);
  const prior = found.reduce((sum, value, p) => sum + ((value - OPEN_K[p][0]) / OPEN_K[p][1]) ** 2, 0);
  return { cost: weight * square + prior, square };
}
