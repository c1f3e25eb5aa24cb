import { humidityRatio } from '../../air/humidity-ratio.ts';
import { bedWaveRatio } from '../../bin/bed-waves.ts';
import { frontPlateauC } from '../../bin/front-plateau.ts';
import { airVolumeBehindM3Kg, type FrontRatios, frontRatios, frontSpeedMS } from '../../bin/front-speed.ts';
import { velocityOfCfmPerBushel } from '../../bin/specific-airflow.ts';
import { standardBulkDensityKgM3 } from '../../grain/bulk.ts';
import { isothermOf } from '../../grain/isotherm.ts';
import { specificHeatJKgK, specificHeatLineOf } from '../../grain/specific-heat.ts';
import { celsius } from './printed-units.ts';
import { type PublishedCheck, provenanceOf } from './published-check.ts';
import { type ReferenceRow, readReference } from './read-reference.ts';

const SEA_PA = 101325;
const MOISTURE_WB = 0.15;

/** A front in corn of 15 % when air of 70 % comes in, degF. */
export function cornFront(grainF: number, airF: number): { ratios: FrontRatios; volume: number } {
  const isotherm = isothermOf('corn');
  const inlet = humidityRatio(celsius(airF), 0.7, SEA_PA);
  const state = {
    isotherm,
    heatJKgK: specificHeatJKgK(specificHeatLineOf('corn'), MOISTURE_WB),
    moistureWb: MOISTURE_WB,
    aheadC: celsius(grainF),
    behindC: frontPlateauC(isotherm, celsius(airF), inlet, MOISTURE_WB, SEA_PA),
    pressurePa: SEA_PA,
  };
  return { ratios: frontRatios(state), volume: airVolumeBehindM3Kg(state) };
}

/** Hours times cfm/bu until a part of the front has left the grain: depth cancels, as in the rule. */
export function hoursCfmPerBu(grainF: number, airF: number, part: 'lead' | 'middle' | 'tail'): number {
  const { ratios, volume } = cornFront(grainF, airF);
  const depthM = 6;
  const dryMatter = standardBulkDensityKgM3('corn') * (1 - MOISTURE_WB);
  const speed = frontSpeedMS(ratios[part], velocityOfCfmPerBushel(1, depthM), volume, dryMatter);
  return depthM / speed / 3600;
}

/** How many times as fast as the front of moisture the front of temperature runs, in corn of 16 %. */
export function waveRatio(tempC: number): number {
  const heat = specificHeatJKgK(specificHeatLineOf('corn'), 0.16);
  const wave = (which: 'fast' | 'slow') => bedWaveRatio(which, isothermOf('corn'), tempC, 0.16 / 0.84, heat, SEA_PA);
  return wave('fast') / wave('slow');
}

/** Grain and air that stand for the seasons of the table, degF (working, not published). */
export const SEASONS: Readonly<Record<string, readonly [grainF: number, airF: number]>> = {
  'fall cooling': [70, 50],
  'winter cooling': [45, 25],
  'spring warming': [35, 55],
};

/** Hours of a row's case by the kit. */
export function rowHours(row: ReferenceRow): number {
  const cfmPerBu = row.cfm_per_bu === '' ? 1 : Number(row.cfm_per_bu);
  // Air a little colder than the temperature that the whole mass is to fall below; the source does not tell its own.
  const [grainF, airF] =
    row.from_F === '' ? (SEASONS[row.case] ?? SEASONS['fall cooling']) : [Number(row.from_F), Number(row.to_F) - 2];
  return hoursCfmPerBu(grainF, airF, 'tail') / cfmPerBu;
}

/** The rows of tests/reference/cooling.csv. Planning figures carry a margin: a front should be out within 35 % of them. */
export function coolingChecks(): PublishedCheck[] {
  return readReference('cooling').map((row) => {
    const published = Number(row.hours);
    const isRatio = row.unit === 'ratio';
    return {
      domain: 'cooling',
      group: isRatio ? 'Speed of the temperature front over the moisture front' : `Hours to cool or warm, ${row.kind}`,
      crop: row.crop === 'any' ? null : row.crop,
      formulaId: 'temperature-front',
      at: isRatio
        ? 'corn of 16 %, 50 °F'
        : [row.cfm_per_bu === '' ? '' : `${row.cfm_per_bu} cfm/bu`, row.case].filter((part) => part !== '').join(', '),
      printed: row.hours,
      published,
      unit: row.unit,
      ours: isRatio ? waveRatio(10) : rowHours(row),
      tolerance: (isRatio ? 0.5 : 0.35) * published,
      misfit: row.misfit,
      provenance: provenanceOf(row.provenance),
      source: row.source,
    };
  });
}
