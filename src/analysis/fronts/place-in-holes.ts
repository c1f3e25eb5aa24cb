import { median } from '../../base/stats/quantile.ts';
import type { HoleCrossing } from './hole-crossing.ts';

/** Sensors nearer to each other than this, m, tell no pace. */
const LEAST_APART_M = 0.5;

/** A sensor of a cable: how far the air has come to it, and when the front passed it, as far as its readings tell. */
export interface HolePlace {
  fromEntryM: number;
  /** fan hours that its readings tell; null where they do not */
  toldH: number | null;
  /** the hole of its log in which the front passed; null where none did */
  crossing: Pick<HoleCrossing, 'hole'> | null;
}

interface Told {
  fromEntryM: number;
  toldH: number;
}

const toldOf = (places: readonly HolePlace[]): Told[] =>
  places
    .flatMap(({ fromEntryM, toldH }) => (toldH === null ? [] : [{ fromEntryM, toldH }]))
    .sort((a, b) => a.fromEntryM - b.fromEntryM);

/** Fan hours a metre of the front along a cable, by the sensors that are told; null where they tell none. */
export function paceOf(places: readonly HolePlace[]): number | null {
  const told = toldOf(places);
  const slopes = told.flatMap((a) =>
    told
      .filter((b) => b.fromEntryM - a.fromEntryM >= LEAST_APART_M)
      .map((b) => (b.toldH - a.toldH) / (b.fromEntryM - a.fromEntryM)),
  );
  return slopes.length === 0 ? null : Math.max(0, median(slopes));
}

/**
 * Fan hours of the sensors that a front passed in a hole of the log, within the hole: by one pace between the sensors of the cable
 * that are told before and after them; where none is told before, back from the next by the pace of the front beyond.
 *
 * @param places       in any order
 * @param elsewhereHM  pace in the other cables, for one that tells none itself; null where they tell none
 * @returns            [places]; null where nothing is to be placed, or no sensor beyond is told
 */
export function placeInHoles(places: readonly HolePlace[], elsewhereHM: number | null): (number | null)[] {
  const told = toldOf(places);
  const paceHM = paceOf(places) ?? elsewhereHM;
  return places.map(({ fromEntryM, crossing }) => {
    const after = told.find((one) => one.fromEntryM > fromEntryM);
    if (crossing === null || after === undefined) return null;
    const before = told.filter((one) => one.fromEntryM < fromEntryM).at(-1);
    const pace = before === undefined ? paceHM : (after.toldH - before.toldH) / (after.fromEntryM - before.fromEntryM);
    if (pace === null) return null;
    const [fromH, toH] = crossing.hole;
    return Math.max(0, fromH, Math.min(toH, after.toldH - pace * (after.fromEntryM - fromEntryM)));
  });
}
