import { describe, expect, it } from 'vitest';
import { bedPressurePa } from '../../src/bin/airflow-resistance.ts';
import { airPowerW, fanWarmingByPressureK, hpPerThousandBushels } from '../../src/bin/fan-power.ts';
import { resistanceCurveOf } from '../../src/bin/resistance-curves.ts';
import { velocityOfCfmPerBushel } from '../../src/bin/specific-airflow.ts';
import { readReference } from './read-reference.ts';

const FT_M = 0.3048;
const IN_WATER_PA = 249.08891; // NIST SP 811
const CFM_M3S = FT_M ** 3 / 60;
const LB_FT3_KG_M3 = 16.018463;
const BTU_LB_F_J_KGK = 4186.8;

const rows = readReference('fans');
const rowOf = (id: string) => rows.find((row) => row.id === id) ?? expect.fail(`no row ${id}`);

/** Shaft power for corn at 1 cfm/bu, packed, hp per 1000 bu. */
function cornHp(depthFt: number, efficiency: number): number {
  const velocity = velocityOfCfmPerBushel(1, depthFt * FT_M);
  const pressure = bedPressurePa(resistanceCurveOf('corn'), velocity, depthFt * FT_M, 1.5);
  return hpPerThousandBushels(airPowerW(pressure, 1000 * CFM_M3S) / efficiency, 1000);
}

// Rows of the collection on full-load currents, fan types and roof vents bear on nothing in these modules.
describe('published facts on fans (tests/reference/fans.csv)', () => {
  it.each([
    ['fanheat-formula', 1, 1],
    ['fanheat-formula-50', 5, 0.5],
  ])('%s: warming of air through a fan', (id, inches, efficiency) => {
    const row = rowOf(id);
    const density = 0.075 * LB_FT3_KG_M3;
    const warming = fanWarmingByPressureK(inches * IN_WATER_PA, efficiency, density, 0.24 * BTU_LB_F_J_KGK);
    expect(Math.abs(warming * 1.8 - Number(row.expected))).toBeLessThanOrEqual(Number(row.tolerance));
  });
  it('airhp: cfm times inches over 6356 is horsepower in the air (memory)', () => {
    expect(rowOf('airhp').inputs).toBe('cfm x in. / 6356');
    // The rule takes an inch of water at 68 degF, 5.192 lb/ft2, 0.2 % lighter than the conventional inch. 6356: four digits.
    const inchPa = 5.192 * 47.880259;
    const hp = hpPerThousandBushels(airPowerW(3 * inchPa, 10_000 * CFM_M3S), 1000);
    expect(Math.abs(hp / ((10_000 * 3) / 6356) - 1)).toBeLessThan(1 / 6356);
  });
  it(`hp-per-1000: natural-air corn to 18 ft takes ${rowOf('hp-per-1000').expected} hp per 1000 bu at 1 cfm/bu, for fans of 50 to 60 %`, () => {
    const [least, most] = rowOf('hp-per-1000').expected.split('-').map(Number);
    for (const efficiency of [0.5, 0.6]) {
      expect(cornHp(18, efficiency)).toBeGreaterThanOrEqual(least);
      expect(cornHp(18, efficiency)).toBeLessThanOrEqual(most);
    }
  });
  it('1 hp per 1000 bu gives about 1 cfm/bu in 18 to 20 ft of corn (common practice), and not in deeper grain', () => {
    for (const depthFt of [18, 19, 20]) {
      expect(cornHp(depthFt, 0.55)).toBeGreaterThan(0.8);
      expect(cornHp(depthFt, 0.55)).toBeLessThan(1.25);
    }
    expect(cornHp(25, 0.55)).toBeGreaterThan(1.6);
    expect(cornHp(30, 0.55)).toBeGreaterThan(2.5);
  });
});
