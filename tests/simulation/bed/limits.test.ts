import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { relativeHumidityOfRatio } from '../../../src/air/humidity-ratio.ts';
import { halve } from '../../../src/base/halve.ts';
import { equilibriumMoistureWb } from '../../../src/grain/equilibrium.ts';
import { isothermOf } from '../../../src/grain/isotherm.ts';
import { type Bed, newBed } from '../../../src/simulation/bed/bed.ts';
import { mediumOf } from '../../../src/simulation/bed/medium-of.ts';
import { passAir } from '../../../src/simulation/bed/pass-air.ts';
import { setLevel } from '../../../src/simulation/bed/set-level.ts';
import { filledBed, grainHumidity, meanWb, ratioOf, SEA_PA } from './filled-bed.ts';

const NEAR = { thinLayer: 'near-equilibrium' };
/** kg/m2 in an hour: about 1 cfm/bu through 5 m. */
const STRONG = 300;

const blow = (bed: Bed, hours: number, kgM2: number, tempC: number, ratio: number) => {
  for (let hour = 0; hour < hours; hour++) passAir(bed, kgM2, 3600, tempC, ratio);
};
const hottest = (array: Float64Array) => Math.max(...array);

describe('a bed in which nothing should change', () => {
  it('moves in proportion to the air, and so not at all as there is none', () => {
    const moved = [1, 0.1, 0.01, 0.001].map((kgM2) => {
      const bed = filledBed(20, 0.18);
      passAir(bed, kgM2, 3600, -5, 0.001);
      return { heat: 20 * 20 - bed.tempC.reduce((sum, t) => sum + t, 0), water: 0.18 - meanWb(bed), kgM2 };
    });
    // Cold dry air: it takes heat and water, of so little the same part from each kg, within a percent from 0.1 kg/m2 on.
    for (const key of ['heat', 'water'] as const) {
      const each = moved.map((one) => one[key] / one.kgM2);
      for (const one of each) expect(one, key).toBeGreaterThan(0);
      for (const one of each.slice(1)) expect(Math.abs(one / each[3] - 1), key).toBeLessThan(0.01);
    }
  });

  it.each(['corn', 'soybean', 'wheat', 'durum'])(
    '%s in balance with the air that enters stays so for a month, by either way of its rate',
    (crop) => {
      for (const options of [{}, NEAR]) {
        const medium = mediumOf(crop, 600, options);
        const wb = equilibriumMoistureWb(isothermOf(crop), 12, 0.7);
        const bed = filledBed(12, wb, { medium });
        blow(bed, 720, STRONG, 12, ratioOf(12, 0.7));
        // What a convergence of 1e-5 of moisture and the tables leave.
        for (let i = 0; i < 20; i++) {
          expect(Math.abs(bed.tempC[i] - 12)).toBeLessThan(1e-3);
          expect(Math.abs(bed.moistureDb[i] / (1 + bed.moistureDb[i]) - wb)).toBeLessThan(1e-5);
        }
      }
    },
  );

  it.each(['corn', 'wheat'])('%s in balance with saturated air lets it pass as it came', (crop) => {
    const medium = mediumOf(crop, 600);
    // Near 1 humidity hangs on moisture so little that the driest such grain stands for all wetter: a ten-thousandth is left.
    const wb = halve(0.1, 0.44, (one) => grainHumidity(medium, 10, one / (1 - one)) < 0.9999);
    expect(wb).toBeLessThan(0.43);
    const bed = filledBed(10, wb, { medium });
    blow(bed, 240, STRONG, 10, ratioOf(10, 1));
    expect(meanWb(bed)).toBeCloseTo(wb, 3);
    for (const t of bed.tempC) expect(t).toBeCloseTo(10, 2);
    expect(bed.leaving[0]).toBeCloseTo(10, 2);
    expect(bed.leaving[1] / ratioOf(10, 1)).toBeCloseTo(1, 3);
  });

  it.each(['corn', 'soybean', 'wheat', 'durum'])(
    'saturated air of the grain’s temperature never dries %s, and wets and warms what is drier',
    (crop) => {
      for (const options of [{}, NEAR]) {
        for (const wb of [0.08, 0.15, 0.22, 0.3]) {
          const bed = filledBed(10, wb, { medium: mediumOf(crop, 600, options) });
          const start = wb / (1 - wb);
          const before = new Float64Array(20).fill(start);
          for (let hour = 0; hour < 240; hour++) {
            passAir(bed, STRONG, 3600, 10, ratioOf(10, 1));
            // 1e-5: what the search for a layer's moisture lets stand.
            bed.moistureDb.forEach((m, i) => void expect(m, `${wb}`).toBeGreaterThan(before[i] - 1e-5));
            before.set(bed.moistureDb);
          }
          // Where the air enters it is wetter by a tenth of a point at least, and the heat that bound the water went up.
          expect(bed.moistureDb[0] - start, `${wb}`).toBeGreaterThan(0.001);
          expect(hottest(bed.tempC), `${wb}`).toBeGreaterThan(10);
        }
      }
    },
  );
});

