import { expect, it } from 'vitest';
import { seedRange } from '../../scripts/bench/seed-range.ts';

it('is two rising numbers, or one', () => {
  expect(seedRange('9401-9420')).toEqual({ from: 9401, to: 9420 });
  expect(seedRange('9401')).toEqual({ from: 9401, to: 9401 });
});

it.each(['', 'x', '9420-9401', '9401-', '-3', '9401-9402-9403', '1.5'])('is not "%s"', (text) => {
  expect(() => seedRange(text)).toThrow('e.g. 9401-9420');
});
