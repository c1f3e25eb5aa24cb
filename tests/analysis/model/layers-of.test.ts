import { expect, it } from 'vitest';
import { LAYERS, layersOf } from '../../../src/analysis/model/layers-of.ts';
import type { Bin } from '../../../src/season/season.ts';

const layers = (goal: string, hours: number) =>
  layersOf({
    bin: { goal } as Bin,
    fan: { on: new Float64Array(2 * hours).fill(0.5), unknown: new Float64Array(0) } as never,
  });

it('a bed is run in finer layers where it is cooled or held by few fan hours', () => {
  expect(layers('hold', 100)).toBe(2 * LAYERS);
  expect(layers('cool', 249)).toBe(2 * LAYERS);
  expect(layers('cool', 251)).toBe(LAYERS);
  expect(layers('dry', 100)).toBe(LAYERS);
});
