import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SOURCES } from '../../src/base/sources/sources.ts';
import {
  cornDamageMultiplier,
  cornDryMatterLoss,
  cornMoistureMultiplier,
  cornReferenceHoursPerHour,
  cornTemperatureMultiplier,
} from '../../src/grain/corn-loss.ts';
import { cornReferenceHours, cornStorageHours } from '../../src/grain/corn-storage.ts';
import { STORAGE_RULES, storageRuleOf } from '../../src/grain/storage-rules.ts';

const SEEDED = { seed: 20240925, numRuns: 300 };
const moistures = fc.double({ min: 0.13, max: 0.35, noNaN: true });
const cold = fc.double({ min: -30, max: 15.5, noNaN: true });
const warm = fc.double({ min: 15.6, max: 40, noNaN: true });

describe('storage time of corn', () => {
  it('gives the loss back', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.0001, max: 0.05, noNaN: true }), (loss) => {
        expect(cornDryMatterLoss(cornReferenceHours(loss))).toBeCloseTo(loss, 12);
      }),
      SEEDED,
    );
  });
  it('is the time after which a sum over the hours at one state reaches the loss', () => {
    fc.assert(
      fc.property(
        cold,
        moistures,
        fc.constantFrom('low-temperature' as const, 'carried-down' as const),
        (t, m, form) => {
          const hours = cornStorageHours(t, m, { form });
          expect(cornDryMatterLoss(hours * cornReferenceHoursPerHour(t, m, form))).toBeCloseTo(0.005, 10);
        },
      ),
      SEEDED,
    );
  });
  it('falls with moisture, and with temperature on each side of 60 degF', () => {
    fc.assert(
      fc.property(fc.oneof(cold, warm), moistures, moistures, (t, x, y) => {
        fc.pre(Math.abs(x - y) > 1e-4);
        expect(cornStorageHours(t, Math.max(x, y))).toBeLessThan(cornStorageHours(t, Math.min(x, y)));
      }),
      SEEDED,
    );
    for (const side of [cold, warm]) {
      fc.assert(
        fc.property(side, side, moistures, (s, t, m) => {
          fc.pre(Math.abs(s - t) > 0.01);
          expect(cornStorageHours(Math.max(s, t), m)).toBeLessThan(cornStorageHours(Math.min(s, t), m));
        }),
        SEEDED,
      );
    }
  });
  it('falls with damage and rises with the multipliers of hybrid and fungicide', () => {
    const at = (options: object) => cornStorageHours(10, 0.2, options);
    expect(at({ damageFraction: 0.4 })).toBeLessThan(at({ damageFraction: 0.1 }));
    expect(at({ hybrid: 1.2, fungicide: 1.5 })).toBeCloseTo(1.8 * at({}), 6);
    expect(at({ loss: 0.0035 })).toBeLessThan(at({ loss: 0.005 }));
  });
  // Constants by hand from the recalled forms: at 60 degF, 25 % wet basis, 30 % damage all multipliers are near 1 (memory).
  it('is the reference at 60 degF, 25 % and 30 % damage: 230 h give 0.498 % (memory)', () => {
    expect(100 * cornDryMatterLoss(230)).toBeCloseTo(0.498, 3);
    expect(cornMoistureMultiplier(0.25)).toBeCloseTo(0.997, 3);
    expect(cornTemperatureMultiplier((60 - 32) / 1.8, 0.25, 'low-temperature')).toBeCloseTo(0.998, 3);
    expect(cornTemperatureMultiplier((60 - 32) / 1.8, 0.25, 'carried-down')).toBeCloseTo(0.995, 2);
    expect(cornDamageMultiplier(0.3)).toBeCloseTo(1.015, 3);
  });
  // The same forms in degC, as a second reading of them states: 32.3 exp(-0.1044 T - 1.856), exp(0.0183 T - 0.2847) and
  // 128.76 exp(-0.1458 T - 2.592) (memory); the digits of their constants are worth up to 0.1 %.
  it('has its multipliers of temperature by the forms in degC, the addition for wet corn among them (memory)', () => {
    for (const t of [16, 20, 25, 30, 38]) {
      for (const wb of [0.15, 0.19, 0.22, 0.25, 0.28, 0.33]) {
        const wet = Math.min(Math.max(wb - 0.19, 0), 0.09) * Math.exp(0.0183 * t - 0.2847);
        const byC = 32.3 * Math.exp(-0.1044 * t - 1.856) + wet;
        expect(Math.abs(cornTemperatureMultiplier(t, wb, 'low-temperature') / byC - 1)).toBeLessThan(1e-3);
      }
    }
    for (const t of [-10, 0, 15]) {
      const byC = 128.76 * Math.exp(-0.1458 * t - 2.592);
      expect(Math.abs(cornTemperatureMultiplier(t, 0.2, 'low-temperature') / byC - 1)).toBeLessThan(1e-3);
    }
  });
  it('refuses what is no number or out of range, and tells the range', () => {
    expect(() => cornStorageHours(Number.NaN, 0.2)).toThrow(/tempC is NaN; it must lie between -30 and 40/);
    expect(() => cornStorageHours(10, 0.11)).toThrow(/moistureWb is 0.11; it must lie between 0.13 and 0.35/);
    expect(() => cornStorageHours(10, 0.2, { loss: 0.5 })).toThrow(/loss is 0.5/);
    expect(() => cornStorageHours(10, 0.2, { damageFraction: 30 })).toThrow(/damageFraction is 30/);
  });
});

