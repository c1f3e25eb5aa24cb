import { describe, expect, it } from 'vitest';
import { STALLED, TOO_SMALL, tellStalled } from '../../../src/analysis/fronts/stalled.ts';
import type { FrontArrival } from '../../../src/analysis/types.ts';

const arrival = (cable: string, heightM: number, fanHours: number | null, why: string | null = null): FrontArrival => ({
  cable,
  sensor: 1,
  heightM,
  arrivedMs: fanHours === null ? null : fanHours * 3_600_000,
  fanHours,
  aheadC: 15,
  behindC: 5,
  why,
});

describe('a front that stalled on one cable', () => {
  it('did not get there, where the other cables saw it at that height', () => {
    const told = tellStalled([arrival('C1', 4, 30), arrival('C2', 4.5, 32), arrival('C4', 4.2, null, TOO_SMALL)], 'up');
    expect(told.map((one) => one.why)).toEqual([null, null, STALLED]);
  });
  it('is no front where hardly anybody saw one, or where only one other cable could tell', () => {
    const few = [arrival('C1', 4, 30), arrival('C2', 4, null, TOO_SMALL), arrival('C3', 4, null, TOO_SMALL)];
    expect(tellStalled(few, 'up').map((one) => one.why)).toEqual([null, TOO_SMALL, TOO_SMALL]);
    const two = [arrival('C1', 4, 30), arrival('C2', 4, null, TOO_SMALL)];
    expect(tellStalled(two, 'up')[1].why).toBe(TOO_SMALL);
    const far = [arrival('C1', 1, 3), arrival('C2', 1, 3), arrival('C3', 6, null, TOO_SMALL)];
    expect(tellStalled(far, 'up')[2].why).toBe(TOO_SMALL);
  });
  it('did not stall below a sensor of the same cable that it came to', () => {
    const passed = [arrival('C1', 2, 9), arrival('C2', 2, 9), arrival('C4', 2, null, TOO_SMALL), arrival('C4', 4, 20)];
    expect(tellStalled(passed, 'up')[2].why).toBe(TOO_SMALL);
    expect(tellStalled(passed, 'down')[2].why).toBe(STALLED);
  });
});
