import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shareRanks } from '../../../src/analysis/compare/share-ranks.ts';

const places = (...intervals: [number, number][]) => shareRanks(intervals).map(({ best, worst }) => [best, worst]);

describe('shared places', () => {
  it('are single where every interval stands alone, in any order of the list', () => {
    expect(places([1, 2], [3, 4], [5, 6])).toEqual([
      [1, 1],
      [2, 2],
      [3, 3],
    ]);
    expect(places([5, 6], [1, 2], [3, 4])).toEqual([
      [3, 3],
      [1, 1],
      [2, 2],
    ]);
  });

  // A 1 to 3, B 2 to 5, C 4 to 6: B overlaps both, A and C part. By hand: nobody lies wholly below A, C wholly above it: 1 to 2.
  // Nobody lies wholly below or above B: 1 to 3. A lies wholly below C: 2 to 3.
  it('say overlap that is not transitive', () => {
    expect(places([1, 3], [2, 5], [4, 6])).toEqual([
      [1, 2],
      [1, 3],
      [2, 3],
    ]);
  });

  // A chain of five, each overlapping the next alone: of the middle one the first two's first lies below, the last above.
  it('of a chain widen towards its middle', () => {
    expect(places([0, 2], [1.5, 4], [3.5, 6], [5.5, 8], [7.5, 9])).toEqual([
      [1, 2],
      [1, 3],
      [2, 4],
      [3, 5],
      [4, 5],
    ]);
  });

  it('are shared by ends that touch, and by all where all overlap', () => {
    expect(places([1, 2], [2, 3])).toEqual([
      [1, 2],
      [1, 2],
    ]);
    expect(places([1, 9], [2, 8], [3, 7])).toEqual([
      [1, 3],
      [1, 3],
      [1, 3],
    ]);
    expect(shareRanks([[1, 2]])).toEqual([{ best: 1, worst: 1, of: 1 }]);
    expect(shareRanks([])).toEqual([]);
  });

  it('keep their definition, counted the long way round', () => {
    const interval = fc.tuple(fc.integer({ min: 0, max: 30 }), fc.integer({ min: 0, max: 12 }));
    fc.assert(
      fc.property(fc.array(interval, { minLength: 1, maxLength: 50 }), (drawn) => {
        const intervals = drawn.map(([low, width]): [number, number] => [low, low + width]);
        const ranks = shareRanks(intervals);
        intervals.forEach(([low, high], i) => {
          let below = 0;
          let above = 0;
          intervals.forEach(([otherLow, otherHigh], j) => {
            if (otherHigh < low) below += 1;
            if (otherLow > high) above += 1;
            // Overlap shares a place; one wholly below stands before, by both ends.
            const overlap = otherLow <= high && low <= otherHigh;
            if (overlap) expect(ranks[i].best).toBeLessThanOrEqual(ranks[j].worst);
            if (otherHigh < low) {
              expect(ranks[j].best).toBeLessThan(ranks[i].best);
              expect(ranks[j].worst).toBeLessThan(ranks[i].worst);
            }
          });
          expect(ranks[i]).toEqual({ best: 1 + below, worst: intervals.length - above, of: intervals.length });
        });
      }),
      { seed: 4, numRuns: 200 },
    );
  });
});
