import { describe, expect, it } from 'vitest';
import { compareBins } from '../../../src/analysis/compare/compare-bins.ts';
import { failedBin } from '../../../src/analysis/failed-bin.ts';
import type { BinReview, FanSpans } from '../../../src/analysis/types.ts';
import { estimate, withheld } from '../../../src/base/estimate.ts';
import { exampleInput } from '../../report/example-review.ts';
import { madeBin } from './made-bin.ts';

const { loaded } = exampleInput();

function compare(reviews: readonly BinReview[]) {
  const season = { ...loaded.season, bins: reviews.map((one) => one.bin) };
  return compareBins({ ...loaded, season }, reviews);
}
const of = (comparison: ReturnType<typeof compare>, id: string) => {
  const found = comparison.bins.find((one) => one.binId === id);
  if (found === undefined) throw new Error(id);
  return found;
};

const cheap = madeBin({ id: 'A', unitCost: estimate(0.02, 0.018, 0.023) });
const middle = madeBin({ id: 'B', unitCost: estimate(0.024, 0.021, 0.028) });
const dear = madeBin({ id: 'C', unitCost: estimate(0.03, 0.026, 0.035) });

describe('bins that can be ranked', () => {
  it('share places where their intervals overlap, and are held against the cheapest', () => {
    const comparison = compare([dear, cheap, middle]);
    expect(comparison.groups).toEqual([
      { goal: 'dry', crop: 'corn', measure: 'costPerBushelPoint', binIds: ['A', 'B', 'C'] },
    ]);
    expect(comparison.bins.map((one) => [one.binId, one.rank, one.why])).toEqual([
      ['C', { best: 2, worst: 3, of: 3 }, null],
      ['A', { best: 1, worst: 2, of: 3 }, null],
      ['B', { best: 1, worst: 3, of: 3 }, null],
    ]);
    expect(of(comparison, 'A').ratio).toBeNull();
    expect(of(comparison, 'C').ratio).toMatchObject({ againstId: 'A', sameCrop: true });
  });

  it('are told by what their goal buys: points, points added, or bushels alone', () => {
    const pair = (goal: BinReview['bin']['goal']) =>
      compare(['A', 'B'].map((id) => madeBin({ id, goal, points: estimate(goal === 'dry' ? 3 : -3, -4, 4) }))).groups;
    expect(pair('dry')[0].measure).toBe('costPerBushelPoint');
    expect(pair('condition')[0].measure).toBe('costPerBushelPointAdded');
    expect(pair('cool')[0].measure).toBe('costPerBushel');
    expect(pair('hold')[0].measure).toBe('costPerBushel');
  });
});

describe('bins that are not ranked say why', () => {
  it('one alone, one of another crop, one of another goal', () => {
    const wheat = madeBin({ id: 'W', crop: 'wheat', unitCost: estimate(0.04, 0.035, 0.045) });
    const cool = madeBin({ id: 'K', goal: 'cool' });
    const comparison = compare([cheap, dear, wheat, cool]);
    expect(of(comparison, 'W')).toMatchObject({
      rank: null,
      why: expect.stringContaining('the only wheat bin run to dry'),
    });
    // Beside, not ranked with, the cheapest of its goal.
    expect(of(comparison, 'W').ratio).toMatchObject({ againstId: 'A', sameCrop: false });
    expect(of(comparison, 'K')).toMatchObject({ rank: null, ratio: null, why: expect.stringContaining('run to cool') });
    expect(of(compare([cheap]), 'A')).toMatchObject({
      rank: null,
      ratio: null,
      why: 'There is no other bin to rank it with.',
    });
  });

  it('of two that are each alone with their crop, the dearer is held against the cheaper and not back', () => {
    const wheat = madeBin({
      id: 'W',
      crop: 'wheat',
      cost: estimate(1800, 1700, 1900),
      unitCost: estimate(0.06, 0.05, 0.07),
    });
    const comparison = compare([cheap, wheat]);
    expect(comparison.groups).toEqual([]);
    expect(of(comparison, 'W').ratio?.againstId).toBe('A');
    expect(of(comparison, 'A').ratio).toBeNull();
  });

  it('one whose points or cost are withheld, by the reason of that', () => {
    const why = 'The points removed in N cannot be told from none: their interval reaches zero.';
    const comparison = compare([cheap, dear, madeBin({ id: 'N', unitCost: withheld(why) })]);
    expect(of(comparison, 'N')).toMatchObject({ rank: null, why, ratio: null });
    // The others are ranked among themselves.
    expect(of(comparison, 'C').rank).toEqual({ best: 2, worst: 2, of: 2 });
  });

  it('one that broke', () => {
    const comparison = compare([cheap, dear, failedBin({ ...dear.bin, id: 'X', name: 'X' }, 'planted')]);
    expect(of(comparison, 'X')).toMatchObject({ rank: null, factors: null });
    expect(of(comparison, 'X').why).toBe('X could not be worked out whole: planted.');
    expect(of(comparison, 'X').conditions.air.why).toContain('planted');
  });

  it('two on one fan: how its cost parts is an assumption', () => {
    const shared = ['S', 'T'].map((id) => madeBin({ id, fanIds: ['F9'] }));
    const comparison = compare([cheap, dear, ...shared]);
    expect(of(comparison, 'S').why).toContain('Fan F9 also serves T');
    expect(of(comparison, 'T').why).toContain('Fan F9 also serves S');
    expect(of(comparison, 'A').rank?.of).toBe(2);
  });

  it('one whose fan log leaves out part of the storage, at either end', () => {
    // Filled on day 0, unloaded on day 150 of the example.
    const day = 86_400_000;
    const { filledMs, unloadedMs } = cheap.bin.grain as { filledMs: number; unloadedMs: number };
    const logged = (id: string, fromMs: number, toMs: number): BinReview => {
      const spans: FanSpans = {
        startMs: Float64Array.of(fromMs, fromMs + day),
        endMs: Float64Array.of(fromMs + day, toMs),
        state: Uint8Array.of(1, 0),
        powerW: Float64Array.of(5000, 0),
      };
      const made = madeBin({ id });
      return { ...made, fan: { ...made.fan, spans } };
    };
    const comparison = compare([
      logged('late', filledMs + 20 * day, unloadedMs),
      logged('early', filledMs, unloadedMs - 30 * day),
      logged('whole', filledMs + day, unloadedMs - day),
    ]);
    expect(of(comparison, 'late').why).toContain('begins 20 days after');
    expect(of(comparison, 'early').why).toContain('ends 30 days before');
    expect(of(comparison, 'whole').why).toContain('the only bin run to dry');
  });
});

it('fifty bins have places from first to last', () => {
  const many = Array.from({ length: 50 }, (_, i) =>
    madeBin({ id: `B${i}`, unitCost: estimate(0.02 + i / 1000, 0.0196 + i / 1000, 0.0204 + i / 1000) }),
  );
  const { bins } = compare(many);
  // 0.8 thousandths wide, one apart: none overlaps.
  expect(bins.map((one) => [one.rank?.best, one.rank?.worst])).toEqual(many.map((_, i) => [i + 1, i + 1]));
});
