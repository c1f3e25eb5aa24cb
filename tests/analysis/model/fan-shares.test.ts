import { describe, expect, it } from 'vitest';
import { fanShares } from '../../../src/analysis/model/fan-shares.ts';
import { FAN_OFF, FAN_ON, FAN_UNKNOWN } from '../../../src/analysis/types.ts';

const H = 3_600_000;

describe('the logged fan hour by hour', () => {
  // On from 0:30 to 2:15, off to 4:00, unknown to 4:45, on to 6:00.
  const edges = [0.5, 2.25, 4, 4.75, 6];
  const spans = {
    startMs: Float64Array.from(edges.slice(0, 4), (h) => h * H),
    endMs: Float64Array.from(edges.slice(1), (h) => h * H),
    state: Uint8Array.of(FAN_ON, FAN_OFF, FAN_UNKNOWN, FAN_ON),
    powerW: Float64Array.of(1, 0, Number.NaN, 1),
  };

  it('gives each hour its part on and its part unknown', () => {
    const { on, unknown } = fanShares(spans, 0, 8);
    expect([...on]).toEqual([0.5, 1, 0.25, 0, 0.25, 1, 0, 0]);
    expect([...unknown]).toEqual([0.5, 0, 0, 0, 0.75, 0, 1, 1]);
  });

  it('knows nothing without a log', () => {
    const { on, unknown } = fanShares(null, 0, 2);
    expect([...on, ...unknown]).toEqual([0, 0, 1, 1]);
  });
});