describe('what comes to an end', () => {
  it.each(['corn', 'soybean', 'wheat', 'barley', 'canola'])('%s ends at the moisture of the air’s balance', (crop) => {
    const bed = filledBed(20, 0.2, { medium: mediumOf(crop, 600) });
    blow(bed, 24 * 400, STRONG, 15, ratioOf(15, 0.6));
    const end = equilibriumMoistureWb(isothermOf(crop), 15, 0.6);
    for (const m of bed.moistureDb) expect(m / (1 + m)).toBeCloseTo(end, 4);
    for (const t of bed.tempC) expect(t).toBeCloseTo(15, 3);
  });

  it('a kinetic bed tends to the near-equilibrium one as the airflow falls', () => {
    // The same air in all over ever longer times: the rate then limits less and less.
    const apart = [600, 150, 40, 10].map((kgM2) => {
      const [kinetic, near] = [{}, NEAR].map((options) => {
        const bed = filledBed(10, 0.2, { medium: mediumOf('corn', 609, options) });
        blow(bed, 60_000 / kgM2, kgM2, 10, ratioOf(10, 0.6));
        return bed.moistureDb;
      });
      return hottest(kinetic.map((m, i) => Math.abs(m - near[i])));
    });
    for (let i = 1; i < apart.length; i++) expect(apart[i]).toBeLessThan(0.6 * apart[i - 1]);
    expect(apart[3]).toBeLessThan(0.002);
  });

  it('a rate twenty times as fast is nearer to balance than the crop’s own, one of a twentieth farther', () => {
    const [slow, own, fast, near] = [{ rateFactor: 0.05 }, {}, { rateFactor: 20 }, NEAR].map((options) => {
      const bed = filledBed(10, 0.2, { medium: mediumOf('corn', 609, options) });
      blow(bed, 240, STRONG, 10, ratioOf(10, 0.6));
      return bed.moistureDb;
    });
    const off = (one: Float64Array) => one.reduce((sum, m, i) => sum + Math.abs(m - near[i]), 0);
    expect(off(fast)).toBeLessThan(0.3 * off(own));
    expect(off(slow)).toBeGreaterThan(3 * off(own));
  });
});

describe('order', () => {
  const run = (tempC: number, ratio: number) => {
    const bed = filledBed(8, 0.19);
    blow(bed, 400, STRONG, tempC, ratio);
    return bed;
  };

  it('drier air never leaves a layer wetter', () => {
    const runs = [0.4, 0.55, 0.7, 0.85, 1].map((rh) => run(10, ratioOf(10, rh)).moistureDb);
    for (let i = 1; i < runs.length; i++) {
      // 1e-5: what the search for a layer's moisture lets stand.
      runs[i].forEach((m, layer) => void expect(m).toBeGreaterThan(runs[i - 1][layer] - 1e-5));
    }
  });

  it('warmer air of the same water never leaves the mean wetter; a layer ahead of the drying it may wet a little, as warming does', () => {
    const means = [14, 12, 10, 8].map((tempC) => meanWb(run(tempC, ratioOf(8, 0.8))));
    for (let i = 1; i < means.length; i++) expect(means[i]).toBeGreaterThan(means[i - 1]);
  });

  it('more air never leaves the mean wetter while it dries', () => {
    const means = [0, 20, 80, 300, 900].map((kgM2) => {
      const bed = filledBed(10, 0.2);
      blow(bed, 300, kgM2, 10, ratioOf(10, 0.5));
      return meanWb(bed);
    });
    for (let i = 1; i < means.length; i++) expect(means[i]).toBeLessThan(means[i - 1]);
  });

  it('drawn down it is the same bed upside down', () => {
    const [up, down] = (['up', 'down'] as const).map((air) => {
      const bed = filledBed(15, 0.2, { air });
      blow(bed, 200, STRONG, 5, ratioOf(5, 0.6));
      return bed;
    });
    up.tempC.forEach((t, i) => void expect(down.tempC[19 - i]).toBeCloseTo(t, 12));
    up.moistureDb.forEach((m, i) => void expect(down.moistureDb[19 - i]).toBeCloseTo(m, 14));
  });
});

describe('warm damp air into cold grain', () => {
  it.each([-25, -10, 0, 5])('of %d degC: what condenses stays on it, no air leaves above saturation', (grainC) => {
    for (const wb of [0.12, 0.18, 0.3]) {
      for (const options of [{}, NEAR]) {
        const bed = filledBed(grainC, wb, { medium: mediumOf('corn', 609, options) });
        const [tempC, ratio] = [18, ratioOf(18, 1)];
        let before = bed.moistureDb.reduce((sum, m) => sum + m, 0);
        let left = 0;
        for (let hour = 0; hour < 96; hour++) {
          passAir(bed, STRONG, 3600, tempC, ratio);
          left += STRONG * (ratio - bed.leaving[1]);
          expect(relativeHumidityOfRatio(bed.leaving[0], bed.leaving[1], SEA_PA)).toBeLessThanOrEqual(1 + 1e-6);
          // Wet throughout: no layer gives water up to saturated air.
          const now = bed.moistureDb.reduce((sum, m) => sum + m, 0);
          expect(now).toBeGreaterThan(before - 1e-9);
          before = now;
        }
        const start = (20 * wb) / (1 - wb);
        expect((before - start) * bed.dryKgM2[0]).toBeCloseTo(left, 6);
        expect(left).toBeGreaterThan(0);
      }
    }
  });
});

