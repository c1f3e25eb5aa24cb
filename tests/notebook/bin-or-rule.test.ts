import { describe, expect, it } from 'vitest';
import type { BinReview } from '../../src/analysis/types.ts';
import { crossedParts } from '../../src/analysis/what-if/crossed-parts.ts';
import type { Crossed, CrossedBin } from '../../src/analysis/what-if/crossed-types.ts';
import { estimate, withheld } from '../../src/base/estimate.ts';
import { binOrRuleAnswer, binOrRuleKeys, binOrRulePointer } from '../../src/notebook/bin-or-rule-answer.ts';
import { againstSection, matrixSection } from '../../src/notebook/bin-or-rule-matrix.ts';
import { Units } from '../../src/report/units.ts';

const UNITS = new Units('us', 'USD', 'America/Chicago');
const REVIEWS = ['B1', 'B2', 'B3'].map(
  (id) => ({ bin: { id, name: `Bin ${id}`, grain: { crop: 'corn' } } }) as unknown as BinReview,
);

function crossedOf(costs: number[][], other = costs): Crossed {
  const bins: CrossedBin[] = costs.map((row, b) => ({
    binId: `B${b + 1}`,
    cells: row.map((cost, w) => ({
      wayId: ['always-on', 'night-hours'][w],
      own: b === w,
      perBushel: estimate(cost, cost, cost),
      perBushelPoint: withheld('-'),
      overOwn: estimate(cost / row[b], cost / row[b], cost / row[b]),
      runCosts: [cost, other[b][w]],
      reached: true,
      reaching: 6,
      runs: 6,
    })),
    why: null,
  }));
  const way = (id: string, title: string, binId: string) => ({ id, title, binIds: [binId], why: null });
  return {
    ways: [way('always-on', 'Always on', 'B1'), way('night-hours', 'Night hours', 'B2')],
    bins: [...bins, { binId: 'B3', cells: [], why: 'It does not fit.' }],
    parts: crossedParts(bins, new Map(bins.map(({ binId }) => [binId, 'dry' as const]))),
  };
}

/** Rows differ by a factor 2, columns by 3: shares ln2^2 : ln3^2 = 0.480 : 1.207, 28 % and 72 %. */
const TWO = crossedOf([
  [0.02, 0.06],
  [0.04, 0.12],
]);