describe('storage rules', () => {
  it('take soybeans as corn some points wetter', () => {
    expect(storageRuleOf('soybean').hours(12, 0.14)).toBe(storageRuleOf('corn').hours(12, 0.14 + 0.02));
    expect(storageRuleOf('soybean', 'corn moved 3 points').hours(12, 0.14)).toBeLessThan(
      storageRuleOf('soybean').hours(12, 0.14),
    );
  });
  it('take cereals without their own as corn by its shorter form, and oil sunflower 5 points wetter', () => {
    const corn = storageRuleOf('corn', 'carried-down form');
    for (const crop of ['sorghum', 'barley', 'oats']) {
      expect(storageRuleOf(crop).hours(4, 0.18)).toBe(corn.hours(4, 0.18));
      expect(storageRuleOf(crop).honesty).toMatch(/A rule, not data/);
    }
    expect(storageRuleOf('sunflower').hours(4, 0.12)).toBe(corn.hours(4, 0.12 + 0.05));
    // The range that is told is the crop's own: 13 to 35 % of corn, less the points.
    expect(() => storageRuleOf('sunflower').hours(4, 0.07)).toThrow(
      /moistureWb is 0.07; it must lie between 0.08 and 0.3\./,
    );
    expect(() => storageRuleOf('soybean').hours(4, 0.1)).toThrow(
      /moistureWb is 0.1; it must lie between 0.11 and 0.33/,
    );
    expect(storageRuleOf('soybean').hours(4, 0.11)).toBe(storageRuleOf('corn').hours(4, 0.13));
    expect(storageRuleOf('sunflower').hours(4, 0.3)).toBe(corn.hours(4, 0.35));
  });
  it('for germination by hand: wheat 18 and 22 % at 20 degC, canola 10 % at 20 degC (constants from memory)', () => {
    // 6.234 - 3.8124 - 1.054 = 1.3676; 4.129 - 2.1934 - 1.152 = 0.7836; 6.224 - 3.02 - 1.38 = 1.824: logarithms of days
    expect(storageRuleOf('wheat').hours(20, 0.18) / 24).toBeCloseTo(10 ** 1.3676, 9);
    expect(storageRuleOf('wheat').hours(20, 0.22) / 24).toBeCloseTo(10 ** 0.7836, 9);
    expect(storageRuleOf('canola').hours(20, 0.1) / 24).toBeCloseTo(10 ** 1.824, 9);
  });
  // The two lines of the published equation do not meet: by hand at 19 %, 6.234 - 4.0242 - 0.0527 T against
  // 4.129 - 1.8943 - 0.0576 T, equal at 5.1 degC: colder the damper wheat is given up to 6 % more, warmer up to a third less (at 40 degC).
  it('for germination of wheat step at 19 %, as published: up by 6 % at 0 degC, down by a quarter at 30 degC', () => {
    const step = (t: number) => storageRuleOf('wheat').hours(t, 0.19 + 1e-9) / storageRuleOf('wheat').hours(t, 0.19);
    expect(step(0)).toBeCloseTo(10 ** 0.0249, 3);
    expect(step(5.08)).toBeCloseTo(1, 3);
    expect(step(30)).toBeCloseTo(10 ** -0.1221, 3);
  });
  it('for germination fall with moisture and temperature', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(storageRuleOf('wheat'), storageRuleOf('canola')),
        fc.double({ min: 0, max: 39, noNaN: true }),
        fc.double({ min: 0.12, max: 0.165, noNaN: true }),
        (rule, t, m) => {
          expect(rule.hours(t + 1, m)).toBeLessThan(rule.hours(t, m));
          expect(rule.hours(t, m + 0.005)).toBeLessThan(rule.hours(t, m));
        },
      ),
      SEEDED,
    );
    expect(() => storageRuleOf('wheat').hours(20, 0.11)).toThrow(
      /moistureWb is 0.11; it must lie between 0.12 and 0.24/,
    );
    expect(() => storageRuleOf('canola').hours(Number.NaN, 0.1)).toThrow(/tempC is NaN/);
  });
  it('name sources of the bibliography, and what there is when asked for what there is not', () => {
    const keys = new Set(SOURCES.map((source) => source.key));
    for (const rule of STORAGE_RULES) for (const key of rule.sourceKeys) expect(keys).toContain(key);
    expect(() => storageRuleOf('corn', 'fast')).toThrow(
      'no storage rule "fast" for corn; there are low-temperature form, carried-down form',
    );
    expect(() => storageRuleOf('rice')).toThrow(
      /no storage rule for crop "rice"; there are rules for corn, soybean, wheat, soft-wheat, durum, sorghum, barley, oats/,
    );
  });
});
