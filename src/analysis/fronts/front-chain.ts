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

/** Readings and the pace along a cable tell when a front entered to within these fan hours. */
const ENTRY_SLACK_H = 12;
/** A front that a cable's readings speak for by less than this part of its best one is hardly to be seen there. */
const LEAST_OF_OWN = 0.5;

interface Chain {
  chosen: number[];
  score: number;
  /** fan hours at which the front entered the grain, by its pace and the first sensor told */
  enteredH: number;
}

/** Best chain at one pace, of a front that entered at `enteredH` where that is given. */
function chainAt(places: readonly ChainPlace[], paceHM: number, enteredH: number | null = null): Chain {
  interface Node {
    place: number;
    passage: number;
    score: number;
    before: Node | null;
  }
  const nodes: Node[] = [];
  let best: Node | null = null;
  places.forEach(({ fromEntryM, passages }, place) => {
    const travelH = paceHM * fromEntryM;
    const fits = (hours: number) =>
      enteredH === null || Math.abs(hours - enteredH - travelH) <= ENTRY_SLACK_H + PACE_SLACK_PART * travelH;
    const here: Node[] = passages.flatMap(({ fanHours, weight }, passage) => {
      if (!fits(fanHours)) return [];
      // The front entered at the campaign's start or later.
      const early = Math.max(0, travelH - fanHours - SLACK_H);
      let top = weight - cost(early, travelH);
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
      return [{ place, passage, score: top, before }];
    });
    nodes.push(...here);
    for (const one of here) if (best === null || one.score > best.score) best = one;
  });
  const chosen = places.map(() => -1);
  let score = 0;
  let first = Number.NaN;
  if (best !== null) score = (best as Node).score;
  for (let one = best as Node | null; one !== null; one = one.before) {
    chosen[one.place] = one.passage;
    const { fromEntryM, passages } = places[one.place];
    first = passages[one.passage].fanHours - paceHM * fromEntryM;
  }
  return { chosen, score, enteredH: first };
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
  return bestChain(places).chosen;
}

function bestChain(places: readonly ChainPlace[], enteredH: number | null = null): Chain {
  let best: Chain = { chosen: places.map(() => -1), score: Number.NEGATIVE_INFINITY, enteredH: Number.NaN };
  for (const pace of PACES_H_M) {
    const one = chainAt(places, pace, enteredH);
    if (one.score > best.score + 1e-9) best = one;
  }
  return best;
}

/**
 * The same for all cables of a bin: the air enters below (or above) all of them at one time, so a front that they tell entered at
 * one time too, whatever its pace along each. A cable in which that front is hardly to be seen keeps its own.
 *
 * @param cables  [cables][places]
 */
export function frontChains(cables: readonly (readonly ChainPlace[])[]): number[][] {
  const own = cables.map((places) => bestChain(places));
  const entries = own.filter(({ enteredH }) => !Number.isNaN(enteredH)).map(({ enteredH }) => enteredH);
  if (Math.max(...entries) - Math.min(...entries) <= ENTRY_SLACK_H) return own.map(({ chosen }) => chosen);
  let best = { chains: own, score: Number.NEGATIVE_INFINITY };
  for (const enteredH of entries) {
    const chains = cables.map((places) => bestChain(places, enteredH));
    const score = chains.reduce((sum, one) => sum + Math.max(0, one.score), 0);
    if (score > best.score) best = { chains, score };
  }
  return best.chains.map((one, i) => {
    const other = one.chosen.some((passage, place) => passage >= 0 && passage !== own[i].chosen[place]);
    return other && one.score >= LEAST_OF_OWN * own[i].score ? one.chosen : own[i].chosen;
  });
}
