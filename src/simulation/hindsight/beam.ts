import type { Limits } from './limits.ts';
import { newStanding, type Replay, type Standing } from './replay.ts';
import { heatToGo, isSpent, layerToGo, moistureToGo, shortfall } from './shortfall.ts';

/** A block of hours that is run one way. */
export interface Block {
  from: number;
  to: number;
}

/** States that differ by less count as one, points of moisture. Well below what one block of running does, or rest would always look as good. */
const SAME_POINTS = 0.003;
/** States whose storage life or loss differ by less of what is allowed count as one. */
const SAME_AGES = 200;
const COLD_K = 2;
const AGES = 7;

interface Node<State> {
  state: State;
  cost: number;
  /** points still to go by mean moisture, worst layer, temperature */
  moisture: number;
  layer: number;
  heat: number;
  /** share of the allowable storage time used by the worst layer */
  life: number;
  /** dry matter lost on the mean; 0 where nothing is asked of it */
  loss: number;
  /** mean temperature in cells of some kelvin: grain that is kept cold lasts, whatever it has used */
  cold: number;
  /** the storage life used, in sevenths of what is allowed */
  age: number;
  /** places in the trail: the node it came from, one for each block */
  trail: number;
  /** those followed so far, by their places: such a node stays in, whatever is cheaper now */
  guides: readonly number[];
}

export interface Found {
  /** way of each block */
  ways: Uint8Array;
  cost: number;
  /** 0: all limits are kept */
  shortfall: number;
}

/**
 * Cheapest ways found to run the blocks, forward in time: after each block, of all ways that led to nearly the same state (by what is
 * still to go) only the cheapest goes on, and at the most `width` of them. Ways that no longer can be best (dearer and no
 * nearer in any respect, storage life among them, than another) go out first. Not proven to be the best: what goes out could have paid later.
 *
 * @param width   states that go on after each block; more is surer and slower
 * @param guides  schedules known to keep the limits or nearly, [blocks] each: their states stay in beside the width, so that ways that part from
 *                them late are looked at; where the storage life binds, the cheapest so far all wear out before the end
 * @returns       the best, and the best of those that wear the grain less; none where every way breaks the storage limit
 */
export function beam<State>(
  replay: Replay<State>,
  limits: Limits,
  blocks: readonly Block[],
  width: number,
  guides: readonly Uint8Array[] = [],
): Found[] {
  const start = replay.newState();
  replay.keep(start);
  const standing = newStanding();
  const cameFrom: number[] = [-1];
  const wayTaken: number[] = [0];
  const free: State[] = [];
  replay.stand(standing);
  const all = [...guides.keys()];
  let nodes: Node<State>[] = [nodeOf(start, replay.cost(), standing, limits, 0, all)];
  const grain = {
    moisture: SAME_POINTS,
    layer: 5 * SAME_POINTS,
    heat: SAME_POINTS,
    life: limits.lifeUsed / SAME_AGES,
    loss: Number.isNaN(limits.lossMean) ? 0 : limits.lossMean / SAME_AGES,
  };
  for (const [block, { from, to }] of blocks.entries()) {
    const next: Node<State>[] = [];
    for (const node of nodes) {
      for (let way = 0; way <= replay.ways; way++) {
        replay.restore(node.state);
        for (let hour = from; hour < to; hour++) replay.play(hour, way);
        replay.stand(standing);
        if (isSpent(standing, limits)) continue;
        const state = free.pop() ?? replay.newState();
        replay.keep(state);
        cameFrom.push(node.trail);
        wayTaken.push(way);
        const follows = node.guides.filter((g) => guides[g][block] === way);
        next.push(nodeOf(state, replay.cost(), standing, limits, cameFrom.length - 1, follows));
      }
    }
    for (const node of nodes) if (node.state !== start) free.push(node.state);
    if (next.length === 0) {
      replay.restore(start);
      return [];
    }
    nodes = best(next, grain, width, free);
  }
  const found = endsOf(nodes).map((end) => {
    const ways = new Uint8Array(blocks.length);
    let at = end.trail;
    for (let i = blocks.length - 1; i >= 0; i--) {
      ways[i] = wayTaken[at];
      at = cameFrom[at];
    }
    return { ways, cost: end.cost, shortfall: toGo(end) };
  });
  replay.restore(start);
  return found;
}

/** The best of all, and of those that have used less of the storage life, by its sevenths: another bed may wear the grain a little more. */
function endsOf<State>(nodes: readonly Node<State>[]): Node<State>[] {
  const younger = Array.from({ length: AGES }, (_, i) => nodes.filter(({ age }) => age < AGES - i));
  const ends = [nodes, ...younger].filter((some) => some.length > 0);
  return [...new Set(ends.map((some) => some.reduce((a, b) => (better(a, b) ? a : b))))];
}

