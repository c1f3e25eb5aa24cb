import { describe, expect, it } from 'vitest';
import { fanGroups, sharedFans } from '../../../src/analysis/energy/fan-groups.ts';
import { hoursTogether } from '../../../src/analysis/energy/hours-together.ts';
import type { Fan } from '../../../src/bin/fan.ts';
import { bin, FAN_T, powerRows, rest, review, seasonOf } from './by-hand-season.ts';

const ids = (groups: readonly (readonly { bin: { id: string } }[])[]) =>
  groups.map((group) => group.map((one) => one.bin.id).join(' '));
const of = (id: string, ...fanIds: string[]) => ({ bin: bin(id, fanIds) });

describe('bins that share fans', () => {
  it('are one group, also by way of a third; the order of the bins stays', () => {
    const bins = [of('A', 'F1'), of('B', 'F2', 'F3'), of('C', 'F1'), of('D'), of('E', 'F4', 'F2'), of('F', 'F4')];
    expect(ids(fanGroups(bins))).toEqual(['A C', 'B E F', 'D']);
    expect(ids(fanGroups([of('A', 'F1'), of('B', 'F2'), of('C', 'F1', 'F2')]))).toEqual(['A B C']);
    expect(sharedFans(bins)).toEqual(['F1', 'F2', 'F4']);
    expect(sharedFans([of('A', 'F1', 'F1')])).toEqual([]);
  });

  // F1 runs hours 10 to 110 at 15 kW, F2 hours 60 to 160 at 10 kW.
  const two: Fan = { ...FAN_T, id: 'F2' };
  const rows = [
    ...powerRows([rest(10), [100, 15_000], rest(90)]),
    ...powerRows([rest(60), [100, 10_000], rest(40)], 'F2'),
  ];
  const fans = (...own: string[][]) => {
    const season = seasonOf(
      [FAN_T, two],
      own.map((ids, i) => bin(`B${i + 1}`, ids)),
    );
    return own.map((_, i) => ({ fan: review(rows, season, i) }));
  };

  it('have a shared fan’s 100 h once; energy and cost are parted among them', () => {
    const shared = fans(['F1'], ['F1']);
    expect(shared.map(({ fan }) => fan.hours.value)).toEqual([100, 100]);
    expect(hoursTogether(shared).hours.value).toBe(100);
    expect(hoursTogether(shared).hours).toEqual(shared[0].fan.hours);
    // 100 h of 15 kW, 750 kWh a bin; 10 ct each.
    expect(shared.map(({ fan }) => fan.energyKwh.value)).toEqual([750, 750]);
    expect(shared.map(({ fan }) => fan.energyCost.value)).toEqual([75, 75]);
  });

  it('count clock hours where only one of their fans is shared: 10 to 160 are 150 h', () => {
    const mixed = fans(['F1', 'F2'], ['F2']);
    expect(mixed.map(({ fan }) => fan.hours.value)).toEqual([150, 100]);
    expect(hoursTogether(mixed).hours.value).toBe(150);
    expect(hoursTogether(mixed).unknownHours).toBe(0);
  });

  it('are told as far as the hours of one of them are known', () => {
    const one = fans(['F1'], ['F1', 'F9']);
    expect(one[1].fan.hours.value).toBeNull();
    expect(hoursTogether(one).hours.value).toBe(100);
    expect(hoursTogether([one[1]]).hours.why).toMatch(/No log tells what fan F9 did/);
  });
});
