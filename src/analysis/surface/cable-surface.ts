import type { PlaceTrack } from '../condition/place-tracks.ts';
import { type SurfaceDistance, type SurfaceGrain, surfaceDistance } from './surface-distance.ts';
import { topPair } from './top-pair.ts';

/** Why a cable does not tell where the grain ends, from the farthest from telling to the nearest: whole sentences of all cables of a bin. */
const UNTOLD = {
  fewSensors: 'It takes three sensors of one cable that lay in the grain, and were read, through the time at rest.',
  nearWall:
    'Every cable with three sensors in the grain hangs within 1.2 m (4 ft) of the wall: there the weather comes in from the side too.',
  seldomRead:
    'At rest no cable clear of the wall had its two highest sensors read every other day or oftener for ten days on end, the weather known.',
  notConducted:
    'At rest the highest sensors do not follow the weather as grain does that only conducts: air moved, the grain warmed by itself, or a sensor hung in air or is off.',
  tooLittle:
    'At rest too little of the weather reached the highest sensors from above: they lie too deep or too near the wall, or the rest was too short.',
} as const;
export type Untold = keyof typeof UNTOLD;

/** Of the cables the one that came nearest to telling says why none does. @param untold  of a bin's cables */
export function untoldSaid(untold: readonly Untold[]): string {
  const nearest = Object.entries(UNTOLD).findLast(([why]) => untold.includes(why as Untold));
  return nearest === undefined ? UNTOLD.fewSensors : nearest[1];
}

export interface CableSurface {
  /** of the highest sensor that was read */
  topM: number;
  found: SurfaceDistance;
}

/** What conduction leaves of the highest sensors is no more than this, K, else air or warmth of the grain's own has a hand in it. */
const MOST_LEFT_K = 0.7;
/**
 * Nearer to the wall than to the surface the weather comes in from the side: drawn cylinders with a cable within 1.1 m of the wall had the
 * grain end up to 0.9 m too low, from 1.2 m on they keep the interval.
 */
const LEAST_TO_WALL_M = 1.2;

/** What comes in from above comes to a sensor farther down as from farther off: by under this part of the way between the two it comes from the side. */
const LEAST_FARTHER = 0.5;
/** Where the next sensor sees nothing from above the highest stands alone: it tells of a surface no farther off than this, m. */
const MOST_ALONE_M = 1.5;

/** Where the grain ends above a cable. @param own  its sensors in the grain */
export function cableSurface(
  own: readonly PlaceTrack[],
  outdoorC: Float64Array,
  stretches: readonly (readonly [from: number, to: number])[],
  grain: Omit<SurfaceGrain, 'gapM'>,
): CableSurface | Untold {
  if (own.length < 3) return 'fewSensors';
  if (grain.toWallM < LEAST_TO_WALL_M) return 'nearWall';
  const highest = topPair(own, outdoorC, stretches);
  if (highest === null) return 'seldomRead';
  const next = topPair(
    own.filter((one) => one.heightM < highest.topM),
    outdoorC,
    stretches,
  );
  if (next === null) return 'fewSensors';
  const found = surfaceDistance(highest.rests, { ...grain, gapM: highest.gapM })!;
  if (found.restK > MOST_LEFT_K) return 'notConducted';
  if (found.intervalM[1] === Number.POSITIVE_INFINITY) return 'tooLittle';
  const below = surfaceDistance(next.rests, { ...grain, gapM: next.gapM })!;
  if (below.restK > MOST_LEFT_K) return 'notConducted';
  const farther = (below.bestM - found.bestM) / (highest.topM - next.topM);
  const borneOut = below.intervalM[1] < Number.POSITIVE_INFINITY;
  if (borneOut ? farther < LEAST_FARTHER : found.intervalM[1] > MOST_ALONE_M) return 'tooLittle';
  return { topM: highest.topM, found };
}
