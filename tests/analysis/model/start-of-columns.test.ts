import { expect, it } from 'vitest';
import type { BinLog } from '../../../src/analysis/model/bin-log.ts';
import { LAYERS } from '../../../src/analysis/model/layers-of.ts';
import { startOfColumns } from '../../../src/analysis/model/run-spec-of.ts';

it('columns start at their own temperature, and at the moisture that all cables tell of a layer', () => {
  const profile = (tempC: number, moistureDb: number) => ({
    heightM: Float64Array.of(1),
    tempC: Float64Array.of(tempC),
    moistureDb: Float64Array.of(moistureDb),
  });
  // The second cable reads more than the first, as a cable whose sensors err together does.
  const log = {
    bin: { goal: 'dry' },
    fan: { on: [] },
    depthM: 4,
    cables: [{ share: 0.25 }, { share: 0.75 }],
  } as unknown as BinLog;
  const columns = [[1], [0], []].map((cables) => ({ areaShare: 1 / 3, airShare: 1, cables, usual: false }));
  const { tempC, moistureDb } = startOfColumns(log, [profile(20, 0.18), profile(16, 0.2)], 0.5, columns);
  expect(tempC).toHaveLength(3 * LAYERS);
  expect([tempC[0], tempC[LAYERS], tempC[2 * LAYERS]]).toEqual([16.5, 20.5, 17.5]);
  for (const one of moistureDb) expect(one).toBeCloseTo(0.195, 12);
});
