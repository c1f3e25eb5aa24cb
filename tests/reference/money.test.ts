import { describe, expect, it } from 'vitest';
import { commercialDrying } from '../../src/money/commercial-drying.ts';
import { energyCost } from '../../src/money/energy-cost.ts';
import { flatShrinkExcess } from '../../src/money/flat-shrink.ts';
import { waterAndHandlingShrink } from '../../src/money/handling-shrink.ts';
import { highTemperatureDrying } from '../../src/money/high-temperature-drying.ts';
import { loadSettlement } from '../../src/money/load-settlement.ts';
import { overdryingFraction } from '../../src/money/overdrying-weight.ts';
import { perWaterKg, waterRemovedKg } from '../../src/money/per-water.ts';
import { waterShrink, waterShrinkPerPoint } from '../../src/money/water-shrink.ts';
import { provenanceNote, type ReferenceRow, readReference, toleranceOf } from './read-reference.ts';

const rows = readReference('money');
type Given = Readonly<Record<string, number>>;

/** `from=25 to=12` */
const given = (row: ReferenceRow): Given =>
  Object.fromEntries(
    row.given
      .split(' ')
      .map((pair) => pair.split('='))
      .map(([k, v]) => [k, Number(v)]),
  );

const dryer = (g: Given) =>
  highTemperatureDrying(g.bushels, g.from - g.to, {
    fuelPerBushelPoint: g.fuel,
    fuelPrice: g.fuel_price ?? 0,
    kwhPerBushelPoint: g.kwh ?? 0,
    pricePerKwh: g.kwh_price ?? 0,
    otherPerBushel: g.other,
  });
const shrink = (g: Given) => waterAndHandlingShrink(g.from / 100, g.to / 100, g.handling / 100);
const LB_KG = 0.45359237;

/** The published unit's number by the kit. */
const KIT: Readonly<Record<string, (g: Given) => number>> = {
  propane: (g) => dryer(g).fuel,
  'drying cost': (g) => dryer(g).cost,
  'water shrink': (g) => 100 * waterShrink(g.from / 100, g.to / 100),
  'water shrink per point': (g) => 100 * waterShrinkPerPoint(g.to / 100),
  'water shrink by a tenth over base': (g) => 10 * waterShrinkPerPoint(g.to / 100),
  'water and handling shrink': (g) => 100 * shrink(g),
  'weight left of 1000 lb': (g) => 1000 * (1 - shrink(g)),
  discount: (g) => {
    const settled = loadSettlement(1, g.moisture / 100, g.price, [
      {
        baseWb: g.base / 100,
        perPoints: 1,
        stepPoints: null,
        bands: [{ toWb: Number.POSITIVE_INFINITY, rate: g.rate }],
        banding: 'cumulative',
        unit: 'price',
        bushels: 'wet',
        rejectOverWb: null,
      },
    ]);
    return settled!.charges[0];
  },
  'drying for hire': (g) => commercialDrying(g.bushels, g.from - g.to, g.fee),
  'over-drying': (g) => 100 * overdryingFraction(g.base / 100, g.end / 100),
  'over-drying, $ an acre': (g) => g.bushels * g.price * overdryingFraction(g.base / 100, g.end / 100),
  'fan energy': (g) =>
    energyCost(
      {
        startMs: Float64Array.of(0),
        endMs: Float64Array.of(g.hours * 3.6e6),
        powerW: Float64Array.of(g.kw * 1000),
      },
      { startMs: Float64Array.of(0), pricePerKwh: Float64Array.of(0.1) },
    ).kwh,
  'heat per lb of water': (g) => {
    // one bushel of 56 lb at the end, a point of the wet weight's: as the reference page counts it
    const waterLb = 56 * waterShrinkPerPoint(g.to / 100);
    return perWaterKg(g.fuel * 91500, waterLb * LB_KG) * LB_KG;
  },
  'flat shrink beyond the water': (g) =>
    100 * flatShrinkExcess(g.moisture / 100, g.base / 100, g.per_point / 100, g.price),
};

describe('published money arithmetic (tests/reference/money.csv: extension sheets, handbooks, reprints)', () => {
  it('is all here', () => {
    expect(rows).toHaveLength(39);
    expect(rows.filter((row) => row.misfit !== '')).toHaveLength(7);
  });
  for (const row of rows.filter((one) => one.misfit === '')) {
    it(`${row.quantity}, ${row.given}: ${row.published} ${row.unit}${provenanceNote(row)}`, () => {
      const off = Math.abs(KIT[row.quantity](given(row)) - Number(row.published));
      expect(off).toBeLessThanOrEqual(toleranceOf(row.tolerance, row.published) + 1e-9);
    });
  }
  it('water removed is the shrink of the weight: 1000 lb from 25 to 12 % give off 147.7 lb (NCH-61)', () => {
    const waterKg = waterRemovedKg(1000 * LB_KG, 0.25, 0.12);
    expect(Math.abs(waterKg / LB_KG - 147.7)).toBeLessThanOrEqual(0.05);
  });
});
