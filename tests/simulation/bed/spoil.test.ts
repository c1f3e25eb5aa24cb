import { describe, expect, it } from 'vitest';
import { cornDryMatterLoss } from '../../../src/grain/corn-loss.ts';
import { cornReferenceHours, cornStorageHours } from '../../../src/grain/corn-storage.ts';
import { wheatStorageHours } from '../../../src/grain/germination-storage.ts';
import { STORAGE_RULES, type StorageRule, storageRuleOf } from '../../../src/grain/storage-rules.ts';
import { ACCOUNT } from '../../../src/simulation/bed/bed.ts';
import { bedImbalance } from '../../../src/simulation/bed/bed-totals.ts';
import { mediumOf } from '../../../src/simulation/bed/medium-of.ts';
import { spoil } from '../../../src/simulation/bed/spoil.ts';
import { storageLifeOf } from '../../../src/simulation/bed/storage-life.ts';
import { filledBed } from './filled-bed.ts';

describe('spoil', () => {
  it('uses the share of the storage rule’s time, hour by hour', () => {
    const bed = filledBed(15, 0.2);
    spoil(bed, 1);
    expect(bed.lifeUsed[3]).toBeCloseTo(1 / cornStorageHours(15, 0.2), 9);
    bed.tempC.fill(25);
    bed.moistureDb.fill(0.22 / 0.78);
    spoil(bed, 10);
    expect(bed.lifeUsed[3]).toBeCloseTo(1 / cornStorageHours(15, 0.2) + 10 / cornStorageHours(25, 0.22), 9);
  });

  it('has lost 0.5 % of the dry matter when the time is over, with the heat and the water of its burning', () => {
    const bed = filledBed(20, 0.2);
    const hours = cornStorageHours(20, 0.2);
    const [tempC, moistureDb] = [bed.tempC[0], bed.moistureDb[0]];
    // The state is put back after each step: the rule speaks of grain held as it is.
    for (let i = 0; i < 100; i++) {
      spoil(bed, hours / 100);
      bed.tempC.fill(tempC);
      bed.moistureDb.fill(moistureDb);
    }
    expect(bed.lifeUsed[0]).toBeCloseTo(1, 9);
    expect(bed.medium.storage?.lossOfShare?.(1)).toBeCloseTo(0.005, 9);
    expect(cornDryMatterLoss(cornReferenceHours(0.005))).toBeCloseTo(0.005, 9);
    const dry = 609 * 5;
    // By hand: 180 g of glucose give 108 g of water and 2816 kJ (textbook).
    expect(bed.account[ACCOUNT.waterBySpoiling] / dry).toBeCloseTo((0.005 * 108) / 180, 7);
    expect(bed.account[ACCOUNT.heatBySpoiling] / dry / ((0.005 * 2816e3) / 0.18)).toBeCloseTo(1, 2);
  });

  it('warms and wets the grain by just that: 78 kJ/kg of dry matter for 0.5 % would warm it by about 35 K', () => {
    const bed = filledBed(20, 0.2);
    bed.lifeUsed.fill(0.999);
    spoil(bed, cornStorageHours(20, 0.2) / 1000);
    const warmed = (bed.tempC[0] - 20) / (bed.account[ACCOUNT.heatBySpoiling] / (609 * 5));
    const heat = bed.medium.heatDryJKgK + bed.medium.heatPerMoistureJKgK * 0.25;
    // A few percent for the water that it brings, cold and little bound.
    expect(warmed * heat).toBeGreaterThan(0.9);
    expect(warmed * heat).toBeLessThan(1.02);
    expect(bedImbalance(bed).heat).toBeCloseTo(0, 12);
  });

  it('of a crop whose rule counts germination uses time and burns nothing', () => {
    const bed = filledBed(20, 0.16, { medium: mediumOf('wheat', 650) });
    spoil(bed, 24);
    expect(bed.lifeUsed[0]).toBeCloseTo(24 / wheatStorageHours(20, 0.16), 9);
    expect(bed.account[ACCOUNT.heatBySpoiling]).toBe(0);
    expect(bed.tempC[0]).toBeCloseTo(20, 12);
  });

  it('of a crop without a rule does nothing, and outside a rule’s range takes its nearest end', () => {
    const rice = filledBed(20, 0.2, { medium: mediumOf('rice', 600) });
    spoil(rice, 1000);
    expect([...rice.lifeUsed]).toEqual(new Array(20).fill(0));
    const cold = filledBed(-38, 0.1);
    spoil(cold, 1);
    expect(cold.lifeUsed[0]).toBeCloseTo(1 / cornStorageHours(-30, 0.13), 12);
  });

  it('ends at 60 degC and at a loss of 5 %, however long hot wet grain is left alone, and its books close', () => {
    const bed = filledBed(30, 0.28);
    for (let hour = 0; hour < 24 * 365; hour += 6) spoil(bed, 6);
    for (const t of bed.tempC) {
      expect(t).toBeLessThanOrEqual(61);
      expect(t).toBeGreaterThan(55);
    }
    expect(bed.medium.storage?.lossOfShare?.(bed.lifeUsed[0])).toBeCloseTo(0.05, 9);
    expect(Math.abs(bedImbalance(bed).heat)).toBeLessThan(1e-12);
    expect(Math.abs(bedImbalance(bed).water)).toBeLessThan(1e-12);
  });
});

describe('the table of a storage rule', () => {
  // Where a rule steps, as both say of themselves: corn by up to 9 % at 60 degF, wheat by up to a third at 19 %.
  const steps = (rule: StorageRule, tempC: number, moistureWb: number) =>
    rule.lossAtEnd === null ? Math.abs(moistureWb - 0.19) < 0.003 : Math.abs(tempC - 15.56) < 0.6;
  for (const crop of new Set(STORAGE_RULES.map((rule) => rule.crop))) {
    it(`${crop}: within 0.6 % of the rule wherever that does not step, and between its values where it does`, () => {
      const rule = storageRuleOf(crop);
      const [coldest, hottest] = rule.tempRangeC;
      const [driest, wettest] = rule.moistureRangeWb;
      const share = storageLifeOf(crop)?.sharePerHour as (tempC: number, moistureDb: number) => number;
      for (let t = coldest + 0.01; t < hottest; t += 0.737) {
        for (let m = driest + 1e-4; m < wettest; m += 0.00313) {
          const off = Math.abs(share(t, m / (1 - m)) * rule.hours(t, m) - 1);
          expect(off, `${t} degC, ${m}`).toBeLessThan(steps(rule, t, m) ? 0.4 : 0.006);
        }
      }
    });
  }
});
