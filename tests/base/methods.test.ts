import { expect, it } from 'vitest';
import { METHODS } from '../../src/base/methods/methods.ts';
import { oneSystem } from '../../src/report/one-system.ts';

it('states every temperature for both kinds of reader, so that no page shows two systems in one definition', () => {
  const texts = METHODS.flatMap(({ statement, constants }) => [statement, ...constants]);
  expect(texts.filter((text) => text.includes('°F')).length).toBeGreaterThan(5);
  expect(texts.map((text) => oneSystem(text, 'us')).filter((text) => /\d °C/.test(text))).toEqual([]);
  expect(texts.map((text) => oneSystem(text, 'si')).filter((text) => /\d °F/.test(text))).toEqual([]);
});
