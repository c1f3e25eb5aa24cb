import { commercialDrying } from '../../money/commercial-drying.ts';
import { energyCost } from '../../money/energy-cost.ts';
import { flatShrinkExcess } from '../../money/flat-shrink.ts';
import { waterAndHandlingShrink } from '../../money/handling-shrink.ts';
import { highTemperatureDrying } from '../../money/high-temperature-drying.ts';
import { loadSettlement } from '../../money/load-settlement.ts';
import { overdryingFraction } from '../../money/overdrying-weight.ts';
import { perWaterKg } from '../../money/per-water.ts';
import { waterShrink, waterShrinkPerPoint } from '../../money/water-shrink.ts';
import { capital } from '../words.ts';
import { LB_KG } from './printed-units.ts';
import { type PublishedCheck, provenanceOf } from './published-check.ts';
import { type ReferenceRow, readReference, toleranceOf } from './read-reference.ts';

type Given = Readonly<Record<string, number>>;

/** `from=25 to=12` */
function givenOf(row: ReferenceRow): Given {
  return Object.fromEntries(
    row.given
      .split(' ')
      .map((pair) => pair.split('='))
      .map(([key, value]) => [key, Number(value)]),
  );
}

const PROPANE_BTU_GAL = 91_500; // common practice

const dryer = (g: Given) =>
  highTemperatureDrying(g.bushels, g.from - g.to, {
    fuelPerBushelPoint: g.fuel,
    fuelPrice: g.fuel_price ?? 0,
    kwhPerBushelPoint: g.kwh ?? 0,
    pricePerKwh: g.kwh_price ?? 0,
    otherPerBushel: g.other,
  });
const shrink = (g: Given) => waterAndHandlingShrink(g.from / 100, g.to / 100, g.handling / 100);

interface Case {
  formulaId: string;
  /** in the published unit */
  of(given: Given): number;
}

/** What the kit gives, by the quantity of a row. */
const CASES: Readonly<Record<string, Case | undefined>> = {
  propane: { formulaId: 'high-temperature-drying', of: (g) => dryer(g).fuel },
  'drying cost': { formulaId: 'high-temperature-drying', of: (g) => dryer(g).cost },
  'water shrink': { formulaId: 'water-shrink', of: (g) => 100 * waterShrink(g.from / 100, g.to / 100) },
  'water shrink per point': { formulaId: 'water-shrink', of: (g) => 100 * waterShrinkPerPoint(g.to / 100) },
  'water shrink by a tenth over base': { formulaId: 'water-shrink', of: (g) => 10 * waterShrinkPerPoint(g.to / 100) },
  'water and handling shrink': { formulaId: 'handling-shrink', of: (g) => 100 * shrink(g) },
  'weight left of 1000 lb': { formulaId: 'handling-shrink', of: (g) => 1000 * (1 - shrink(g)) },
  discount: {
    formulaId: 'schedule',
    of: (g) =>
      loadSettlement(1, g.moisture / 100, g.price, [
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
      ])?.charges[0] ?? Number.NaN,
  },
  'drying for hire': {
    formulaId: 'commercial-drying',
    of: (g) => commercialDrying(g.bushels, g.from - g.to, g.fee),
  },
  'over-drying': { formulaId: 'overdrying', of: (g) => 100 * overdryingFraction(g.base / 100, g.end / 100) },
  'over-drying, $ an acre': {
    formulaId: 'overdrying',
    of: (g) => g.bushels * g.price * overdryingFraction(g.base / 100, g.end / 100),
  },
  'fan energy': {
    formulaId: 'energy-cost',
    of: (g) =>
      energyCost(
        {
          startMs: Float64Array.of(0),
          endMs: Float64Array.of(g.hours * 3.6e6),
          powerW: Float64Array.of(g.kw * 1000),
        },
        { startMs: Float64Array.of(0), pricePerKwh: Float64Array.of(0.1) },
      ).kwh,
  },
  'heat per lb of water': {
    formulaId: 'per-water',
    // one bushel of 56 lb at the end, a point of the wet weight's: as its reckoning counts it
    of: (g) => perWaterKg(g.fuel * PROPANE_BTU_GAL, 56 * waterShrinkPerPoint(g.to / 100) * LB_KG) * LB_KG,
  },
  'flat shrink beyond the water': {
    formulaId: 'flat-shrink',
    of: (g) => 100 * flatShrinkExcess(g.moisture / 100, g.base / 100, g.per_point / 100, g.price),
  },
};

/**
 * The rows of tests/reference/money.csv. A row whose source leaves out what its number comes from has no answer, and
 * says so in `misfit`.
 * So has one whose quantity is not known here; a test sees to it that such a row says why.
 */
export function moneyChecks(): PublishedCheck[] {
  return readReference('money').map((row) => {
    const known = CASES[row.quantity];
    const ours = known === undefined ? Number.NaN : known.of(givenOf(row));
    const published = Number(row.published);
    return {
      domain: 'money',
      group: capital(row.quantity),
      crop: null,
      formulaId: known?.formulaId ?? '',
      at: row.given,
      printed: row.published,
      published,
      unit: row.unit,
      ours: Number.isFinite(ours) ? ours : null,
      tolerance: toleranceOf(row.tolerance, row.published),
      misfit: row.misfit,
      provenance: provenanceOf(row.provenance),
      source: row.source,
    };
  });
}
