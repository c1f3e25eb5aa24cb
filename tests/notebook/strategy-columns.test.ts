import { describe, expect, it } from 'vitest';
import type { RunColumn } from '../../src/analysis/what-if/what-if-types.ts';
import { columnNotes } from '../../src/notebook/strategy-columns.ts';
import type { Played } from '../../src/notebook/strategy-words.ts';
import type { Goal } from '../../src/season/season.ts';

const notedOf = (goal: Goal, ...columns: RunColumn[]) =>
  columnNotes({ review: { bin: { goal } }, whatIf: { columns } } as unknown as Played).join(' ');
const noted = (...columns: RunColumn[]) => notedOf('dry', ...columns);
const RING = { areaShare: 0.94, airShare: 1.03, cables: ['C2', 'C3'], usual: false };

describe('columnNotes', () => {
  it('says which cables hang where air is short, and that it was fitted', () => {
    expect(noted({ areaShare: 0.06, airShare: 0.58, cables: ['C1'], usual: false }, RING)).toContain(
      '6 % of the floor with 0.58 times the bin’s mean airflow (cable C1, fitted) and 94 % with 1.03 times the bin’s mean airflow (cables C2 and C3, fitted)',
    );
    expect(noted({ areaShare: 0.4, airShare: 0.8, cables: ['C1', 'C4'], usual: false }, RING)).toContain(
      '(cables C1 and C4, fitted)',
    );
  });

  it('says that a core without a cable is taken, not measured', () => {
    expect(noted({ areaShare: 1 / 16, airShare: 0.81, cables: [], usual: true }, RING)).toContain(
      'common practice, not measured here',
    );
  });

  it('names what comes to the target last, by the goal, and cables in their order', () => {
    const short = { areaShare: 0.4, airShare: 0.8, cables: ['C4', 'C1'], usual: false };
    expect(notedOf('dry', short, RING)).toMatch(/cables C1 and C4, .* the wettest layer/);
    expect(notedOf('condition', short, RING)).toContain('the wettest layer');
    expect(notedOf('cool', short, RING)).toContain('the warmest layer');
  });

  it('has nothing to say of one column, and says so where air is even', () => {
    expect(noted({ areaShare: 1, airShare: 1, cables: ['C1'], usual: false })).toBe('');
    expect(
      noted({ areaShare: 0.5, airShare: 0.99, cables: ['C1'], usual: false }, { ...RING, airShare: 1.01 }),
    ).toContain('even');
  });
});
