import { describe, expect, it } from 'vitest';
import { playAll } from '../../../src/simulation/hindsight/beam.ts';
import { bestInHindsight } from '../../../src/simulation/hindsight/best-in-hindsight.ts';
import type { Limits } from '../../../src/simulation/hindsight/limits.ts';
import { limitsOf } from '../../../src/simulation/hindsight/limits-of.ts';
import { replayOf } from '../../../src/simulation/hindsight/replay-of.ts';
import { hasHeater, type RunSpec } from '../../../src/simulation/run/run-spec.ts';
import { invented, smallBin } from './small-bin.ts';

interface Asked {
  limits: Limits;
  coldBy?: number;
  blockH: number;
}

/**
 * Every way to run the blocks, where there is a demand charge each also with the fan resting in its hours: what the search may choose from.
 *
 * @returns  the cheapest that reaches within the limits, Infinity where none does; how many do
 */
function cheapestOfAll(spec: RunSpec, { limits, coldBy, blockH }: Asked): { cost: number; able: number } {
  const replay = replayOf(spec, coldBy);
  const ways = hasHeater(spec) ? 3 : 2;
  const blocks = spec.endHour / blockH;
  const [{ holds, pricePerKw }] = spec.hours.demand;
  const power = Array.from({ length: blocks }, (_, i) => ways ** i);
  let cost = Number.POSITIVE_INFINITY;
  let able = 0;
  for (let code = 0; code < ways ** blocks; code++) {
    const at = (hour: number) => Math.floor(code / power[Math.floor(hour / blockH)]) % ways;
    const rested = (hour: number) => (holds[hour] === 1 ? 0 : at(hour));
    for (const way of pricePerKw > 0 ? [at, rested] : [at]) {
      const played = playAll(replay, limits, way);
      if (played.shortfall > 0 || played.spent) continue;
      able += 1;
      cost = Math.min(cost, played.cost);
    }
  }
  return { cost, able };
}

/** The search by blocks comes to the cheapest of all, and hour by hour to no dearer one. @returns that cheapest cost */
function holdsAgainstAll(spec: RunSpec, asked: Partial<Asked> = {}): number {
  const { blockH = 12, limits = limitsOf(spec), coldBy } = asked;
  const { cost } = cheapestOfAll(spec, { limits, coldBy, blockH });
  // The case must be one: reachable, and not without running.
  expect(cost).toBeGreaterThan(0);
  expect(cost).toBeLessThan(Number.POSITIVE_INFINITY);
  const search = { blockHours: blockH, widths: [200], limits, coldBy };
  const blocksOnly = bestInHindsight(spec, { ...search, rounds: 0 });
  expect(blocksOnly?.reaches).toBe(true);
  expect(blocksOnly?.cost).toBeCloseTo(cost, 9);
  // Hour by hour there is at least as much to choose from.
  const polished = bestInHindsight(spec, { ...search, rounds: 2 });
  expect(polished?.reaches).toBe(true);
  expect(polished?.cost).toBeLessThanOrEqual(cost * (1 + 1e-12));
  return cost;
}

describe('the best in hindsight against all schedules of a small case', () => {
  // All 2^10 ways to run ten half days.
  it.each([
    [0, 0.178, 0.17, 0],
    [1.3, 0.178, 0.17, 0],
    [2.6, 0.18, 0.172, 0],
    [0.4, 0.176, 0.17, 4],
    [4.1, 0.178, 0.172, 4],
  ])('a bin to be dried (phase %f, %f to %f, demand %f)', (phase, from, to, demand) => {
    holdsAgainstAll(smallBin(invented(5, phase, demand), from, to));
  });

  it.each([
    [0.4, 11, 0],
    [2.2, 9, 0],
    [3.6, 8, 4],
    [5, 9, 4],
  ])('a bin to be cooled, with little air (phase %f, to %f degC, demand %f)', (phase, targetC, demand) => {
    holdsAgainstAll(cooled(phase, targetC, demand));
  });

  it('a bin that has to be cold by an hour', () => {
    const spec = cooled(2.2, 9, 4);
    const inTime = holdsAgainstAll(spec, { coldBy: 72 });
    // The hour is what makes it dearer.
    expect(inTime).toBeGreaterThan(holdsAgainstAll(spec) * 1.1);
  });

  it.each([
    [1.1, 0.115, 0.125, 0],
    [3.4, 0.115, 0.128, 4],
    [2.1, 0.12, 0.13, 0],
  ])('a bin to be conditioned (phase %f, %f to %f, demand %f)', (phase, from, to, demand) => {
    holdsAgainstAll(smallBin(invented(5, phase, demand), from, to, { goal: 'condition' }));
  });

  // All 3^8 ways to run eight half days. The fan alone costs more, so the cheapest must burn fuel in some of them.
  it.each([
    [2.6, 0.18, 0.165, 0],
    [4.1, 0.178, 0.164, 4],
  ])('a bin with a heater (phase %f, %f to %f, demand %f)', (phase, from, to, demand) => {
    const hours = invented(4, phase, demand);
    const blower = { heaterK: 5, heaterW: 500, heaterFuelPerHour: 0.25 };
    const cost = holdsAgainstAll(smallBin(hours, from, to, { blower }));
    const unheated = smallBin(hours, from, to);
    expect(cheapestOfAll(unheated, { limits: limitsOf(unheated), blockH: 12 }).cost).toBeGreaterThan(cost);
  });

  // Storage life is the worst layer's, loss the mean's; each limit lies below what the cheapest schedule uses without it.
  it.each([
    ['storage life of a bin to be cooled', cooled(2.2, 9, 0), { lifeUsed: 0.02 }],
    ['loss of a bin to be cooled', cooled(2.2, 9, 0), { lossMean: 6.5e-5 }],
    ['both, with demand', cooled(3.6, 8, 4), { lifeUsed: 0.015, lossMean: 5e-5 }],
    ['storage life of a bin to be dried', smallBin(invented(5, 2.6, 0), 0.18, 0.172), { lifeUsed: 0.035 }],
  ])('limits that bind: %s', (_, spec, limit) => {
    const free = cheapestOfAll(spec, { limits: limitsOf(spec), blockH: 12 });
    const bound = holdsAgainstAll(spec, { limits: { ...limitsOf(spec), ...limit } });
    expect(bound).toBeGreaterThan(free.cost * 1.1);
  });
});

function cooled(phase: number, targetC: number, demand: number): RunSpec {
  const blower = { airM3M2S: 0.025 };
  return smallBin(invented(5, phase, demand), 0.16, null, { goal: 'cool', targetC, blower });
}
