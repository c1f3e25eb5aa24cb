import { expect, it } from 'vitest';
import { startMoistureDb } from '../../../src/simulation/run/start-moisture.ts';
import { inventedBin, inventedHours } from './invented-bin.ts';

const bin = inventedBin(inventedHours({ count: 24 }));

it('is the first level’s where nothing else is told', () => {
  expect(startMoistureDb(bin)).toBe(bin.levels[0].moistureDb);
});

it('weighs columns by their floor', () => {
  const { layers } = bin.bed;
  const start = {
    tempC: new Float64Array(2 * layers).fill(10),
    moistureDb: new Float64Array(2 * layers).fill(0.3, 0, layers).fill(0.2, layers),
  };
  const bed = { ...bin.bed, airShares: [0.6, 1.1], areaShares: [0.2, 0.8] };
  // 0.2 x 0.3 + 0.8 x 0.2
  expect(startMoistureDb({ ...bin, bed, start })).toBeCloseTo(0.22, 12);
});
