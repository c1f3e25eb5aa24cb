import { describe, expect, it } from 'vitest';
import { cubicAt } from '../../../src/simulation/bed/cubic-table.ts';
import { doubtedSpec } from '../../../src/simulation/doubt/doubted-spec.ts';
import { DOUBTS, doubtsOf } from '../../../src/simulation/doubt/doubts.ts';
import { runSeason } from '../../../src/simulation/run/run-season.ts';
import { alwaysOn } from '../../../src/simulation/strategies/always-on.ts';
import { inventedBin, inventedHours } from '../run/invented-bin.ts';

const bin = inventedBin(inventedHours({ count: 240 }));

describe('doubtedSpec', () => {
  it('begins with the bin as fitted, which runs as it would', () => {
    expect(DOUBTS[0]).toEqual({ airFactor: 1, moistureWb: 0, rateFactor: 1, shortFactor: 1 });
    expect(runSeason(doubtedSpec(bin, DOUBTS[0]), alwaysOn)).toEqual(runSeason(bin, alwaysOn));
  });

  it('lets the moisture be as unsure as the isotherms leave it, never surer than usual', () => {
    const moistures = (openWb: number) => doubtsOf(openWb).map(({ moistureWb }) => moistureWb);
    expect(moistures(0.004).slice(0, 3)).toEqual([0, 0.004, -0.004]);
    expect(moistures(0.0001)).toEqual(moistures(0));
  });

  it('moves air, moisture and rate and nothing else', () => {
    const spec = doubtedSpec(
      { ...bin, start: { tempC: new Float64Array(20).fill(12), moistureDb: new Float64Array(20).fill(0.25) } },
      { airFactor: 0.9, moistureWb: 0.01, rateFactor: 2, shortFactor: 1 },
    );
    const { blower, moistureDb } = spec.levels[0];
    expect(blower).toEqual({ ...bin.levels[0].blower, dryAirKgM2S: 0.9 * bin.levels[0].blower.dryAirKgM2S });
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
    const { airShares } = doubtedSpec({ ...bin, bed }, { ...DOUBTS[0], shortFactor: 0.9 }).bed;
    // By hand: 0.9 x 0.8 = 0.72; what is left for the others is (1 - 0.2 x 0.72) / 0.8 = 1.07.
    expect(airShares![1]).toBeCloseTo(0.72, 12);
    expect(airShares![0]).toBeCloseTo(1.07, 12);
  });

  it('dries later with less air and wetter grain', () => {
    const dried = (doubt: (typeof DOUBTS)[number]) =>
      runSeason(doubtedSpec(bin, doubt), alwaysOn).outcome.endMoistureWb;
    expect(dried(DOUBTS[1])).toBeGreaterThan(dried(DOUBTS[0]) + 0.001);
    expect(dried(DOUBTS[2])).toBeLessThan(dried(DOUBTS[0]) - 0.001);
  });
});
