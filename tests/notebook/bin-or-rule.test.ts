import { describe, expect, it } from 'vitest';
import type { BinReview } from '../../src/analysis/types.ts';
import { crossedParts } from '../../src/analysis/what-if/crossed-parts.ts';
import type { Crossed, CrossedBin } from '../../src/analysis/what-if/crossed-types.ts';
import { estimate, withheld } from '../../src/base/estimate.ts';
import { strategyCrossedSection } from '../../src/notebook/strategy-crossed.ts';
import { Units } from '../../src/report/units.ts';

const UNITS = new Units('us', 'USD', 'America/Chicago');
const REVIEWS = ['B1', 'B2', 'B3'].map(
  (id) => ({ bin: { id, name: `Bin ${id}`, grain: { crop: 'corn' } } }) as unknown as BinReview,
);

function crossedOf(costs: number[][]): Crossed {
  const bins: CrossedBin[] = costs.map((row, b) => ({
    binId: `B${b + 1}`,
    cells: row.map((cost, w) => ({
      wayId: ['always-on', 'night-hours'][w],
      own: b === w,
      perBushel: estimate(cost, cost, cost),
      perBushelPoint: withheld('-'),
      overOwn: estimate(cost / row[b], cost / row[b], cost / row[b]),
      reached: true,
      reaching: 5,
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

describe('every way on every bin', () => {
  // Rows differ by a factor 2, columns by 3: shares ln2^2 : ln3^2 = 0.480 : 1.207, 28 % and 72 %.
  it('tells bin from rule', () => {
    const said = strategyCrossedSection(
      crossedOf([
        [0.02, 0.06],
        [0.04, 0.12],
      ]),
      REVIEWS,
      UNITS,
    );
    const text = said.entries?.[0].text ?? '';
    expect(text).toMatch(/the bin makes 28 ?%.* the way 72 ?%.* 0 ?%/);
    expect(text).toMatch(/Bin B2 costs 2(\.0+)? .*what Bin B1 does, “night hours” 3(\.0+)? .*what “always on” does/);
    const rows = said.tables?.[0].rows ?? [];
    expect(rows).toHaveLength(4);
    expect(rows[0]).toMatchObject({ bin: 'Bin B1', of: 'itself', reaches: 'yes, 5 of 6 runs' });
    expect(rows[1]).toMatchObject({ way: 'Night hours', of: 'Bin B2' });
    expect(said.tables?.[0].columns.map(({ label }) => label).filter((label) => label.startsWith('Cost'))).toEqual([
      'Cost',
      'Cost per point',
    ]);
    // Night hours, the second bin's own way, cost three times the other's there.
    expect(said.figures?.[0].title).toBe('Another bin’s way reaches the target for less in 1 of 2 bins');
    expect(said.figures?.[0].alt).toMatch(/Bin B2: Always on 0\.04.*; Night hours \(its own\) 0\.12/);
    expect(said.notes?.at(-1)).toBe('Bin B3 is not among the bins run: It does not fit.');
  });

  it('is withheld without models', () => {
    expect(strategyCrossedSection(undefined, REVIEWS, UNITS).lead).toContain('Withheld');
    // A farm of one bin has no other to hold beside it.
    const alone = crossedOf([[0.02, 0.06]]);
    const one = strategyCrossedSection({ ...alone, bins: alone.bins.slice(0, 1) }, REVIEWS, UNITS);
    expect([one.lead, one.tables]).toEqual([expect.stringContaining('there is no second bin'), undefined]);
    const none = { ways: [], bins: [{ binId: 'B3', cells: [], why: 'It does not fit.' }], parts: [] };
    expect(strategyCrossedSection(none, REVIEWS, UNITS).lead).toContain('no bin’s model can be trusted');
  });
});
