import { describe, expect, it } from 'vitest';
import { heldByLog } from '../../scripts/bench/coverage/front-cases.ts';

const hourly = (from: number, to: number) => Array.from({ length: to - from + 1 }, (_, i) => from + i);

describe('whether a log holds an arrival', () => {
  // A front steepest at 20 h, half-way at 18 h, the fan running for 80 h: behind it is the mean from 26 to 50 h.
  it('does where readings go on', () => {
    expect(heldByLog(hourly(0, 80), 18, 20, 80)).toBe(true);
  });
  it('does not where the arrival falls into a hole of over 12 fan hours', () => {
    expect(heldByLog([...hourly(0, 10), ...hourly(22, 80)], 18, 20, 80)).toBe(true);
    expect(heldByLog([...hourly(0, 9), ...hourly(22, 80)], 18, 20, 80)).toBe(false);
  });
  it('does not where most of the hours behind the front are not read: 24 of them, 14 lost from 36 on, 12 from 38', () => {
    expect(heldByLog(hourly(0, 36), 18, 20, 80)).toBe(false);
    expect(heldByLog(hourly(0, 38), 18, 20, 80)).toBe(true);
    expect(heldByLog([...hourly(0, 30), ...hourly(44, 80)], 18, 20, 80)).toBe(false);
  });
  it('does where the fan stopped before the hole: what was not run cannot be missed', () => {
    expect(heldByLog(hourly(0, 40), 18, 20, 40)).toBe(true);
  });
  it('does not without a reading before the front came', () => {
    expect(heldByLog(hourly(19, 80), 18, 20, 80)).toBe(false);
    expect(heldByLog([], 18, 20, 80)).toBe(false);
  });
});
