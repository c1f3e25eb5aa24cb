import { describe, expect, it } from 'vitest';
import { chosenInterval } from '../../../src/analysis/moisture/chosen-interval.ts';
import { firmPart } from '../../../src/analysis/moisture/error-part.ts';

const choice = (...choices: { moves: number; weight: number }[]) => ({ ...firmPart('a choice', 1), choices });

describe('the interval of a value that a choice may move', () => {
  it('is that of the joined errors where there is no choice', () => {
    // 1.645: the usual printed table of the normal distribution
    const [low, high] = chosenInterval(3, [firmPart('one', 0.3), firmPart('other', 0.4)]);
    expect(low).toBeCloseTo(3 - 1.6449 * 0.5, 3);
    expect(high).toBeCloseTo(3 + 1.6449 * 0.5, 3);
  });

  it('is lopsided where the other answer lies to one side', () => {
    // By hand: far apart, the lower 5 % are the lower tenth of the half that is moved (z 1.2816); upwards the value's own 90 % counts (z 1.6449).
    const [low, high] = chosenInterval(10, [firmPart('noise', 0.1), choice({ moves: -4, weight: 0.5 })]);
    expect(low).toBeCloseTo(6 - 0.12816, 2);
    expect(high).toBeCloseTo(10 + 0.16449, 4);
  });

  it('leaves out an answer that is rarer than what the interval leaves out', () => {
    const [low] = chosenInterval(10, [firmPart('noise', 0.1), choice({ moves: -4, weight: 0.02 })]);
    expect(low).toBeGreaterThan(9.7);
  });

  it('adds up the moves of two choices', () => {
    const two = [choice({ moves: -1, weight: 0.5 }), choice({ moves: -2, weight: 0.5 })];
    // A quarter has both: its lower fifth (z 0.8416) is below.
    const [low, high] = chosenInterval(0, [firmPart('noise', 0.05), ...two]);
    expect(low).toBeCloseTo(-3 - 0.8416 * 0.05, 2);
    expect(high).toBeCloseTo(1.6449 * 0.05, 4);
  });

  it('holds the value itself, and needs no other error', () => {
    expect(chosenInterval(5, [choice({ moves: 2, weight: 0.99 })])).toEqual([5, 7]);
  });
});
