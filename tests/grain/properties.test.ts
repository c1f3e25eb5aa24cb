import { describe, expect, it } from 'vitest';
import { SOURCES } from '../../src/base/sources.ts';
import { bulkPorosity, dryMatterKg, standardBulkDensityKgM3 } from '../../src/grain/bulk.ts';
import { bulkConductivityWMK } from '../../src/grain/conductivity.ts';
import { moistureDbFromWb, moistureWbFromDb } from '../../src/grain/moisture-basis.ts';
import { SPECIFIC_HEAT_LINES, specificHeatJKgK, specificHeatLineOf } from '../../src/grain/specific-heat.ts';

describe('specific heat', () => {
  it('lies between that of dry stuff and of water, and rises with moisture', () => {
    for (const line of SPECIFIC_HEAT_LINES) {
      const dry = specificHeatJKgK(line, 0.1);
      const wet = specificHeatJKgK(line, 0.16);
      expect(dry).toBeGreaterThan(1200);
      expect(wet).toBeGreaterThan(dry);
      expect(wet).toBeLessThan(4186);
    }
  });
  it('by hand: corn at 15 % is 1465 + 35.6 * 15 (memory), soybeans at 13 % wet are 14.94 % dry', () => {
    expect(specificHeatJKgK(specificHeatLineOf('corn'), 0.15)).toBeCloseTo(1999, 9);
    expect(specificHeatJKgK(specificHeatLineOf('soybean'), 0.13)).toBeCloseTo(1638 + (19.3 * 13) / 0.87, 9);
  });
  it('keeps both lines for soybeans, which lie 20 % apart at 13 %', () => {
    const other = specificHeatJKgK(specificHeatLineOf('soybean', 'Deshpande and Bal'), 0.13);
    expect(other / specificHeatJKgK(specificHeatLineOf('soybean'), 0.13)).toBeCloseTo(1.2, 2);
  });
  it('names sources of the bibliography', () => {
    const keys = new Set(SOURCES.map((source) => source.key));
    for (const line of SPECIFIC_HEAT_LINES) expect(keys).toContain(line.sourceKey);
  });
  it('refuses no numbers, moistures beyond its source, and crops that it has not', () => {
    const wheat = specificHeatLineOf('durum');
    expect(() => specificHeatJKgK(wheat, Number.NaN)).toThrow(/moistureWb is NaN/);
    expect(() => specificHeatJKgK(wheat, 0.25)).toThrow(
      /moisture in percent, wet basis, is 25; it must lie between 1 and 20/,
    );
    expect(() => specificHeatLineOf('canola')).toThrow(
      /no specific heat for crop "canola"; there is one for corn, soybean/,
    );
    expect(() => specificHeatLineOf('corn', 'x')).toThrow('no specific heat "x" for corn; there are Kazarian and Hall');
  });
});

describe('bulk', () => {
  it('conductivity rises with moisture and refuses what it has not', () => {
    for (const crop of ['corn', 'wheat', 'durum', 'sorghum', 'rice']) {
      expect(bulkConductivityWMK(crop, 0.2)).toBeGreaterThan(bulkConductivityWMK(crop, 0.12));
    }
    expect(() => bulkConductivityWMK('soybean', 0.13)).toThrow(
      /no conductivity for crop "soybean"; there is one for corn/,
    );
    expect(() => bulkConductivityWMK('corn', Number.NaN)).toThrow(/moistureWb is NaN/);
  });
  it('porosity falls as grain is packed', () => {
    const loose = standardBulkDensityKgM3('corn');
    expect(bulkPorosity('corn', 1.05 * loose)).toBeLessThan(bulkPorosity('corn', loose));
    expect(() => bulkPorosity('barley', 620)).toThrow(/no kernel density for crop "barley"; there is one for corn/);
    expect(() => bulkPorosity('corn', 56)).toThrow(/bulkDensityKgM3 is 56/);
  });
  it('dry matter and water make the weight', () => {
    expect(dryMatterKg(100, 720, 0.15)).toBeCloseTo(61_200, 9);
    expect(() => dryMatterKg(100, 720, 15)).toThrow(/moistureWb is 15/);
  });
  it('moisture goes from wet to dry basis and back', () => {
    expect(moistureDbFromWb(0.2)).toBeCloseTo(0.25, 12);
    for (const wb of [0, 0.08, 0.155, 0.35, 0.9]) expect(moistureWbFromDb(moistureDbFromWb(wb))).toBeCloseTo(wb, 12);
    expect(() => moistureDbFromWb(15)).toThrow(/moistureWb is 15; it must lie between 0 and 0.9/);
    expect(() => moistureWbFromDb(Number.NaN)).toThrow(/moistureDb is NaN/);
  });
});
