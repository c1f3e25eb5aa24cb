import type { PlacedSensor } from '../../bin/shares.ts';

/** A sensor's part in a layer. */
export interface LayerPart {
  /** index into the sensors given */
  index: number;
  /** share of the layer; sums to 1 */
  weight: number;
  /** share of its cable's part of the layer; sums to 1 over a cable */
  heightShare: number;
  /** share of the layer's floor area of its cable; sums to 1 over the cables */
  cableShare: number;
}

const SAME_HEIGHT_M = 0.001;

/**
 * Share of each sensor in a flat layer: the part of the layer in its strip of the depth (half-way to its neighbours,
 * floor and surface at the ends) times its cable's share of the floor. A cable without a sensor in the layer tells
 * nothing of it and leaves its floor to the others.
 *
 * @param sensors  in the grain, with the shares of the whole bin
 * @returns        sensors with a share, in the order given; none where no sensor hangs in the layer; `coverage` is the share of
 *                 the floor whose cables have one
 */
export function layerWeights(
  sensors: readonly PlacedSensor[],
  depthM: number,
  fromM: number,
  toM: number,
): { parts: LayerPart[]; coverage: number } {
  const cables = [...new Set(sensors.map((one) => one.cable))].map((cable) => {
    const own = [...sensors.keys()].filter((i) => sensors[i].cable === cable);
    own.sort((a, b) => sensors[a].heightM - sensors[b].heightM);
    return { own, share: sensors[own[0]].cableShare };
  });
  const telling = cables.filter(({ own }) => own.some((i) => sensors[i].heightM >= fromM && sensors[i].heightM <= toM));
  const coverage = telling.reduce((sum, one) => sum + one.share, 0);
  const parts = telling.flatMap(({ own, share }) =>
    stripsOf(
      own.map((i) => sensors[i].heightM),
      depthM,
    ).flatMap(([low, high, alike], at) => {
      const overlap = Math.min(high, toM) - Math.max(low, fromM);
      if (!(overlap > 0)) return [];
      const heightShare = overlap / (toM - fromM) / alike;
      const cableShare = share / coverage;
      return [{ index: own[at], heightShare, cableShare, weight: heightShare * cableShare }];
    }),
  );
  return { parts: parts.sort((a, b) => a.index - b.index), coverage };
}

/** The strip of each height and how many sensors share it, heights rising. */
function stripsOf(heightsM: readonly number[], depthM: number): [low: number, high: number, alike: number][] {
  return heightsM.map((height) => {
    const below = heightsM.filter((other) => other < height - SAME_HEIGHT_M);
    const above = heightsM.filter((other) => other > height + SAME_HEIGHT_M);
    const low = below.length === 0 ? 0 : (Math.max(...below) + height) / 2;
    const high = above.length === 0 ? depthM : (Math.min(...above) + height) / 2;
    return [low, high, heightsM.length - below.length - above.length];
  });
}
