import { describe, expect, it } from 'vitest';
import { playAll } from '../../../src/simulation/hindsight/beam.ts';
import { bestInHindsight } from '../../../src/simulation/hindsight/best-in-hindsight.ts';
import { limitsOf } from '../../../src/simulation/hindsight/limits-of.ts';
import { replayOf } from '../../../src/simulation/hindsight/replay-of.ts';
import { runSeason } from '../../../src/simulation/run/run-season.ts';
import { scheduled } from '../../../src/simulation/strategies/scheduled.ts';
import { invented, smallBin } from './small-bin.ts';

describe('bestInHindsight', () => {
  it('claims the cost that its schedule has when it is played again', () => {
    const spec = smallBin(invented(20, 0.7, 4), 0.185, 0.165);
    const found = bestInHindsight(spec);
    if (found === null) throw new Error('no schedule');
    const played = playAll(replayOf(spec), limitsOf(spec), (hour) => found.ways[hour]);
    expect(found.reaches).toBe(true);
    expect(played.shortfall).toBe(0);
    expect(found.cost).toBe(played.cost);
  });

  it('counts what its peaks cost by a ratchet after the hour by which the bin must be cold', () => {
    const hours = invented(20, 0.7, 4);
    const localMonth = Uint8Array.from({ length: 480 }, (_, h) => 10 + Math.floor(h / 240));
    const demand = [{ pricePerKw: 40, ratchet: 0.8, holds: new Uint8Array(480).fill(1) }];
    const spec = smallBin({ ...hours, localMonth, demand }, 0.16, null, { goal: 'cool', targetC: 8 });
    const found = bestInHindsight(spec, { coldBy: 240 });
    if (found === null) throw new Error('no schedule');
    const { outcome } = runSeason(spec, scheduled('found', 'Found', Float64Array.from(found.ways)));
    // 8 kW in October, 80 % of it in November.
    expect(outcome.demandCost).toBeCloseTo(40 * 8 * 1.8, 9);
    expect(found.cost).toBeCloseTo(outcome.cost, 9);
  });

  it('says that no schedule reaches the target, and comes as near as running on', () => {
    const spec = smallBin(invented(4, 0.7, 0), 0.22, 0.14);
    const found = bestInHindsight(spec);
    const always = playAll(replayOf(spec), limitsOf(spec), () => 1);
    expect(found?.reaches).toBe(false);
    expect(found?.shortfall).toBeLessThanOrEqual(always.shortfall);
  });

  it('is never dearer than a schedule that it was given', () => {
    const spec = smallBin(invented(12, 2.2, 4), 0.18, 0.168);
    const days = Uint8Array.from({ length: spec.endHour }, (_, h) => (h % 24 >= 10 && h % 24 < 20 ? 1 : 0));
    const given = playAll(replayOf(spec), limitsOf(spec), (hour) => days[hour]);
    const found = bestInHindsight(spec, { seeds: [days], widths: [2] });
    expect(given.shortfall).toBe(0);
    expect(found?.reaches).toBe(true);
    expect(found?.cost).toBeLessThanOrEqual(given.cost);
  });
});
