import { ARRIVAL_WITHIN_H } from './front-limits.ts';
import type { Passage } from './passages.ts';

/** What a sensor's readings say for another passage, over what they say for the one chosen: so much makes it one that may be the front's. */
const ALONE_PART = 0.9;
/** The same where half of the cable's sensors have another one that lies as far off: air that fell in two steps sends two fronts. */
const TOGETHER_PART = 0.6;

/** A sensor of a cable, in the order in which the air comes to them. */
export interface ChosenPassage {
  passages: readonly Passage[];
  /** the one that fits the front along the cable; null: none */
  chosen: Passage | null;
}

/**
 * Fan hours of the other passages that may be the front's: which of two falls nearly alike is the steeper one hangs on a hair.
 *
 * @param cable  its sensors
 * @returns      for each of them; none that is earlier than the front was at the sensor before
 */
export function alikeAlong(cable: readonly ChosenPassage[]): number[][] {
  let beforeH = Number.NEGATIVE_INFINITY;
  const others = cable.map(({ passages, chosen }) => {
    if (chosen === null) return [];
    const fromH = beforeH;
    beforeH = chosen.fanHours;
    return passages
      .filter((one) => one !== chosen && one.fanHours >= fromH && one.weight >= TOGETHER_PART * chosen.weight)
      .map(({ fanHours, weight }) => ({ fanHours, part: weight / chosen.weight, shiftH: fanHours - chosen.fanHours }));
  });
  const told = cable.filter(({ chosen }) => chosen !== null).length;
  const shared = (shiftH: number) =>
    2 * others.filter((of) => of.some((one) => Math.abs(one.shiftH - shiftH) <= ARRIVAL_WITHIN_H)).length >= told &&
    told > 1;
  return others.map((of) =>
    of.filter(({ part, shiftH }) => part >= ALONE_PART || shared(shiftH)).map(({ fanHours }) => fanHours),
  );
}
