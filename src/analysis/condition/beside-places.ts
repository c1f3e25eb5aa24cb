/** A place of the grain and how near it lies to what else may warm it, m. */
export interface WatchedPlace {
  cable: string;
  sensor: number;
  heightM: number;
  /** to the surface, and to the wall */
  toSurfaceM: number;
  toWallM: number;
}

/** Within three weeks heat goes this far through grain at most (diffusivity 1.3e-7 m2/s, twice its square root of 4 a t), m. */
export const REACH_M = 2;

/**
 * The places that tell how warm the grain is from which heat may reach a place: all within two metres of its height and, where a
 * cable has none so near above or below it, the next one there, which bounds the grain between.
 *
 * @param known  whether a place can be read at the time
 * @returns      indices, the place's own among them; null where nothing tells the grain above or below it
 */
export function besidePlaces(
  places: readonly WatchedPlace[],
  { heightM, toSurfaceM }: WatchedPlace,
  known: (place: number) => boolean,
): number[] | null {
  const above = new Map<string, number>();
  const below = new Map<string, number>();
  const near: number[] = [];
  places.forEach((other, o) => {
    if (!known(o)) return;
    const up = other.heightM - heightM;
    if (Math.abs(up) <= REACH_M) near.push(o);
    const side = up > 0 ? above : below;
    const nearest = side.get(other.cable);
    if (up !== 0 && (nearest === undefined || Math.abs(places[nearest].heightM - heightM) > Math.abs(up))) {
      side.set(other.cable, o);
    }
  });
  if (above.size === 0 && toSurfaceM > REACH_M) return null;
  if (below.size === 0 && heightM > REACH_M) return null;
  return [...new Set([...near, ...above.values(), ...below.values()])];
}
