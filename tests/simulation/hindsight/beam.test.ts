import { describe, expect, it } from 'vitest';
import { beam, playAll } from '../../../src/simulation/hindsight/beam.ts';
import { bestInHindsight } from '../../../src/simulation/hindsight/best-in-hindsight.ts';
import { limitsOf } from '../../../src/simulation/hindsight/limits-of.ts';
import { replayOf } from '../../../src/simulation/hindsight/replay-of.ts';
import { invented, smallBin } from './small-bin.ts';

/** Twenty-four days of wet corn, which does not last them at rest. */
const SPEC = smallBin(invented(24, 0.7, 0), 0.2, 0.165);
const REPLAY = replayOf(SPEC);
const BLOCKS = Array.from({ length: 96 }, (_, i) => ({ from: 6 * i, to: 6 * i + 6 }));
const playedOn = playAll(REPLAY, limitsOf(SPEC), () => 1);

describe('the search forward', () => {
  it('gives the best, and others that wear the grain less, each as it is when it is played', () => {
    const limits = limitsOf(SPEC, 3 * playedOn.lifeUsed);
    const found = beam(REPLAY, limits, BLOCKS, 20, [new Uint8Array(96).fill(1)]);
    const played = found.map(({ ways }) => playAll(REPLAY, limits, (hour) => ways[Math.floor(hour / 6)]));
    expect(found.length).toBeGreaterThan(2);
    found.forEach(({ cost, shortfall }, i) => {
      expect(played[i].spent).toBe(false);
      expect(played[i].cost).toBeCloseTo(cost, 9);
      expect(played[i].shortfall).toBeCloseTo(shortfall, 9);
    });
    const [best, ...others] = played;
    expect(best.shortfall).toBe(0);
    for (const { shortfall, cost } of others) expect(shortfall > 0 || cost > best.cost).toBe(true);
    expect(Math.min(...others.map(({ lifeUsed }) => lifeUsed))).toBeLessThan(0.7 * best.lifeUsed);
  });

  it('comes to the end where the storage life binds, by what parts late from a schedule that does', () => {
    const limits = limitsOf(SPEC, 1.2 * playedOn.lifeUsed);
    expect(beam(REPLAY, limits, BLOCKS, 20)).toEqual([]);
    const [best] = beam(REPLAY, limits, BLOCKS, 20, [new Uint8Array(96).fill(1)]);
    expect(best.shortfall).toBe(0);
    expect(best.cost).toBeLessThan(0.9 * playedOn.cost);
    const whole = bestInHindsight(SPEC, { limits, widths: [20] });
    expect(whole?.reaches).toBe(true);
    expect(whole?.cost).toBeLessThanOrEqual(best.cost);
  });
});