describe('every way on every bin', () => {
  it('tells bin from rule', () => {
    const text = againstSection(TWO, REVIEWS, UNITS).entries?.[0].text ?? '';
    expect(text).toMatch(/the bin makes 28 ?%.* the way 72 ?%.* 0 ?%/);
    expect(text).toMatch(/Bin B2 costs 2(\.0+)? .*what Bin B1 does, “night hours” 3(\.0+)? .*what “always on” does/);
  });

  it('shows the matrix', () => {
    const said = matrixSection(TWO, REVIEWS, UNITS);
    const rows = said.tables?.[0].rows ?? [];
    expect(rows).toHaveLength(4);
    expect(rows[0]).toMatchObject({ bin: 'Bin B1', of: 'itself', reaches: 'yes, 6 of 6 runs' });
    expect(rows[1]).toMatchObject({ way: 'Night hours', of: 'Bin B2' });
    expect(said.tables?.[0].columns.map(({ label }) => label).filter((label) => label.startsWith('Cost'))).toEqual([
      'Cost',
      'Cost per point',
    ]);
    // Night hours, the second bin's own way, cost three times the other's there.
    expect(said.figures?.[0].title).toBe('Another bin’s way reaches the target for clearly less in 1 of 2 bins');
    expect(said.figures?.[0].alt).toMatch(/Bin B2: Always on 0\.04.*; Night hours \(its own\) 0\.12/);
    expect(said.notes?.at(-1)).toBe('Bin B3 is not among the bins run: It does not fit.');
  });

  it('answers in its first sentence, and names who would have done better in whose way', () => {
    const said = binOrRuleAnswer(TWO, REVIEWS, UNITS);
    expect(said).toMatch(
      /^In the 2 bins to be dried the way makes 72 ?% of the differences in cost, the bin 28 ?%, by the model\. /,
    );
    expect(said).toContain('Another bin’s way would have brought Bin B2 (always on) to the target for clearly less.');
    // 0.04 over 0.12, by the rule that season.yaml names for the bin, which its log need not have followed
    expect(said).toContain(
      'It costs 0.33 times as much there as the bin’s own way as the kit runs it by its rule, which is not what the hours in the log cost.',
    );
    expect(binOrRuleKeys(TWO).map(({ amount }) => amount)).toEqual([2, 1]);
    expect(binOrRulePointer(TWO, REVIEWS, UNITS)).toMatchObject({ lead: said, see: { file: 'bin-or-rule.html' } });
  });

  it('leaves open which makes more where the runs about the fit do', () => {
    const open = crossedOf(
      [
        [0.02, 0.06],
        [0.04, 0.12],
      ],
      [
        [0.02, 0.04],
        [0.06, 0.12],
      ],
    );
    expect(binOrRuleAnswer(open, REVIEWS, UNITS)).toMatch(
      /^In the 2 bins to be dried the log leaves open whether bin or way makes more of the differences in cost: the bin 28 % \(28 to 72\), the way 72 % \(28 to 72\), by the model\. /,
    );
    expect(againstSection(open, REVIEWS, UNITS).entries?.[0].text).toContain(
      '0 % is neither’s alone (by the model; ranges are lowest and highest of its runs).',
    );
  });

  it('tells of a way of its own that misses the target', () => {
    const bins = TWO.bins.map((bin) => ({
      ...bin,
      cells: bin.cells.map((cell) => (bin.binId === 'B2' && cell.own ? { ...cell, reached: false } : cell)),
    }));
    expect(binOrRuleAnswer({ ...TWO, bins }, REVIEWS, UNITS)).toContain(
      'as the bin’s own way as the kit runs it by its rule, which misses the target and is not what the hours in the log cost.',
    );
  });

  it('says of which bins it is that bin and way can’t be told apart', () => {
    const parts = (['dry', 'cool'] as const).map((goal) => ({
      ...{ goal, binIds: [], wayIds: [], split: null, ranges: null },
      why: 'Only one way brings each of these bins to its target.',
    }));
    const start = (of: typeof parts) => binOrRuleAnswer({ ...TWO, parts: of }, REVIEWS, UNITS);
    expect(start(parts)).toMatch(/^Bin and way can’t be told apart\. Bins to be dried: only one way brings each of/);
    expect(start(parts.slice(0, 1))).toMatch(/^Bin and way can’t be told apart\. Only one way brings each of/);
  });

  it('names no way that misses the target in a run about the fit', () => {
    const bins = TWO.bins.map((bin) => ({ ...bin, cells: bin.cells.map((cell) => ({ ...cell, reaching: 5 })) }));
    const said = binOrRuleAnswer({ ...TWO, bins }, REVIEWS, UNITS);
    expect(said).toContain('In no bin does another bin’s way clearly reach the target for less than its own.');
  });

  it('counts no bin as run where no way could be run on it', () => {
    const why = 'No sensor of Bin B1 has a log.';
    const none = withheld(why);
    const empty = { perBushel: none, perBushelPoint: none, overOwn: none, reached: null, reaching: 0, runs: 0 };
    const bins = TWO.bins.map((bin) => ({ ...bin, cells: bin.cells.map((cell) => ({ ...cell, ...empty })) }));
    const bare = { ...TWO, bins };
    expect(binOrRuleAnswer(bare, REVIEWS, UNITS)).toBe(`Can’t tell: no way could be run on any bin. ${why}`);
    expect(binOrRuleKeys(bare).map(({ amount }) => amount)).toEqual([0, null]);
    expect(matrixSection(bare, REVIEWS, UNITS).figures).toBeUndefined();
    expect(matrixSection(bare, REVIEWS, UNITS).notes?.[0]).toBe(`Bin B1 is not among the bins run: ${why}`);
  });

  it('claims no dearer ways, and draws nothing, where no way has a price', () => {
    const none = withheld('No tariff is stated.');
    const bins = TWO.bins.map((bin) => ({
      ...bin,
      cells: bin.cells.map((cell) => ({ ...cell, perBushel: none, overOwn: none })),
    }));
    const bare = { ...TWO, bins };
    expect(binOrRuleAnswer(bare, REVIEWS, UNITS)).toContain(
      'Whether another bin’s way costs less can’t be told. No tariff is stated.',
    );
    expect(binOrRuleKeys(bare).map(({ amount }) => amount)).toEqual([2, null]);
    expect(matrixSection(bare, REVIEWS, UNITS).figures).toEqual([]);
  });

  it('is withheld without models', () => {
    const none = { ways: [], bins: [{ binId: 'B3', cells: [], why: 'It does not fit.' }], parts: [] };
    // A farm of one bin has no other to hold beside it.
    const one = { ...TWO, bins: TWO.bins.slice(0, 1) };
    for (const [crossed, why] of [
      [undefined, 'were left out'],
      [none, 'no bin’s model can be trusted'],
      [one, 'there is no second bin'],
    ] as const) {
      expect(matrixSection(crossed, REVIEWS, UNITS)).toMatchObject({ lead: expect.stringContaining(why) });
      expect(matrixSection(crossed, REVIEWS, UNITS).tables).toBeUndefined();
      expect(againstSection(crossed, REVIEWS, UNITS).lead).toContain(why);
      expect(binOrRuleAnswer(crossed, REVIEWS, UNITS)).toMatch(new RegExp(`^Can’t tell: .*${why}`));
    }
  });
});
