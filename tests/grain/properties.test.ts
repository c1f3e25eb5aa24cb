import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SOURCES } from '../../src/base/sources/sources.ts';
import {
  bulkPorosity,
  dryMatterKg,
  KERNEL_DENSITY_KG_M3,
  POROSITY_RANGES,
  porosityRangeOf,
  standardBulkDensityKgM3,
} from '../../src/grain/bulk.ts';
import { BULK_DENSITY_LINES, bulkDensityKgM3 } from '../../src/grain/bulk-density.ts';
import { bulkConductivityWMK } from '../../src/grain/conductivity.ts';
import { CROPS, cropOf } from '../../src/grain/crops.ts';
import { isothermOf } from '../../src/grain/isotherm.ts';
import { MISSING_PROPERTIES } from '../../src/grain/missing.ts';
import { moistureDbFromWb, moistureWbFromDb } from '../../src/grain/moisture-basis.ts';
import { SPECIFIC_HEAT_LINES, specificHeatJKgK, specificHeatLineOf } from '../../src/grain/specific-heat.ts';
import { specificHeatSpreadJKgK } from '../../src/grain/specific-heat-spread.ts';
import { storageRuleOf } from '../../src/grain/storage-rules.ts';

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
  // The relations as they were first printed, in Btu/(lb degF) and percent of the line's own basis (recalled apart from the SI
  // constants; memory). Three digits: 0.3 %.
  it.each([
    ['corn', 0.35, 0.00851],
    ['soybean', 0.391, 0.0046],
    ['wheat', 0.334, 0.00977],
    ['sorghum', 0.3336, 0.0077],
    ['rice', 0.22, 0.013],
    ['oats', 0.305, 0.0078],
  ])('of %s is %d + %d M in US units (memory)', (crop, base, slope) => {
    const line = specificHeatLineOf(crop);
    for (const moistureWb of [0.1, 0.14, 0.18]) {
      const percent = 100 * (line.basis === 'wet' ? moistureWb : moistureWb / (1 - moistureWb));
      const printed = (base + slope * percent) * 4186.8; // international table Btu and pound, NIST SP 811
      expect(Math.abs(specificHeatJKgK(line, moistureWb) / printed - 1)).toBeLessThan(0.003);
    }
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

describe('the crop table', () => {
  it('states where each bushel and each default isotherm comes from', () => {
    for (const one of CROPS) {
      expect(one.bushelSource).toMatch(/seen/);
      expect(one.isothermWhy.length).toBeGreaterThan(30);
    }
  });
  // Seen: Wikipedia "Test weight"; canola and sunflower in a trade conversion table, sources for sunflower from 24 to 32 lb.
  it.each([
    ['corn', 56],
    ['sorghum', 56],
    ['soybean', 60],
    ['wheat', 60],
    ['soft-wheat', 60],
    ['durum', 60],
    ['barley', 48],
    ['oats', 32],
    ['rice', 45],
    ['canola', 50],
    ['sunflower', 28],
  ])('a bushel of %s is %d lb', (id, lb) => {
    expect(cropOf(id).legalBushelKg / 0.45359237).toBeCloseTo(lb, 12);
  });
  it('lists what it has when asked for what it has not', () => {
    expect(() => cropOf('rye')).toThrow(
      /no crop "rye"; there are corn, soybean, wheat, .*oats, rice, canola, rapeseed, sunflower/,
    );
  });
});

describe('what is not known', () => {
  it('is told crop by crop with its reason, and each look-up of it throws', () => {
    const of = (property: string) =>
      MISSING_PROPERTIES.filter((one) => one.property === property).map((one) => one.crop);
    expect(of('isotherm')).toEqual([]);
    expect(of('specific heat')).toEqual(['barley', 'canola', 'rapeseed', 'sunflower']);
    expect(of('conductivity')).toEqual(['soybean', 'barley', 'oats', 'canola', 'rapeseed', 'sunflower']);
    expect(of('porosity')).toEqual(['canola', 'rapeseed', 'sunflower']);
    expect(of('storage time')).toEqual(['rice']);
    const looked = {
      isotherm: (crop: string) => isothermOf(crop),
      'specific heat': (crop: string) => specificHeatLineOf(crop),
      conductivity: (crop: string) => bulkConductivityWMK(crop, 0.12),
      porosity: (crop: string) => porosityRangeOf(crop),
      'storage time': (crop: string) => storageRuleOf(crop),
    };
    for (const { id } of CROPS) {
      for (const property of Object.keys(looked) as (keyof typeof looked)[]) {
        const missing = MISSING_PROPERTIES.find((one) => one.crop === id && one.property === property);
        if (missing === undefined) expect(() => looked[property](id)).not.toThrow();
        else {
          expect(() => looked[property](id)).toThrow(`for crop "${id}"; there `);
          expect(missing.why).toMatch(/at hand/);
        }
      }
    }
  });
  it('has bounds to work with: specific heats of all crops span a fifth to either side', () => {
    const [low, high] = specificHeatSpreadJKgK(0.13);
    for (const line of SPECIFIC_HEAT_LINES) {
      expect(specificHeatJKgK(line, 0.13)).toBeGreaterThanOrEqual(low);
      expect(specificHeatJKgK(line, 0.13)).toBeLessThanOrEqual(high);
    }
    expect(high / low).toBeGreaterThan(1.3);
    expect(high / low).toBeLessThan(1.5);
    expect(() => specificHeatSpreadJKgK(0.3)).toThrow(/must lie between/);
    expect(() => specificHeatSpreadJKgK(Number.NaN)).toThrow(/moistureWb is NaN/);
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
  // As first printed, Btu/(h ft degF) and percent, wet basis (recalled apart from the SI constants; memory). Three digits: 0.3 %.
  it.each([
    ['corn', 0.0814, 0.000646],
    ['wheat', 0.0676, 0.000654],
    ['sorghum', 0.0564, 0.000858],
    ['rice', 0.05, 0.000767],
  ])('conductivity of %s is %d + %d M in US units (memory)', (crop, base, slope) => {
    for (const moistureWb of [0.1, 0.15, 0.2]) {
      const printed = (base + slope * 100 * moistureWb) * 1.730735; // W/(m K), NIST SP 811
      expect(Math.abs(bulkConductivityWMK(crop, moistureWb) / printed - 1)).toBeLessThan(0.003);
    }
  });
  // The same abstract tells the density of the grain's matter and the air in its kernels: g/cm3 and percent, each to its last digit.
  it.each([
    ['corn', 1.45, 12.5],
    ['wheat', 1.47, 5.2],
    ['sorghum', 1.46, 9.8],
  ])(
    'kernels of %s weigh what their matter and the air in them make: %d g/cm3, %d %% air (Chang 1988)',
    (crop, trueGCm3, airPct) => {
      const made = 1000 * trueGCm3 * (1 - airPct / 100);
      // Half a digit of 0.01 g/cm3 each in what is made and in what is told, and half of a tenth of a percent.
      expect(Math.abs(made - KERNEL_DENSITY_KG_M3[crop])).toBeLessThan(5 + 5 + 0.0005 * made);
    },
  );
  it('porosity falls as grain is packed', () => {
    const loose = standardBulkDensityKgM3('corn');
    expect(bulkPorosity('corn', 1.05 * loose)).toBeLessThan(bulkPorosity('corn', loose));
    expect(() => bulkPorosity('barley', 620)).toThrow(/no kernel density for crop "barley"; there is one for corn/);
    expect(() => bulkPorosity('corn', 56)).toThrow(/bulkDensityKgM3 is 56/);
  });
  it('porosity of tables lies within 8 points of that by kernel density and legal bushel, where there are both', () => {
    // Sorghum is the one that is 8 points off: see its row in tests/reference/grain_properties.csv.
    for (const crop of Object.keys(KERNEL_DENSITY_KG_M3)) {
      const [low, high] = porosityRangeOf(crop);
      const ours = bulkPorosity(crop, standardBulkDensityKgM3(crop));
      expect(ours).toBeGreaterThan(low - 0.03);
      expect(ours).toBeLessThan(high + (crop === 'sorghum' ? 0.09 : 0.03));
    }
    for (const [low, high] of Object.values(POROSITY_RANGES)) expect(low).toBeLessThanOrEqual(high);
  });
  it('rough rice by moisture lies on its bushel: by hand 519.4 + 5.29 * 13, and within a tenth of 45 lb for all three grains', () => {
    expect(bulkDensityKgM3('rice', 0.13)).toBeCloseTo(588.17, 9);
    const bushel = standardBulkDensityKgM3('rice');
    for (const { name, sourceKey } of BULK_DENSITY_LINES) {
      expect(Math.abs(bulkDensityKgM3('rice', 0.13, name) / bushel - 1)).toBeLessThan(0.11);
      expect(bulkDensityKgM3('rice', 0.17, name)).toBeGreaterThan(bulkDensityKgM3('rice', 0.13, name));
      expect(SOURCES.map((source) => source.key)).toContain(sourceKey);
    }
    expect(() => bulkDensityKgM3('rice', 0.25)).toThrow(/is 25; it must lie between 12 and 18/);
    expect(() => bulkDensityKgM3('rice', Number.NaN)).toThrow(/is NaN; it must lie between/);
    expect(() => bulkDensityKgM3('corn', 0.15)).toThrow(
      /no bulk density by moisture for crop "corn"; there is one for rice/,
    );
    expect(() => bulkDensityKgM3('rice', 0.13, 'x')).toThrow(/there are long grain, medium grain, short grain/);
  });
  it('dry matter and water make the weight', () => {
    expect(dryMatterKg(100, 720, 0.15)).toBeCloseTo(61_200, 9);
    expect(() => dryMatterKg(100, 720, 15)).toThrow(/moistureWb is 15/);
  });
  it('moisture goes from wet to dry basis and back', () => {
    expect(moistureDbFromWb(0.2)).toBeCloseTo(0.25, 12);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.9, noNaN: true }), (wb) => {
        expect(moistureWbFromDb(moistureDbFromWb(wb))).toBeCloseTo(wb, 12);
        expect(moistureDbFromWb(wb)).toBeGreaterThanOrEqual(wb);
      }),
      { seed: 20240927, numRuns: 300 },
    );
    expect(() => moistureDbFromWb(15)).toThrow(/moistureWb is 15; it must lie between 0 and 0.9/);
    expect(() => moistureWbFromDb(Number.NaN)).toThrow(/moistureDb is NaN/);
  });
});