describe('whatever comes in', () => {
  const drawn = fc.record({
    crop: fc.constantFrom('corn', 'soybean', 'wheat', 'durum', 'oats', 'rice', 'canola', 'sunflower'),
    rateFactor: fc.double({ min: 0.05, max: 20, noNaN: true }),
    near: fc.boolean(),
    layers: fc.integer({ min: 2, max: 40 }),
    depthM: fc.double({ min: 0.1, max: 15, noNaN: true }),
    fill: fc.double({ min: 0.01, max: 1, noNaN: true }),
    grainC: fc.double({ min: -35, max: 40, noNaN: true }),
    wb: fc.double({ min: 0.03, max: 0.4, noNaN: true }),
    steps: fc.array(
      fc.record({
        tempC: fc.double({ min: -40, max: 45, noNaN: true }),
        rh: fc.double({ min: 0, max: 1, noNaN: true }),
        kgM2: fc.double({ min: 0.01, max: 3000, noNaN: true }),
        seconds: fc.double({ min: 30, max: 21_600, noNaN: true }),
      }),
      { minLength: 10, maxLength: 20 },
    ),
  });

  it('state stays finite, grain never without water, and no air leaves with more than it can hold', () => {
    fc.assert(
      fc.property(drawn, ({ crop, rateFactor, near, layers, depthM, fill, grainC, wb, steps }) => {
        const medium = mediumOf(crop, 620, near ? NEAR : { rateFactor });
        const bed = newBed({ medium, depthM, layers, pressurePa: SEA_PA });
        setLevel(bed, depthM * fill, grainC, wb / (1 - wb));
        for (const { tempC, rh, kgM2, seconds } of steps) {
          passAir(bed, kgM2, seconds, tempC, ratioOf(tempC, rh));
          for (let i = 0; i < bed.filled; i++) {
            expect(Number.isFinite(bed.tempC[i])).toBe(true);
            expect(bed.moistureDb[i]).toBeGreaterThanOrEqual(0);
          }
          const [leavesC, leavesRatio] = bed.leaving;
          expect(leavesRatio).toBeGreaterThanOrEqual(0);
          // 5e-5: what the search lets stand in the air's humidity ratio.
          expect(leavesRatio).toBeLessThan(ratioOf(leavesC, 1) + 5e-5);
        }
      }),
      { seed: 9, numRuns: 500 },
    );
  });
});

describe('columns', () => {
  it('run each with its own airflow, and leave mixed by their air', () => {
    const single = [0.5, 1.5].map((share) => {
      const bed = filledBed(20, 0.18);
      blow(bed, 100, STRONG * share, 5, ratioOf(5, 0.7));
      return bed;
    });
    const both = filledBed(20, 0.18, { airShares: [0.5, 1.5] });
    blow(both, 100, STRONG, 5, ratioOf(5, 0.7));
    expect([...both.tempC]).toEqual([...single[0].tempC, ...single[1].tempC]);
    expect([...both.moistureDb]).toEqual([...single[0].moistureDb, ...single[1].moistureDb]);
    const [slow, fast] = single.map((bed) => bed.leaving);
    expect(both.leaving[0]).toBeCloseTo((0.5 * slow[0] + 1.5 * fast[0]) / 2, 12);
    expect(both.leaving[1]).toBeCloseTo((0.5 * slow[1] + 1.5 * fast[1]) / 2, 15);
  });
});

describe('newBed', () => {
  const medium = mediumOf('corn', 609);
  const good = { medium, depthM: 5, layers: 20, pressurePa: SEA_PA };
  it.each([
    ['depthM', { depthM: 0 }, /depthM/],
    ['layers', { layers: 1 }, /layers/],
    ['layers in part', { layers: 2.5 }, /whole number/],
    ['pressure', { pressurePa: Number.NaN }, /pressurePa/],
    ['wall', { wallWM3K: -1 }, /wallWM3K/],
    ['columns', { airShares: [1, 1], areaShares: [1] }, /2 airShares but 1 areaShares/],
    ['areas', { airShares: [1, 1], areaShares: [0.4, 0.4] }, /sum to 0.8/],
    ['flows', { airShares: [1, 1.2] }, /average 1.1/],
  ] as const)('refuses %s that no bin has', (_, part, message) => {
    expect(() => newBed({ ...good, ...part })).toThrow(message);
  });
});
