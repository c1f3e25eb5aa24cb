import { enthalpyJKg } from '../../air/enthalpy.ts';
import { humidityRatio, humidityRatioOfVapour, relativeHumidityOfRatio } from '../../air/humidity-ratio.ts';
import { standardPressurePa } from '../../air/pressure.ts';
import { saturationPressureOverIcePa, saturationPressurePa } from '../../air/saturation.ts';
import { specificVolumeM3Kg } from '../../air/volume.ts';
import { relativeHumidityWarmed } from '../../air/warm-air.ts';
import { humidityRatioOfWetBulb } from '../../air/wet-bulb.ts';
import { halve } from '../../base/halve.ts';
import { equilibriumHumidity } from '../../grain/equilibrium.ts';
import { isothermOf } from '../../grain/isotherm.ts';
import { capital } from '../words.ts';
import { celsius, FT_M, LB_KG, PSI_PA } from './printed-units.ts';
import { type PublishedCheck, provenanceOf } from './published-check.ts';
import { type ReferenceRow, readReference, toleranceOf } from './read-reference.ts';

const SEA_LEVEL_PA = 101325;
const FT3_LB_M3_KG = FT_M ** 3 / LB_KG;

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
  return leaving(halve(tempC - 5, tempC, (t) => enthalpyJKg(t, leaving(t)) < target)) - start;
}

function ours(row: ReferenceRow): [value: number | null, formulaId: string] {
  const { temps, rest } = numbersOf(row.condition);
  const [t, wet] = temps;
  const wetBulb = (pressurePa: number) => humidityRatioOfWetBulb(t, wet, pressurePa);
  const volume = (w: number, pressurePa: number) =>
    specificVolumeM3Kg(t, w, pressurePa) / (row.unit === 'm3/kg' ? 1 : FT3_LB_M3_KG);
  switch (row.quantity) {
    case 'saturation pressure':
      return [
        tableSaturation(t) / (row.unit === 'psia' ? PSI_PA : 1),
        t < 0 ? 'saturation-over-ice' : 'saturation-over-water',
      ];
    case 'humidity ratio at saturation':
      return [humidityRatio(t, 1, SEA_LEVEL_PA, tableSaturation), 'humidity-ratio'];
    case 'dry air specific volume':
      return [volume(0, row.unit === 'm3/kg' ? SEA_LEVEL_PA : 14.696 * PSI_PA), 'specific-volume'];
    case 'relative humidity':
      return [100 * relativeHumidityOfRatio(t, wetBulb(SEA_LEVEL_PA), SEA_LEVEL_PA), 'wet-bulb-water'];
    case 'specific volume':
      return [volume(wetBulb(SEA_LEVEL_PA), SEA_LEVEL_PA), 'specific-volume'];
    case 'humidity ratio':
      return temps.length === 0
        ? [humidityRatioOfVapour(rest[0], rest[1]), 'humidity-ratio']
        : [wetBulb(rest[0]), 'wet-bulb-water'];
    case 'humidity ratio (ice bulb)':
      return [humidityRatioOfWetBulb(t, wet, rest[0], 'ice'), 'wet-bulb-ice'];
    case 'standard pressure': {
      const inMetres = row.condition.endsWith(' m');
      return [
        inMetres ? standardPressurePa(rest[0]) : standardPressurePa(rest[0] * FT_M) / PSI_PA,
        'standard-pressure',
      ];
    }
    case 'volume of 100,000 lb air':
      return [100_000 * volume(humidityRatio(t, rest[0] / 100, SEA_LEVEL_PA), SEA_LEVEL_PA), 'specific-volume'];
    case 'relative humidity after warming': {
      const [from, percent, by] = row.condition.match(/\d+/g)?.map(Number) ?? [];
      return [100 * relativeHumidityWarmed(celsius(from), percent / 100, by / 1.8), 'warming'];
    }
    default:
      if (!row.quantity.startsWith('water picked up')) return [null, ''];
      return [100_000 * waterTakenUp(t, rest[0] / 100), 'enthalpy'];
  }
}

/** The rows of tests/reference/psychrometrics.csv. One whose quantity is not known here has no answer; a test sees to it that such a row says why. */
export function airChecks(): PublishedCheck[] {
  return readReference('psychrometrics').map((row) => {
    const [value, formulaId] = ours(row);
    return {
      domain: 'air',
      group: capital(row.quantity),
      crop: null,
      formulaId,
      at: row.condition,
      printed: row.published,
      published: Number(row.published),
      unit: row.unit,
      ours: value,
      tolerance: toleranceOf(row.tolerance, row.published),
      misfit: row.misfit,
      provenance: provenanceOf(row.provenance),
      source: row.source,
    };
  });
}
