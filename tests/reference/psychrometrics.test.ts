import { describe, expect, it } from 'vitest';
import { enthalpyJKg } from '../../src/air/enthalpy.ts';
import { humidityRatio, humidityRatioOfVapour, relativeHumidityOfRatio } from '../../src/air/humidity-ratio.ts';
import { standardPressurePa } from '../../src/air/pressure.ts';
import { saturationPressureOverIcePa, saturationPressurePa } from '../../src/air/saturation.ts';
import { specificVolumeM3Kg } from '../../src/air/volume.ts';
import { relativeHumidityWarmed } from '../../src/air/warm-air.ts';
import { humidityRatioOfWetBulb } from '../../src/air/wet-bulb.ts';
import { equilibriumHumidity } from '../../src/grain/equilibrium.ts';
import { isothermOf } from '../../src/grain/isotherm.ts';
import { provenanceNote, type ReferenceRow, readReference, toleranceOf } from './read-reference.ts';

const SEA_LEVEL_PA = 101325;
const PSI_PA = 6894.757293; // NIST SP 811
const FT3_LB_M3_KG = 0.028316846592 / 0.45359237;
const celsius = (f: number) => (f - 32) / 1.8;

/** Numbers of a condition such as `T=77 F, 14.696 psia`, temperatures in degC. */
function numbersOf(condition: string): { temps: number[]; rest: number[] } {
  const found = [...condition.matchAll(/(?<![\d.])(\+?-?\d+(?:\.\d+)?)\s?(F|C)?\b/g)];
  const temps = found
    .filter((m) => m[2] !== undefined)
    .map((m) => (m[2] === 'F' ? celsius(Number(m[1])) : Number(m[1])));
  return { temps, rest: found.filter((m) => m[2] === undefined).map((m) => Number(m[1])) };
}

/** Saturation as the handbook's tables hold it: over ice below freezing. */
const tableSaturation = (t: number) => (t < 0 ? saturationPressureOverIcePa(t) : saturationPressurePa(t));

/** Water that a kilogram of dry air takes up from wet grain at constant enthalpy, kg. */
function waterTakenUp(tempC: number, rh: number): number {
  const corn = isothermOf('corn', 'modified Chung-Pfost D245.4');
  const start = humidityRatio(tempC, rh, SEA_LEVEL_PA);
  const target = enthalpyJKg(tempC, start);
  const leaving = (t: number) => humidityRatio(t, equilibriumHumidity(corn, t, 0.21), SEA_LEVEL_PA);
  let [low, high] = [tempC - 5, tempC];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (enthalpyJKg(middle, leaving(middle)) < target) low = middle;
    else high = middle;
  }
  return leaving(low) - start;
}

function ours(row: ReferenceRow): number {
  const { temps, rest } = numbersOf(row.condition);
  const [t, wet] = temps;
  switch (row.quantity) {
    case 'saturation pressure':
      return tableSaturation(t) / (row.unit === 'psia' ? PSI_PA : 1);
    case 'humidity ratio at saturation':
      return humidityRatio(t, 1, SEA_LEVEL_PA, tableSaturation);
    case 'dry air specific volume':
      return row.unit === 'm3/kg'
        ? specificVolumeM3Kg(t, 0, SEA_LEVEL_PA)
        : specificVolumeM3Kg(t, 0, 14.696 * PSI_PA) / FT3_LB_M3_KG;
    case 'relative humidity':
      return 100 * relativeHumidityOfRatio(t, humidityRatioOfWetBulb(t, wet, SEA_LEVEL_PA), SEA_LEVEL_PA);
    case 'specific volume':
      return (
        specificVolumeM3Kg(t, humidityRatioOfWetBulb(t, wet, SEA_LEVEL_PA), SEA_LEVEL_PA) /
        (row.unit === 'm3/kg' ? 1 : FT3_LB_M3_KG)
      );
    case 'humidity ratio':
      return temps.length === 0 ? humidityRatioOfVapour(rest[0], rest[1]) : humidityRatioOfWetBulb(t, wet, rest[0]);
    case 'humidity ratio (ice bulb)':
      return humidityRatioOfWetBulb(t, wet, rest[0], 'ice');
    case 'standard pressure':
      return row.condition.endsWith(' m') ? standardPressurePa(rest[0]) : standardPressurePa(rest[0] * 0.3048) / PSI_PA;
    case 'volume of 100,000 lb air':
      return (
        (100_000 * specificVolumeM3Kg(t, humidityRatio(t, rest[0] / 100, SEA_LEVEL_PA), SEA_LEVEL_PA)) / FT3_LB_M3_KG
      );
    case 'relative humidity after warming': {
      const [from, percent, by] = row.condition.match(/\d+/g)?.map(Number) ?? [];
      return 100 * relativeHumidityWarmed(celsius(from), percent / 100, by / 1.8);
    }
    default:
      return 100_000 * waterTakenUp(t, rest[0] / 100);
  }
}

// Rows of the collection that carry no published value (farm-air states worked out by its collector) are not copied:
// they would hold one implementation against another. psychrolib does that in tests/air.
describe('published air properties (tests/reference/psychrometrics.csv: ASHRAE Fundamentals 2017 ch. 1 tables 1-3, example 1, NDSU)', () => {
  const rows = readReference('psychrometrics');
  it('are all here', () => {
    expect(rows).toHaveLength(31);
  });
  for (const row of rows) {
    const tolerance = toleranceOf(row.tolerance, row.published);
    const name = `${row.quantity}, ${row.condition}: ${row.published} ${row.unit}${provenanceNote(row)}`;
    if (row.misfit === '') {
      it(`${name} within ${row.tolerance || 'its printed digit'}${row.tolerance_reason ? `: ${row.tolerance_reason}` : ''}`, () => {
        expect(Math.abs(ours(row) - Number(row.published))).toBeLessThanOrEqual(tolerance);
      });
    } else {
      it(`${name} does not fit: ${row.misfit}`, () => {
        const more = ours(row) / Number(row.published) - 1;
        expect(more).toBeGreaterThan(tolerance / Number(row.published));
        expect(more).toBeLessThan(0.3);
      });
    }
  }
});
