import { describe, expect, it } from 'vitest';
import type { BinReview } from '../../src/analysis/types.ts';
import { estimate, withheld } from '../../src/base/estimate.ts';
import { tradeTable } from '../../src/notebook/bin-table.ts';
import {
  fanHoursTotal,
  sharedHoursNotes,
  sharedRuleNotes,
  totalOfGroups,
  unknownHoursTotal,
} from '../../src/notebook/shared-fans.ts';
import { exampleInput } from '../report/example-review.ts';

const { review, units } = exampleInput();
const hours = (one: BinReview) => one.fan.hours.value ?? 0;

describe('totals of bins that share a fan', () => {
  const [first, second] = review.bins;
  const twin = { ...first, bin: { ...first.bin, id: 'T', name: 'Twin' } };

  it('hold its hours once, and say so', () => {
    const all = [first, twin, second];
    const own = hours(second);
    // The twin's fan is the first's: its log says the same.
    const told = fanHoursTotal(all).total.value ?? 0;
    expect(told - own).toBeLessThan(1.01 * first.fan.fans[0].onHours + 0.01);
    expect(told).toBeLessThan(hours(first) + hours(twin) + own - 1);
    expect(tradeTable(all, units).total?.hours).toMatchObject({ value: told });
    expect(sharedHoursNotes(all)).toEqual([
      `Fan F1 serves ${first.bin.name} and Twin: each bin has its full hours and an equal part of its energy and cost; the total counts its hours once.`,
    ]);
    expect(sharedRuleNotes(all)[0]).toMatch(
      /^Fan F1 serves .* and Twin, and what it is run for one it does to the other\./,
    );
  });

  it('say nothing of hours that no bin of the fan has', () => {
    const left = { ...first, fan: { ...first.fan, hours: withheld('Its log is left out.') } };
    expect(sharedHoursNotes([left, { ...left, bin: twin.bin }, second])).toEqual([]);
    expect(sharedHoursNotes([first, { ...left, bin: twin.bin }])).toHaveLength(1);
  });

  it('are the plain sum where no fan is shared', () => {
    expect(fanHoursTotal([first, second]).total.value).toBeCloseTo(hours(first) + hours(second), 9);
    expect(sharedHoursNotes([first, second])).toEqual([]);
  });

  it('tell how many bins are in them, not how many groups', () => {
    const total = totalOfGroups([[1, 2], [3]], [estimate(5, 4, 6), withheld('No log.')]);
    expect(total).toEqual({ total: { value: 5, interval: [4, 6], why: null }, of: '2 of 3 bins' });
  });

  it('of hours not known are missing where no bin’s hours are known, and not 0', () => {
    const none = {
      ...first,
      fan: { ...first.fan, hours: withheld('The fan log ends before any grain was in.'), unknownHours: null },
    };
    expect(unknownHoursTotal([none])).toEqual(withheld('The fan log ends before any grain was in.'));
    expect(unknownHoursTotal([first, none]).value).toBe(first.fan.unknownHours);
  });
});
