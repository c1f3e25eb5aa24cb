import type { RunSpec } from '../run/run-spec.ts';
import { type Block, beam, playAll } from './beam.ts';
import type { Limits } from './limits.ts';
import { limitsOf } from './limits-of.ts';
import { polish } from './polish.ts';
import type { Replay } from './replay.ts';
import { replayOf } from './replay-of.ts';

export interface HindsightOptions {
  /** hours that the search decides together, aligned to local midnight where they divide a day; 6 */
  blockHours?: number;
  /** states that go on after each block, one search for each; 40 and 120, in seasons of over four months 40 alone */
  widths?: readonly number[];
  /** rounds of small changes at the end; 1 */
  rounds?: number;
  /** by default what the goal asks for; storage life as much as allowed, or where all `seeds` used more, as little as any of them */
  limits?: Limits;
  /** hour by which it must have been cold once, where it has to be; the end of the run. Grain left alone is cold some day in winter */
  coldBy?: number;
  /** hours played after which no more changes are tried, so that a search has an end that can be told; without one */
  mostHours?: number;
  /** schedules that others found, as `ways` of what is found; the best of all is polished, so that none of them ends cheaper */
  seeds?: readonly Uint8Array[];
}

/** The cheapest schedule found with the weather known. */
export interface Hindsight {
  /** 0: off, 1: fan, 2: fan and heater, [hours of the run] */
  ways: Uint8Array;
  /** by the same bed and meter, money */
  cost: number;
  /** false: no schedule found reaches what is asked for; then this one comes nearest */
  reaches: boolean;
  /** what is still to go at the end, in points; 0 where `reaches` */
  shortfall: number;
}

/** The search forward plays half as many layers, which spread a front more, and leaves a little storage life for the difference. */
const COARSEST = 8;
/** Schedules that are polished, the cheapest first. */
const POLISHED = 2;
const WIDTHS = [40, 120] as const;
const LONG_HOURS = 3000;
const COARSE_LIFE = 0.97;

/**
 * The schedule that reaches the bin's targets at the least cost, the weather known ahead and no more storage life used than
 * allowed. Found in two steps: forward in blocks of hours, keeping the cheapest way to each state (`beam`), then by small
 * changes hour by hour (`polish`), from the cheapest of that and of the schedules given. A bound from above: a cheaper one may
 * exist; tests hold it against all schedules of small cases.
 *
 * @returns  null where every schedule tried uses up more storage life than allowed
 */
export function bestInHindsight(spec: RunSpec, options: HindsightOptions = {}): Hindsight | null {
  const { blockHours = 6, rounds = 1, seeds = [], coldBy, mostHours = Number.POSITIVE_INFINITY } = options;
  const { fromHour = 0, endHour } = spec;
  const count = { hours: 0 };
  const replay = counted(replayOf(spec, coldBy), count);
  const { widths = replay.hours > LONG_HOURS ? [WIDTHS[0]] : WIDTHS } = options;
  const blocks = blocksOf(spec, blockHours);
  const starts = seeds.map((ways) => ways.slice(fromHour, endHour));
  const limits = options.limits ?? limitsOf(spec, allowedLife(replay, limitsOf(spec), starts));
  const ahead = coarse(spec);
  const spared = ahead === spec ? 1 : COARSE_LIFE;
  const forward = { ...limits, lifeUsed: spared * limits.lifeUsed, lossMean: spared * limits.lossMean };
  const rests = peakHours(spec);
  const guides = [new Uint8Array(replay.hours).fill(1), ...starts].map((ways) => byBlock(ways, blocks));
  for (const { width, resting, guided } of searches(widths, rests)) {
    if (count.hours > mostHours) break;
    const played = counted(replayOf(ahead, coldBy), count);
    const seen = resting ? restingIn(rests, played) : played;
    for (const found of beam(seen, forward, blocks, width, guided ? guides : [])) {
      const ways = new Uint8Array(replay.hours);
      blocks.forEach(({ from, to }, i) => {
        for (let hour = from; hour < to; hour++) ways[hour] = resting && rests[hour] === 1 ? 0 : found.ways[i];
      });
      starts.push(ways);
    }
  }
  const played = [...new Map(starts.map((ways) => [ways.join(''), ways])).values()]
    .map((ways) => ({ ways, ...playAll(replay, limits, (hour) => ways[hour]) }))
    .filter(({ spent }) => !spent)
    .sort((a, b) => a.shortfall - b.shortfall || a.cost - b.cost);
  if (played.length === 0) return null;
  const polished = played
    .slice(0, POLISHED)
    .map((one) => polish(replay, limits, one, { pieceHours: blockHours, rounds, goOn: () => count.hours < mostHours }))
    .sort((a, b) => a.shortfall - b.shortfall || a.cost - b.cost);
  const { ways, cost, shortfall } = polished[0];
  const all = new Uint8Array(endHour);
  all.set(ways, fromHour);
  return { ways: all, cost, shortfall, reaches: shortfall === 0 };
}

