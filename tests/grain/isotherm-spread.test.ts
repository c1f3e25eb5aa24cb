import { describe, expect, it } from 'vitest';
import { isothermOf } from '../../src/grain/isotherm.ts';
import { equilibriumByIsotherm, moistureByOtherIsothermWb } from '../../src/grain/isotherm-spread.ts';

describe('the choice of isotherm', () => {
  it('moves the answer: corn at 70 degF and 60 % by all its editions, around the published 12.8 %', () => {
    // NDSU states 12.8 % (tests/reference/emc.csv); editions for one grain lie up to 2 points apart (reference notes).
    const answers = equilibriumByIsotherm('corn', (70 - 32) / 1.8, 0.6);
    expect(answers.map(({ isotherm }) => isotherm.name)).toContain('modified Oswin D245.5');
    const values = answers.map(({ moistureWb }) => 100 * (moistureWb ?? Number.NaN));
    expect(values).toHaveLength(5);
    expect(Math.min(...values)).toBeLessThan(12.8);
    expect(Math.max(...values)).toBeGreaterThan(12.8);
    expect(Math.max(...values) - Math.min(...values)).toBeLessThan(2);
  });
  it('tells a missing answer where an isotherm ends, and refuses no numbers', () => {
    const cold = equilibriumByIsotherm('corn', -25, 0.7);
    const missing = cold.filter(({ moistureWb }) => moistureWb === null).map(({ isotherm }) => isotherm.name);
    expect(missing).toEqual(['modified Chung-Pfost D245.5', 'modified Chung-Pfost D245.4']);
    const hot = equilibriumByIsotherm('soybean', 60, 0.1).filter(({ moistureWb }) => moistureWb === null);
    expect(hot.map(({ isotherm }) => isotherm.name)).toEqual(['modified Chung-Pfost D245.4']);
    expect(() => equilibriumByIsotherm('corn', Number.NaN, 0.7)).toThrow(/tempC is NaN/);
    expect(() => equilibriumByIsotherm('corn', 70, 0.7)).toThrow(/tempC is 70/);
    expect(() => equilibriumByIsotherm('rye', 10, 0.7)).toThrow(/no isotherm for crop "rye"/);
  });
  it('a cable’s moisture goes to another isotherm and back', () => {
    const henderson = isothermOf('corn');
    const older = isothermOf('corn', 'modified Chung-Pfost D245.4');
    const there = moistureByOtherIsothermWb(henderson, older, 8, 0.16);
    expect(there).not.toBeCloseTo(0.16, 3);
    expect(moistureByOtherIsothermWb(older, henderson, 8, there)).toBeCloseTo(0.16, 12);
  });
});
