import { describe, expect, it } from 'vitest';
import { fanSeason } from '../../../src/analysis/fan/fan-season.ts';
import { nameplateMisfit } from '../../../src/analysis/fan/nameplate-misfit.ts';
import { FAN, fanTable, H } from './known-fan.ts';

const hp = (horsepower: number) => ({ ...FAN, nameplateW: horsepower * 745.7 });
/** 100 h at so many kW. */
const ran = (kilowatt: number, energyFrom: 'current' | 'meter' | 'nameplate' = 'current') => ({
  energyFrom,
  onHours: 100,
  energyKwh: 100 * kilowatt,
});

describe('measured power beside the nameplate', () => {
  // A motor of 1 hp draws 0.746 / 0.88 = 0.85 kW at full load; 8.8 kW are those of a fan of 10 hp.
  it('8.8 kW by current of a fan of 1 hp is 10 times what it can draw', () => {
    expect(nameplateMisfit(hp(1), ran(8.8))).toMatch(
      /^Fan F1 draws 8\.8 kW by its current, 10 times what its nameplate draws at full load \(0\.85 kW\): one of the two is wrong/,
    );
    expect(nameplateMisfit(hp(10), ran(8.8))).toBeNull();
  });
  it('is told from twice on and below a quarter', () => {
    // 10 hp draw 8.47 kW.
    expect(nameplateMisfit(hp(10), ran(16.9))).toBeNull();
    expect(nameplateMisfit(hp(10), ran(17.1))).toMatch(/2 times/);
    expect(nameplateMisfit(hp(10), ran(2.13))).toBeNull();
    expect(nameplateMisfit(hp(10), ran(2.1, 'meter'))).toMatch(/2\.1 kW by its meter, 25 % of what/);
  });
  it('says nothing where the nameplate is all there is, or the fan hardly ran', () => {
    expect(nameplateMisfit(hp(1), ran(8.8, 'nameplate'))).toBeNull();
    expect(nameplateMisfit(hp(1), { ...ran(8.8), onHours: 3, energyKwh: 26.4 })).toBeNull();
  });
  it('stands with the fan that its log tells of', () => {
    const rows = Array.from({ length: 60 }, (_, h) => ({
      time: Date.UTC(2024, 9, 1) + h * H,
      current: h > 10 && h < 40 ? 25 : 0.1,
    }));
    // √3 x 230 V x 25 A x 0.85 = 8.47 kW.
    expect(fanSeason(hp(1), fanTable(rows)).misfit).toMatch(/^Fan F1 draws 8\.5 kW by its current/);
    expect('misfit' in fanSeason(hp(10), fanTable(rows))).toBe(false);
  });
});
