import { expect, test } from 'vitest';
import { inOrder } from '../../../src/analysis/fronts/in-order.ts';

const at = (fanHours: number, within: number) => ({
  fanHours,
  interval: [fanHours - within, fanHours + within] as [number, number],
});

test('one sensor that moved far too early is the odd one, not the three that follow each other', () => {
  expect(inOrder([at(100, 10), at(200, 10), at(20, 10), at(300, 10)])).toEqual([true, true, false, true]);
});

test('a step back within what both intervals leave open stays', () => {
  // 210 - 15 = 195 is no later than 200 + 10.
  expect(inOrder([at(210, 15), at(200, 10)])).toEqual([true, true]);
  // 210 - 4 = 206 is later than 200 + 4.
  expect(inOrder([at(210, 4), at(200, 4)]).filter((kept) => kept)).toHaveLength(1);
});

test('nothing is made of nothing', () => {
  expect(inOrder([])).toEqual([]);
});
