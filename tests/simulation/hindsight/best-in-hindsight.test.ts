import { describe, expect, it } from 'vitest';
import { humidityRatio } from '../../../src/air/humidity-ratio.ts';
import { mediumOf } from '../../../src/simulation/bed/medium-of.ts';
import { playAll } from '../../../src/simulation/hindsight/beam.ts';
import { bestInHindsight } from '../../../src/simulation/hindsight/best-in-hindsight.ts';
import { limitsOf } from '../../../src/simulation/hindsight/limits-of.ts';
import { replayOf } from '../../../src/simulation/hindsight/replay-of.ts';
import type { Hours } from '../../../src/simulation/run/hours.ts';
import { runSeason } from '../../../src/simulation/run/run-season.ts';
import type { RunSpec } from '../../../src/simulation/run/run-spec.ts';
import { scheduled } from '../../../src/simulation/strategies/scheduled.ts';

const BLOCK_H = 12;
const PRESSURE_PA = 99_000;

/** Days of invented weather with dry spells and damp ones, cheap nights and a demand charge by day; `phase` makes another. */
function invented(days: number, phase: number, demandPrice: number): Hours {
  const count = 24 * days;
  const array = (at: (hour: number) => number) => Float64Array.from({ length: count }, (_, hour) => at(hour));
  const clock = (hour: number) => Math.sin((2 * Math.PI * ((hour % 24) - 9)) / 24);
  const tempC = array((h) => 12 + 5 * Math.sin(h / 40 + phase) + 5 * clock(h));
  const rh = array((h) => Math.min(0.97, 0.68 - 0.2 * Math.sin(h / 31 + 2 * phase) - 0.18 * clock(h)));
  const localHour = Uint8Array.from({ length: count }, (_, h) => h % 24);
  return {
    startMs: 0,
    tempC,
    rh,
    humidityRatio: array((h) => humidityRatio(tempC[h], rh[h], PRESSURE_PA)),
    pressurePa: PRESSURE_PA,
    localHour,
    localMonth: new Uint8Array(count).fill(10),
    localDay: Uint16Array.from({ length: count }, (_, h) => Math.floor(h / 24)),
    pricePerKwh: array((h) => (h % 24 >= 22 || h % 24 < 6 ? 0.08 : 0.12)),
    demand: [{ pricePerKw: demandPrice, ratchet: 0, holds: localHour.map((h) => (h >= 7 && h < 22 ? 1 : 0)) }],
  };
}

function bin(hours: Hours, startWb: number, targetWb: number): RunSpec {
  const depthM = 2;
  return {
    bed: { medium: mediumOf('corn', 610), depthM, layers: 8, pressurePa: PRESSURE_PA },
    floorAreaM2: 60,
    hours,
    levels: [
      {
        hour: 0,
        depthM,
        tempC: 14,
        moistureDb: startWb / (1 - startWb),
        blower: { dryAirKgM2S: 0.14, warmingK: 1.5, powerW: 8000, heaterK: 0, heaterW: 0, heaterFuelPerHour: 0 },
      },
    ],
    endHour: hours.tempC.length,
    goal: 'dry',
    targetWb,
    targetC: null,
  };
}

/** Every way to run the blocks, the cheapest that reaches. */
function cheapestOfAll(spec: RunSpec): number {
  const limits = limitsOf(spec);
  const replay = replayOf(spec);
  const blocks = spec.endHour / BLOCK_H;
  let cheapest = Number.POSITIVE_INFINITY;
  for (let ways = 0; ways < 2 ** blocks; ways++) {
    const played = playAll(replay, limits, (hour) => (ways >> Math.floor(hour / BLOCK_H)) & 1);
    if (played.shortfall === 0 && played.lifeUsed <= limits.lifeUsed) cheapest = Math.min(cheapest, played.cost);
  }
  return cheapest;
}

describe('bestInHindsight', () => {
  // Held against the exhaustive search: all 2^10 ways to run ten half days.
  it.each([
    [0, 0.178, 0.17, 0],
    [1.3, 0.178, 0.17, 0],
    [2.6, 0.18, 0.172, 0],
    [0.4, 0.176, 0.17, 4],
    [4.1, 0.178, 0.172, 4],
  ])(
    'finds the cheapest of all schedules of a small case (phase %f, %f to %f, demand %f)',
    (phase, from, to, demand) => {
      const spec = bin(invented(5, phase, demand), from, to);
      const cheapest = cheapestOfAll(spec);
      // The case must be one: reachable, and not without running.
      expect(cheapest).toBeGreaterThan(0);
      expect(cheapest).toBeLessThan(Number.POSITIVE_INFINITY);
      const blocksOnly = bestInHindsight(spec, { blockHours: BLOCK_H, widths: [200], rounds: 0 });
      expect(blocksOnly?.reaches).toBe(true);
      expect(blocksOnly?.cost).toBeCloseTo(cheapest, 9);
      // Hour by hour there is at least as much to choose from.
      const polished = bestInHindsight(spec, { blockHours: BLOCK_H, widths: [200], rounds: 2 });
      expect(polished?.reaches).toBe(true);
      expect(polished?.cost).toBeLessThanOrEqual(cheapest * (1 + 1e-12));
    },
  );

  it('claims the cost that its schedule has when it is played again', () => {
    const spec = bin(invented(20, 0.7, 4), 0.185, 0.165);
    const found = bestInHindsight(spec);
    if (found === null) throw new Error('no schedule');
    const played = playAll(replayOf(spec), limitsOf(spec), (hour) => found.ways[hour]);
    expect(found.reaches).toBe(true);
    expect(played.shortfall).toBe(0);
    expect(found.cost).toBe(played.cost);
  });

  it('counts what its peaks cost by a ratchet after the hour by which the bin must be there', () => {
    const hours = invented(20, 0.7, 4);
    const localMonth = Uint8Array.from({ length: 480 }, (_, h) => 10 + Math.floor(h / 240));
    const demand = [{ pricePerKw: 40, ratchet: 0.8, holds: new Uint8Array(480).fill(1) }];
    const spec = bin({ ...hours, localMonth, demand }, 0.18, 0.17);
    const found = bestInHindsight(spec, { byHour: 240 });
    if (found === null) throw new Error('no schedule');
    const { outcome } = runSeason(spec, scheduled('found', 'Found', Float64Array.from(found.ways)));
    // 8 kW in October, 80 % of it in November.
    expect(outcome.demandCost).toBeCloseTo(40 * 8 * 1.8, 9);
    expect(found.cost).toBeCloseTo(outcome.cost, 9);
  });

  it('says that no schedule reaches the target, and comes as near as running on', () => {
    const spec = bin(invented(4, 0.7, 0), 0.22, 0.14);
    const found = bestInHindsight(spec);
    const always = playAll(replayOf(spec), limitsOf(spec), () => 1);
    expect(found?.reaches).toBe(false);
    expect(found?.shortfall).toBeLessThanOrEqual(always.shortfall);
  });

  it('is never dearer than a schedule that it was given', () => {
    const spec = bin(invented(12, 2.2, 4), 0.18, 0.168);
    const days = Float64Array.from({ length: spec.endHour }, (_, h) => (h % 24 >= 10 && h % 24 < 20 ? 1 : 0));
    const given = playAll(replayOf(spec), limitsOf(spec), (hour) => days[hour]);
    const found = bestInHindsight(spec, { seeds: [days], widths: [2] });
    expect(given.shortfall).toBe(0);
    expect(found?.reaches).toBe(true);
    expect(found?.cost).toBeLessThanOrEqual(given.cost);
  });
});