interface Search {
  width: number;
  /** rest in the hours of the demand charges */
  resting: boolean;
  guided: boolean;
}

/**
 * The first width is searched twice: with guides, and resting where there are hours to rest in, then without either, as guides crowd out
 * what is cheaper where nothing binds.
 */
function searches(widths: readonly number[], rests: Uint8Array): Search[] {
  const some = rests.includes(1) && rests.includes(0);
  return widths.flatMap((width, i) => {
    const plain = { width, resting: false, guided: false };
    return i === 0 ? [{ width, resting: some, guided: true }, plain] : [plain];
  });
}

/** 1 where a demand charge holds, [hours from `fromHour` on]. */
function peakHours({ hours, fromHour = 0, endHour }: RunSpec): Uint8Array {
  return Uint8Array.from({ length: endHour - fromHour }, (_, i) =>
    hours.demand.some(({ pricePerKw, holds }) => pricePerKw > 0 && holds[fromHour + i] === 1) ? 1 : 0,
  );
}

/**
 * The same replay without running in some hours. A month's peak is paid with its first hour, so schedules without any are far
 * from those with one: a search that keeps few states loses them, and small changes do not lead there.
 */
function restingIn<State>(rests: Uint8Array, replay: Replay<State>): Replay<State> {
  return { ...replay, play: (hour, way) => replay.play(hour, rests[hour] === 1 ? 0 : way) };
}

/** The same replay, its played hours counted. */
function counted<State>(replay: Replay<State>, count: { hours: number }): Replay<State> {
  return {
    ...replay,
    play(hour, way) {
      count.hours += 1;
      replay.play(hour, way);
    },
  };
}

/** All of the storage time; where every schedule given uses more, the least that one of those uses that reach (or of all). */
function allowedLife<State>(replay: Replay<State>, limits: Limits, given: readonly Uint8Array[]): number {
  const played = given.map((ways) => playAll(replay, limits, (hour) => ways[hour]));
  const reaching = played.filter(({ shortfall }) => shortfall === 0);
  const lives = (reaching.length > 0 ? reaching : played).map(({ lifeUsed }) => lifeUsed);
  return lives.length === 0 ? 1 : Math.max(1, Math.min(...lives) / COARSE_LIFE);
}

/** Blocks between local midnights, so that one holds a night and another an afternoon. Hours count from `fromHour`. */
function blocksOf({ hours, fromHour = 0, endHour }: RunSpec, blockHours: number): Block[] {
  const blocks: Block[] = [];
  let from = fromHour;
  for (let hour = fromHour + 1; hour <= endHour; hour++) {
    const ends = hour === endHour || hours.localHour[hour] % blockHours === 0 || hour - from >= blockHours + 1;
    if (!ends) continue;
    blocks.push({ from: from - fromHour, to: hour - fromHour });
    from = hour;
  }
  return blocks;
}

/** What a schedule mostly does in each block. */
function byBlock(ways: Uint8Array, blocks: readonly Block[]): Uint8Array {
  return Uint8Array.from(blocks, ({ from, to }) => {
    const part = ways.subarray(from, to);
    const on = part.filter((way) => way > 0).length;
    if (2 * on < to - from) return 0;
    return 2 * part.filter((way) => way === 2).length > on ? 2 : 1;
  });
}

/** The same bin with two layers taken as one. */
function coarse(spec: RunSpec): RunSpec {
  const { layers } = spec.bed;
  if (layers % 2 === 1 || layers / 2 < COARSEST) return spec;
  const pairs = (all: Float64Array) =>
    Float64Array.from({ length: all.length / 2 }, (_, i) => (all[2 * i] + all[2 * i + 1]) / 2);
  const start =
    spec.start === undefined ? undefined : { tempC: pairs(spec.start.tempC), moistureDb: pairs(spec.start.moistureDb) };
  return { ...spec, bed: { ...spec.bed, layers: layers / 2 }, start };
}
