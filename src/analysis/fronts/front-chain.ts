import type { Passage } from './passages.ts';

/** A sensor of a cable: how far the air has come to it, and when a front may have passed it. */
export interface ChainPlace {
  fromEntryM: number;
  passages: readonly Passage[];
}

/** Readings, their noise and the daily wave may put a passage off by this much against the next sensor's, fan hours. */
const SLACK_H = 2;

/** Fan hours a metre that are tried, from a drying floor to the slowest aeration. */
const PACES_H_M = Array.from({ length: 18 }, (_, i) => 0.4 * 1.4 ** i);

/** What a step of the front that does not keep its pace costs at most, in votes. */
const PACE_COST = 1.5;
/** A step off its pace by this many fan hours, and this part of its time, costs half of that. */
const PACE_SLACK_H = 3;
const PACE_SLACK_PART = 0.5;

interface Chain {
  chosen: number[];
  score: number;
}

/** Best chain at one pace. */
function chainAt(places: readonly ChainPlace[], paceHM: number): Chain {
  interface Node {
    place: number;
    passage: number;
    score: number;
    before: Node | null;
  }
  const nodes: Node[] = [];
  let best: Node | null = null;
  places.forEach(({ fromEntryM, passages }, place) => {
    const here: Node[] = passages.map(({ fanHours, weight }, passage) => {
      // The front entered at the campaign's start or later.
      const early = Math.max(0, paceHM * fromEntryM - fanHours - SLACK_H);
      let top = weight - cost(early, paceHM * fromEntryM);
      let before: Node | null = null;
      for (const one of nodes) {
        const from = places[one.place];
        const stepH = fanHours - from.passages[one.passage].fanHours;
        if (stepH < -SLACK_H) continue;
        const dueH = paceHM * (fromEntryM - from.fromEntryM);
        const score = one.score + weight - cost(Math.max(0, Math.abs(stepH - dueH) - SLACK_H), dueH);
        if (score > top) {
          top = score;
          before = one;
        }
      }
      return { place, passage, score: top, before };
    });
    nodes.push(...here);
    for (const one of here) if (best === null || one.score > best.score) best = one;
  });
  const chosen = places.map(() => -1);
  let score = 0;
  if (best !== null) score = (best as Node).score;
  for (let one = best as Node | null; one !== null; one = one.before) chosen[one.place] = one.passage;
  return { chosen, score };
}

function cost(offH: number, dueH: number): number {
  const slack = PACE_SLACK_H + PACE_SLACK_PART * dueH;
  return (PACE_COST * offH * offH) / (offH * offH + slack * slack);
}

/**
 * The passages along a cable that make one front: it comes to no sensor before one nearer to where the air enters, keeps
 * its pace as well as it can, and the sensors' own readings speak for it most.
 *
 * @param places  from where the air enters
 * @returns       index of the passage at each place; -1 where none fits
 */
export function frontChain(places: readonly ChainPlace[]): number[] {
  let best: Chain = { chosen: places.map(() => -1), score: Number.NEGATIVE_INFINITY };
  for (const pace of PACES_H_M) {
    const one = chainAt(places, pace);
    if (one.score > best.score + 1e-9) best = one;
  }
  return best.chosen;
}
