import type { HoleCrossing } from './hole-crossing.ts';

/** A sensor of a cable: how far the air has come to it, and when the front passed it, as far as its readings tell. */
export interface HolePlace {
  fromEntryM: number;
  /** fan hours that its readings tell; null where they do not */
  toldH: number | null;
  /** the hole of its log in which the front passed; null where none did */
  crossing: Pick<HoleCrossing, 'hole'> | null;
}

/**
 * Fan hours of the sensors that a front passed in a hole of the log: by the straight line, that is one pace, between the sensors
 * of the cable that are told before and after them, within the hole. Before the first of them the front enters with the campaign.
 *
 * @param places  in any order
 * @returns       [places]; null where nothing is to be placed, or no sensor beyond is told
 */
export function placeInHoles(places: readonly HolePlace[]): (number | null)[] {
  const told = [{ fromEntryM: 0, toldH: 0 }, ...places.filter((one) => one.toldH !== null)].sort(
    (a, b) => a.fromEntryM - b.fromEntryM,
  );
  return places.map(({ fromEntryM, crossing }) => {
    if (crossing === null) return null;
    const before = told.filter((one) => one.fromEntryM < fromEntryM).at(-1);
    const after = told.find((one) => one.fromEntryM > fromEntryM);
    if (before === undefined || after === undefined) return null;
    const part = (fromEntryM - before.fromEntryM) / (after.fromEntryM - before.fromEntryM);
    const hours = (before.toldH ?? 0) + part * ((after.toldH ?? 0) - (before.toldH ?? 0));
    const [fromH, toH] = crossing.hole;
    return Math.max(0, fromH, Math.min(toH, hours));
  });
}
