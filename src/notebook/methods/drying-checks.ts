import { enthalpyJKg } from '../../air/enthalpy.ts';
import { humidityRatio } from '../../air/humidity-ratio.ts';
import { halve } from '../../base/halve.ts';
import { passAir } from '../../simulation/bed/pass-air.ts';
import { airOf, bedOf, blowUntil, type DryingCase, dryKgM2Of, SEA_PA, topWb } from './drying-bed.ts';
import { type PublishedCheck, provenanceOf } from './published-check.ts';
import { type ReferenceRow, readReference, toleranceOf } from './read-reference.ts';

/**
 * Two meanings of "days to dry": until the air has carried off the average water (`balance`, at a stated humidity of the air
 * that leaves), and until the drying front is out of the top (`front`). They lie apart by a factor of two and more.
 */
export const BALANCE = 'balance';
const RATIO = 'ratio to 1 cfm/bu';
const WATER = 'water taken by 100000 lb of air';
const WARM_HOURS = 'front, fan in the warmest 12 h of each day';
/** Half of the day's range of outdoor air, degF. */
const DAY_WAVE_F = 12;
/** The front is out when the top is within a point of the moisture that the source dries to. */
const OUT_WB = 0.01;
const MOST_HOURS = 24 * 500;
/** While all air leaves over wet grain. */
const EARLY_HOURS = 240;

export const caseOf = (row: ReferenceRow): DryingCase => ({
  crop: row.crop,
  cfmPerBu: Number(row.cfm_per_bu),
  moistureWb: Number(row.from_wb_pct) / 100,
  airF: Number(row.air_F),
  rh: Number(row.rh_pct) / 100,
  riseF: Number(row.rise_F),
});

/** Days until the air that leaves at one humidity on the line of constant enthalpy has taken the average water. */
export function balanceDays(drying: DryingCase, toWb: number, leavingRh: number): number {
  const { tempC, ratio, kgM2 } = airOf(drying);
  // On the line of constant enthalpy the air holds more water the colder it is, and may hold less.
  const onLine = (leavesC: number) =>
    (enthalpyJKg(tempC, ratio) - enthalpyJKg(leavesC, 0)) / (enthalpyJKg(leavesC, 1) - enthalpyJKg(leavesC, 0));
  const leavesC = halve(tempC - 30, tempC, (one) => onLine(one) > humidityRatio(one, leavingRh, SEA_PA));
  const leavingRatio = onLine(leavesC);
  const waterKgM2 = dryKgM2Of(drying.crop) * (drying.moistureWb / (1 - drying.moistureWb) - toWb / (1 - toWb));
  return waterKgM2 / (kgM2 * (leavingRatio - ratio)) / 24;
}

/** Days until the top of a simulated bed is within a point of a moisture; null where it never is. */
export function frontDays(drying: DryingCase, toWb: number, isotherm?: string): number | null {
  const hours = blowUntil(bedOf(drying, { isotherm }), drying, MOST_HOURS, (bed) => topWb(bed) <= toWb + OUT_WB);
  return hours === null ? null : hours / 24;
}

/** As `frontDays` where a fan runs in the warmer half of each day only; its air warms and cools about the case's. */
export function warmHoursDays(
  drying: DryingCase,
  toWb: number,
  isotherm?: string,
  bed = bedOf(drying, { isotherm }),
): { days: number; fanHours: number } {
  const { tempC, ratio, kgM2 } = airOf(drying);
  for (let hour = 0; hour < MOST_HOURS; hour++) {
    const wave = Math.sin((2 * Math.PI * ((hour % 24) + 0.5)) / 24);
    if (wave > 0) passAir(bed, kgM2, 3600, tempC + (DAY_WAVE_F / 1.8) * wave, ratio);
    if (topWb(bed) <= toWb + OUT_WB) return { days: hour / 24, fanHours: hour / 2 };
  }
  return { days: Number.NaN, fanHours: Number.NaN };
}

/** Water that so much dry air takes from a simulated bed while its top is wet, in its own unit of mass. */
function waterTaken(drying: DryingCase, air: number, isotherm?: string): number {
  const bed = bedOf(drying, { isotherm });
  let taken = 0;
  const { ratio } = airOf(drying);
  blowUntil(bed, drying, EARLY_HOURS, () => {
    taken += (bed.leaving[1] - ratio) / EARLY_HOURS;
    return false;
  });
  return air * taken;
}

function oursOf(row: ReferenceRow): number | null {
  if (row.misfit !== '') return null;
  const drying = caseOf(row);
  const isotherm = row.isotherm === '' ? undefined : row.isotherm;
  const toWb = Number(row.to_wb_pct) / 100;
  switch (row.meaning) {
    case BALANCE:
      return balanceDays(drying, toWb, Number(row.exhaust_rh_pct) / 100);
    case WATER:
      return waterTaken(drying, 100_000, isotherm);
    case WARM_HOURS:
      return warmHoursDays(drying, toWb, isotherm).days;
    case RATIO: {
      const [slow, one] = [drying, { ...drying, cfmPerBu: 1 }].map((each) => frontDays(each, toWb, isotherm));
      return slow === null || one === null ? null : slow / one;
    }
    default:
      return frontDays(drying, toWb, isotherm);
  }
}

const GROUPS: Readonly<Record<string, string>> = {
  [BALANCE]: 'Days until the air has carried off the average water',
  [RATIO]: 'Days at less air over days at 1 cfm/bu',
  [WATER]: 'Water that 100,000 lb of air take from wet corn',
  front: 'Days until the drying front is out of the top',
  [WARM_HOURS]: 'Days until the drying front is out of the top, fan in the warmest 12 hours',
};

/** The rows of tests/reference/drying.csv, by the balance of air or by the bed. */
export function dryingChecks(): PublishedCheck[] {
  return readReference('drying').map((row) => {
    // `50-60`: the middle, and half of the range besides the tolerance.
    const [low, high = low] = row.published.split('-').map((one) => Number.parseFloat(one));
    const published = (low + high) / 2;
    return {
      domain: 'drying',
      group: GROUPS[row.meaning],
      crop: row.crop,
      formulaId: row.meaning === BALANCE ? 'enthalpy' : 'bed-balances',
      at: atOf(row),
      printed: row.published,
      published,
      unit: row.unit,
      ours: oursOf(row),
      tolerance: (high - low) / 2 + toleranceOf(row.tolerance, String(published)),
      misfit: row.misfit,
      provenance: provenanceOf(row.provenance),
      source: row.source,
    };
  });
}

function atOf(row: ReferenceRow): string {
  const air = row.air_F === '' ? '' : `${row.air_F} °F${row.rh_pct === '' ? '' : ` and ${row.rh_pct} %`}`;
  const rise = Number(row.rise_F) > 0 ? `warmed by ${row.rise_F} °F` : '';
  const airflow = row.cfm_per_bu === '' ? '' : `${Number(row.cfm_per_bu)} cfm/bu`;
  const to = row.to_wb_pct === '' ? '' : ` to ${row.to_wb_pct}`;
  return [`${row.crop} ${row.from_wb_pct}${to} %`, air, rise, airflow].filter((part) => part !== '').join(', ');
}
