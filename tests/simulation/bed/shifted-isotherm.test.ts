import { describe, expect, it } from 'vitest';
import { isothermOf } from '../../../src/grain/isotherm.ts';
import { isothermHumidity } from '../../../src/grain/isotherm-equations.ts';
import { cubicAt } from '../../../src/simulation/bed/cubic-table.ts';
import { mediumOf } from '../../../src/simulation/bed/medium-of.ts';

const DENSITY = 620;
const SHIFT_DB = 0.006;

/** Humidity in balance by a medium's tables. */
function humidityOf(medium: ReturnType<typeof mediumOf>, tempC: number, moistureDb: number): number {
  return cubicAt(medium.humidity, cubicAt(medium.byTemp, tempC) * cubicAt(medium.byMoisture, moistureDb));
}

describe('a lot that holds more water than its isotherm says', () => {
  it.each([
    ['corn', 'modified Henderson D245.5'],
    ['soybean', 'modified Halsey D245.5'],
    ['wheat', 'modified Chung-Pfost D245.5'],
  ])('%s is in balance with the air of drier grain by the published equation', (crop, name) => {
    const { equation, a, b, c } = isothermOf(crop, name);
    const moved = mediumOf(crop, DENSITY, { isotherm: name, moistureShiftDb: SHIFT_DB });
    for (const tempC of [2, 15, 30]) {
      for (const moistureDb of [0.12, 0.16, 0.2]) {
        const published = isothermHumidity(equation, a, b, c, tempC, moistureDb - SHIFT_DB);
        expect(Math.abs(humidityOf(moved, tempC, moistureDb) - published)).toBeLessThan(1e-4);
      }
    }
  });

  it('binds water as the drier grain does', () => {
    const usual = mediumOf('corn', DENSITY);
    const moved = mediumOf('corn', DENSITY, { moistureShiftDb: SHIFT_DB });
    const between = (medium: typeof usual, from: number, to: number) =>
      cubicAt(medium.binding, to) - cubicAt(medium.binding, from);
    const due = between(usual, 0.14, 0.18);
    expect(Math.abs(between(moved, 0.14 + SHIFT_DB, 0.18 + SHIFT_DB) / due - 1)).toBeLessThan(1e-3);
  });

  it('a factor on the specific heat multiplies it, and what no grain has is refused', () => {
    const usual = mediumOf('soybean', DENSITY);
    const warm = mediumOf('soybean', DENSITY, { heatFactor: 1.2 });
    expect(warm.heatDryJKgK / usual.heatDryJKgK).toBeCloseTo(1.2, 12);
    expect(warm.heatPerMoistureJKgK / usual.heatPerMoistureJKgK).toBeCloseTo(1.2, 12);
    expect(() => mediumOf('corn', DENSITY, { heatFactor: 3 })).toThrow(RangeError);
    expect(() => mediumOf('corn', DENSITY, { moistureShiftDb: 0.2 })).toThrow(RangeError);
  });
});
