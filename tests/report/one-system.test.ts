import { expect, it } from 'vitest';
import { oneSystem } from '../../src/report/one-system.ts';

it('keeps one of two units, also of amounts below zero written with a minus sign', () => {
  const text = 'in winter −7 to −1 °C (20 to 30 °F), at 3 °C (5.4 °F)';
  expect(oneSystem(text, 'us')).toBe('in winter 20 to 30 °F, at 5.4 °F');
  expect(oneSystem(text, 'si')).toBe('in winter −7 to −1 °C, at 3 °C');
});
