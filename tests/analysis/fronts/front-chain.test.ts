import { describe, expect, it } from 'vitest';
import { type ChainPlace, frontChain, frontChains } from '../../../src/analysis/fronts/front-chain.ts';

/** Sensors a metre apart from where the air enters; each with [fan hours, support] of its passages. */
const cable = (...passages: [number, number][][]): ChainPlace[] =>
  passages.map((told, i) => ({
    fromEntryM: i + 1,
    passages: told.map(([fanHours, weight]) => ({ fanHours, weight, aheadC: 20, behindC: 10 })),
  }));
const hoursOf = (places: ChainPlace[]) =>
  frontChain(places).map((passage, i) => (passage < 0 ? null : places[i].passages[passage].fanHours));

// Hand-made: a front of ten fan hours a metre.
describe('the front along a cable', () => {
  it('is what each sensor tells, where each tells one moment in order', () => {
    expect(hoursOf(cable([[10, 2]], [[20, 2]], [[30, 2]], [[40, 2]]))).toEqual([10, 20, 30, 40]);
    expect(hoursOf(cable([[17, 2]]))).toEqual([17]);
  });
  it('bears a step back that the readings may have made', () => {
    expect(hoursOf(cable([[10, 2]], [[12, 2]], [[11, 2]], [[14, 2]]))).toEqual([10, 12, 11, 14]);
  });
  it('takes the second best moment of a sensor where only that one fits', () => {
    const second: [number, number][] = [
      [70, 2],
      [20, 1.2],
    ];
    expect(hoursOf(cable([[10, 2]], second, [[30, 2]], [[40, 2]]))).toEqual([10, 20, 30, 40]);
  });
  it('leaves out one odd sensor rather than turn the others', () => {
    expect(hoursOf(cable([[10, 2]], [[60, 2]], [[30, 2]], [[40, 2]]))).toEqual([10, null, 30, 40]);
    expect(hoursOf(cable([[40, 2]], [[20, 2]], [[30, 2]], [[40, 2]]))).toEqual([null, 20, 30, 40]);
  });
  it('of two falls that both run up the cable tells the steeper', () => {
    const both = (first: number, second: number) =>
      cable(
        ...[10, 20, 30, 40].map((hours): [number, number][] => [
          [hours, first],
          [hours + 30, second],
        ]),
      );
    expect(hoursOf(both(2, 1.6))).toEqual([10, 20, 30, 40]);
    expect(hoursOf(both(1.6, 2))).toEqual([40, 50, 60, 70]);
  });
  it('stays with one fall though the other is steeper at one sensor', () => {
    const told = (first: number, second: number, hours: number): [number, number][] => [
      [hours, first],
      [hours + 30, second],
    ];
    expect(hoursOf(cable(told(2, 1, 10), told(2, 1, 20), told(1.6, 2, 30), told(2, 1, 40)))).toEqual([10, 20, 30, 40]);
  });
});

describe('cables of one bin', () => {
  // Two falls of the air, entered at 0 and at 60 h, go up at 10 h a metre past sensors at 1, 2 and 3 m; in the second cable at 12.
  const HEIGHTS = [1, 2, 3];
  const cable = (paceHM: number, votes: readonly [first: number, second: number]): ChainPlace[] =>
    HEIGHTS.map((fromEntryM) => ({
      fromEntryM,
      passages: [0, 60].flatMap((enteredH, i) =>
        votes[i] > 0 ? [{ fanHours: enteredH + paceHM * fromEntryM, aheadC: 20, behindC: 10, weight: votes[i] }] : [],
      ),
    }));
  it('tell of one fall, the one that more speaks for in all of them', () => {
    expect(frontChains([cable(10, [1, 0.9]), cable(12, [0.8, 1.4])])).toEqual([
      [1, 1, 1],
      [1, 1, 1],
    ]);
    expect(frontChains([cable(10, [1.4, 0.8]), cable(12, [0.9, 1])])).toEqual([
      [0, 0, 0],
      [0, 0, 0],
    ]);
  });
  it('keep their own where the others’ fall is hardly to be seen', () => {
    expect(frontChains([cable(10, [1.4, 0]), cable(12, [0.3, 1])])).toEqual([
      [0, 0, 0],
      [1, 1, 1],
    ]);
  });
});
