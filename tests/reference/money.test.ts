import { describe, expect, it } from 'vitest';
import { waterRemovedKg } from '../../src/money/per-water.ts';
import { moneyChecks } from '../../src/notebook/methods/money-checks.ts';
import { agrees, provenanceNote } from './read-reference.ts';

const LB_KG = 0.45359237;

describe('published money arithmetic (tests/reference/money.csv: extension sheets, handbooks, reprints)', () => {
  const checks = moneyChecks();
  it('is all here', () => {
    expect(checks).toHaveLength(39);
    expect(checks.filter((check) => check.misfit !== '')).toHaveLength(7);
  });
  for (const check of checks.filter((one) => one.misfit === '')) {
    it(`${check.group}, ${check.at}: ${check.printed} ${check.unit}${provenanceNote(check)}`, () => {
      expect(agrees(check)).toBe(true);
    });
  }
  for (const check of checks.filter((one) => one.misfit !== '')) {
    it(`${check.group}: ${check.printed} ${check.unit} has no answer: ${check.misfit}`, () => {
      expect(check.ours).toBeNull();
    });
  }
  it('water removed is the shrink of the weight: 1000 lb from 25 to 12 % give off 147.7 lb (NCH-61)', () => {
    const waterKg = waterRemovedKg(1000 * LB_KG, 0.25, 0.12);
    expect(Math.abs(waterKg / LB_KG - 147.7)).toBeLessThanOrEqual(0.05);
  });
});