function nodeOf<State>(
  state: State,
  cost: number,
  at: Standing,
  limits: Limits,
  trail: number,
  guides: readonly number[],
): Node<State> {
  const moisture = moistureToGo(at, limits);
  const layer = layerToGo(at, limits);
  return {
    state,
    cost,
    moisture,
    layer,
    heat: heatToGo(at, limits),
    life: at.lifeUsed,
    loss: Number.isNaN(limits.lossMean) ? 0 : at.lossMean,
    cold: Math.floor(at.meanC / COLD_K),
    age: Math.floor((AGES * at.lifeUsed) / limits.lifeUsed),
    trail,
    guides,
  };
}

const toGo = (node: { moisture: number; layer: number; heat: number }) => node.moisture + node.layer + node.heat;

function better<State>(a: Node<State>, b: Node<State>): boolean {
  const gap = toGo(a) - toGo(b);
  return gap === 0 ? a.cost <= b.cost : gap < 0;
}

/** The cheapest of each cell of what is still to go; then those that none beats in every respect; then evenly by what is to go. */
function best<State>(
  all: Node<State>[],
  grain: { moisture: number; layer: number; heat: number; life: number; loss: number },
  width: number,
  free: State[],
): Node<State>[] {
  const cells = new Map<string, Node<State>>();
  const beside: Node<State>[] = [];
  const out = (node: Node<State>) => {
    if (node.guides.length > 0) beside.push(node);
    else free.push(node.state);
  };
  for (const node of all) {
    const key = `${cell(node.moisture, grain.moisture)} ${cell(node.layer, grain.layer)} ${cell(node.heat, grain.heat)} ${cell(node.life, grain.life)} ${cell(node.loss, grain.loss)} ${node.cold}`;
    const other = cells.get(key);
    if (other === undefined) cells.set(key, node);
    else if (node.cost < other.cost || (node.cost === other.cost && toGo(node) < toGo(other))) {
      out(other);
      cells.set(key, node);
    } else out(node);
  }
  const sorted = [...cells.values()].sort((a, b) => a.cost - b.cost || toGo(a) - toGo(b));
  const kept: Node<State>[] = [];
  for (const node of sorted) {
    const beaten = kept.some(
      (other) =>
        other.moisture <= node.moisture &&
        other.layer <= node.layer &&
        other.heat <= node.heat &&
        other.life <= node.life &&
        other.loss <= node.loss &&
        other.cold === node.cold,
    );
    if (beaten) out(node);
    else kept.push(node);
  }
  return [...thinned(kept, width, out), ...beside];
}

/** Evenly by what is still to go within each temperature and age, each with its part: what is cheap now may be too old to finish. */
function thinned<State>(kept: Node<State>[], width: number, out: (node: Node<State>) => void): Node<State>[] {
  if (kept.length <= width) return kept;
  kept.sort((a, b) => a.cold - b.cold || toGo(a) - toGo(b));
  const stays = new Set<Node<State>>();
  const groups = new Map<string, Node<State>[]>();
  for (const node of kept) {
    const key = `${node.cold} ${node.age}`;
    groups.set(key, [...(groups.get(key) ?? []), node]);
  }
  for (const group of groups.values()) {
    const part = Math.max(2, Math.round((width * group.length) / kept.length));
    for (let i = 0; i < part; i++) stays.add(group[Math.round((i * (group.length - 1)) / (part - 1))]);
  }
  for (const node of kept) if (!stays.has(node)) out(node);
  return kept.filter((node) => stays.has(node));
}

/** Cell of a number; all that is reached shares one. */
function cell(toGo: number, grain: number): number {
  return toGo === 0 || grain === 0 ? 0 : 1 + Math.floor(toGo / grain);
}

/** What a given way comes to: the same sums as the search's own. */
export function playAll<State>(
  replay: Replay<State>,
  limits: Limits,
  ways: (hour: number) => number,
): { cost: number; shortfall: number; lifeUsed: number; spent: boolean } {
  const start = replay.newState();
  replay.keep(start);
  const standing = newStanding();
  for (let hour = 0; hour < replay.hours; hour++) replay.play(hour, ways(hour));
  replay.stand(standing);
  const played = {
    cost: replay.cost(),
    shortfall: shortfall(standing, limits),
    lifeUsed: standing.lifeUsed,
    spent: isSpent(standing, limits),
  };
  replay.restore(start);
  return played;
}
