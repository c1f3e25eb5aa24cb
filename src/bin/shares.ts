import { assertRange } from '../base/errors.ts';
import type { Cable } from './cable.ts';

/** A sensor in the grain and the share of the grain for which it stands. */
export interface PlacedSensor {
  cable: string;
  /** as the log numbers it, from 1 */
  sensor: number;
  heightM: number;
  fromCentreM: number;
  /** share of the height on its cable; sums to 1 over a cable */
  heightShare: number;
  /** share of the floor area of its cable; sums to 1 over the cables in use */
  cableShare: number;
  /** heightShare * cableShare; sums to 1 over the sensors in use */
  share: number;
}

/** Cables that hang within a centimetre of one distance from the centre hang at one distance: feet and metres round apart. */
const SAME_DISTANCE_M = 0.01;
const SAME_HEIGHT_M = 0.001;

/**
 * Shares of the grain of each sensor: of the height (half-way to its neighbours on the cable, floor and surface at the
 * ends) times that of its cable's ring of the floor (circles half-way between the distances from the centre, from the
 * centre to the wall, shared equally by the cables at one distance).
 *
 * A sensor at or above the surface is out. A sensor that is out or not usable leaves its part to its neighbours on the
 * cable; a cable with none left leaves its ring to the other cables.
 *
 * @param diameterM  of the bin, m, 0.1 to 1000
 * @param depthM     levelled depth of the grain, m, 0 to 1000
 * @param cables     in any order, sensors in any order
 * @param usable     which sensors may count; all when left out
 * @returns          by cable in the order given, rising height; empty when no sensor is left
 * @source           definition of `points removed` in the kit's season format
 * @valid            throws RangeError outside, and on a cable or sensor whose place is no number
 */
export function sensorShares(
  diameterM: number,
  depthM: number,
  cables: readonly Cable[],
  usable: (cable: string, sensor: number) => boolean = () => true,
): PlacedSensor[] {
  assertRange('diameterM', diameterM, 0.1, 1000);
  assertRange('depthM', depthM, 0, 1000);
  for (const { id, fromCentreM, sensorHeightsM } of cables) {
    assertRange(`fromCentreM of cable ${id}`, fromCentreM, 0, 1000);
    for (const [i, heightM] of sensorHeightsM.entries()) {
      assertRange(`height of sensor ${i + 1} of cable ${id}`, heightM, -100, 1000);
    }
  }
  const hanging = cables
    .map((cable) => ({
      cable,
      sensors: cable.sensorHeightsM
        .map((heightM, index) => ({ heightM, sensor: index + 1 }))
        .filter(({ heightM, sensor }) => heightM < depthM && usable(cable.id, sensor))
        .sort((a, b) => a.heightM - b.heightM),
    }))
    .filter(({ sensors }) => sensors.length > 0);
  const rings = middleShares(
    hanging.map(({ cable }) => cable.fromCentreM),
    diameterM / 2,
    (r) => r * r,
    SAME_DISTANCE_M,
  );
  return hanging.flatMap(({ cable, sensors }, index) => {
    const heights = middleShares(
      sensors.map(({ heightM }) => heightM),
      depthM,
      (z) => z,
      SAME_HEIGHT_M,
    );
    return sensors.map(({ heightM, sensor }, at) => ({
      cable: cable.id,
      sensor,
      heightM,
      fromCentreM: cable.fromCentreM,
      heightShare: heights[at],
      cableShare: rings[index],
      share: heights[at] * rings[index],
    }));
  });
}

/**
 * Cut [0, end] half-way between the distinct positions, measure each piece, and share it among those at one position.
 *
 * @param positions  in any order, >= 0; one beyond the end counts as at the end
 * @param measure    size of [0, x], up to a factor: x for a height, x^2 for a circle
 * @returns          shares in the order of `positions`; they sum to 1
 */
function middleShares(
  positions: readonly number[],
  end: number,
  measure: (x: number) => number,
  same: number,
): number[] {
  const groups: { at: number; members: number[] }[] = [];
  const held = positions.map((position) => Math.min(position, end));
  for (const index of held.map((_, i) => i).sort((a, b) => held[a] - held[b])) {
    const last = groups.at(-1);
    if (last !== undefined && held[index] - last.at <= same) last.members.push(index);
    else groups.push({ at: held[index], members: [index] });
  }
  const shares = new Array<number>(positions.length).fill(0);
  let from = 0;
  groups.forEach((group, g) => {
    const to = g + 1 < groups.length ? (group.at + groups[g + 1].at) / 2 : end;
    const size = (measure(to) - measure(from)) / measure(end);
    for (const index of group.members) shares[index] = size / group.members.length;
    from = to;
  });
  return shares;
}
