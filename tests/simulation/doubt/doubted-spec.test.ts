import { describe, expect, it } from 'vitest';
import { cubicAt } from '../../../src/simulation/bed/cubic-table.ts';
import { type Doubt, doubtedSpec } from '../../../src/simulation/doubt/doubted-spec.ts';
import { runSeason } from '../../../src/simulation/run/run-season.ts';
import { alwaysOn } from '../../../src/simulation/strategies/always-on.ts';
import { inventedBin, inventedHours } from '../run/invented-bin.ts';

const NONE: Doubt = { airFactor: 1, moistureWb: 0, rateFactor: 1, shortFactor: 1 };
const bin = inventedBin(inventedHours({ count: 240 }));

describe('doubtedSpec', () => {
  it('without a doubt is the bin as fitted, which runs as it would', () => {
    expect(runSeason(doubtedSpec(bin, NONE), alwaysOn)).toEqual(runSeason(bin, alwaysOn));
  });

  it('moves air, moisture and rate and nothing else', () => {
    const spec = doubtedSpec(
      { ...bin, start: { tempC: new Float64Array(20).fill(12), moistureDb: new Float64Array(20).fill(0.25) } },
      { airFactor: 0.9, moistureWb: 0.01, rateFactor: 2, shortFactor: 1 },
    );
    const { blower, moistureDb } = spec.levels[0];
    expect(blower).toEqual({ ...bin.levels[0].blower, airM3M2S: 0.9 * bin.levels[0].blower.airM3M2S });
    // 17 % and 20 % wet basis, a point wetter: 18/82 and 21/79 of dry matter.
    expect(moistureDb).toBeCloseTo(18 / 82, 12);
    expect(spec.start?.moistureDb[7]).toBeCloseTo(21 / 79, 12);
    for (const tempC of [-10, 3.3, 25]) {
      expect(cubicAt(spec.bed.medium.rate, tempC)).toBeCloseTo(2 * cubicAt(bin.bed.medium.rate, tempC), 15);
    }
    expect({ ...spec.bed, medium: null }).toEqual({ ...bin.bed, medium: null });
  });

  it('takes air from the column that has least and gives it to the others', () => {
    const bed = { ...bin.bed, airShares: [1.05, 0.8], areaShares: [0.8, 0.2] };
    const { airShares } = doubtedSpec({ ...bin, bed }, { ...NONE, shortFactor: 0.9 }).bed;
    // By hand: 0.9 x 0.8 = 0.72; what is left for the others is (1 - 0.2 x 0.72) / 0.8 = 1.07.
    expect(airShares![1]).toBeCloseTo(0.72, 12);
    expect(airShares![0]).toBeCloseTo(1.07, 12);
  });

  it('dries later with less air and wetter grain', () => {
    const dried = (doubt: Doubt) => runSeason(doubtedSpec(bin, doubt), alwaysOn).outcome.endMoistureWb;
    expect(dried({ ...NONE, airFactor: 0.95, moistureWb: 0.0015 })).toBeGreaterThan(dried(NONE) + 0.001);
    expect(dried({ ...NONE, airFactor: 1.05, moistureWb: -0.0015 })).toBeLessThan(dried(NONE) - 0.001);
  });
});
