import { describe, expect, it } from 'vitest';
import { airColumns } from '../../../src/analysis/model/air-columns.ts';
import type { BinLog } from '../../../src/analysis/model/bin-log.ts';

/** A bin of 10 m with cables at so many metres from its centre, each with its share of the floor. */
function logOf(cables: readonly { fromCentreM: number; share: number }[]): BinLog {
  const named = cables.map((one, k) => ({ ...one, id: `C${k + 1}`, cable: `C${k + 1}` }));
  return { bin: { diameterM: 10, cables: named }, cables: named } as unknown as BinLog;
}

const mean = (columns: ReturnType<typeof airColumns>) =>
  columns.reduce((sum, { areaShare, airShare }) => sum + areaShare * airShare, 0);
const area = (columns: ReturnType<typeof airColumns>) => columns.reduce((sum, { areaShare }) => sum + areaShare, 0);

describe('airColumns', () => {
  it('keeps a core that its own cable tells short of air apart from the rest', () => {
    const log = logOf([
      { fromCentreM: 0, share: 0.1 },
      { fromCentreM: 3, share: 0.45 },
      { fromCentreM: 3, share: 0.45 },
    ]);
    const columns = airColumns(log, [0.6, 1.02, 1.069]);
    expect(columns.map(({ cables }) => [...cables])).toEqual([[0], [1, 2]]);
    expect(columns[0].areaShare).toBeCloseTo(0.1, 12);
    // By hand: 0.1 x 0.6 + 0.45 x (1.02 + 1.069) = 1.00005, so 0.6 / 1.00005 and (1.02 + 1.069) / 2 / 1.00005.
    expect(columns[0].airShare).toBeCloseTo(0.59997, 5);
    expect(columns[1].airShare).toBeCloseTo(1.044448, 5);
    expect(mean(columns)).toBeCloseTo(1, 12);
  });

  it('takes a core in which no cable hangs as a sixteenth of the floor with a fifth less air (common practice)', () => {
    const columns = airColumns(logOf([{ fromCentreM: 3, share: 1 }]), [1]);
    expect(columns.map(({ cables }) => [...cables])).toEqual([[], [0]]);
    expect(columns[0].areaShare).toBeCloseTo(1 / 16, 12);
    expect(columns[0].airShare / columns[1].airShare).toBeCloseTo(0.8, 12);
    expect(mean(columns)).toBeCloseTo(1, 12);
  });

  it('takes the same core where all cables hang in it: they tell nothing of how it parts from the rest', () => {
    const columns = airColumns(logOf([{ fromCentreM: 0.5, share: 1 }]), [1]);
    expect(columns.map(({ cables, usual }) => [[...cables], usual])).toEqual([
      [[0], true],
      [[0], false],
    ]);
    expect(columns[0].airShare / columns[1].airShare).toBeCloseTo(0.8, 12);
    expect(area(columns)).toBeCloseTo(1, 12);
  });

  it('parts the rest where a side is short of air, whatever the order of its cables, and lists what has least first', () => {
    const shares = [0.04, 0.24, 0.24, 0.24, 0.24].map((share, k) => ({ share, fromCentreM: k === 0 ? 0 : 3 }));
    const columns = airColumns(logOf(shares), [0.95, 1.1, 0.75, 1.05, 1.1]);
    expect(columns.map(({ cables }) => [...cables].sort())).toEqual([[2], [0], [1, 3, 4]]);
    expect(area(columns)).toBeCloseTo(1, 12);
    expect(mean(columns)).toBeCloseTo(1, 12);
  });
});
