import { humidityRatio } from '../../air/humidity-ratio.ts';
import { bedWaveRatio } from '../../bin/bed-waves.ts';
import { frontPlateauC } from '../../bin/front-plateau.ts';
import { airVolumeBehindM3Kg, type FrontRatios, frontRatios, frontSpeedMS } from '../../bin/front-speed.ts';
import { velocityOfCfmPerBushel } from '../../bin/specific-airflow.ts';
import { standardBulkDensityKgM3 } from '../../grain/bulk.ts';
import { isothermOf } from '../../grain/isotherm.ts';
import { specificHeatJKgK, specificHeatLineOf } from '../../grain/specific-heat.ts';
import { bedOf, bedWb, blowUntil } from './drying-bed.ts';
import { celsius } from './printed-units.ts';
import { type PublishedCheck, provenanceOf } from './published-check.ts';
import { type ReferenceRow, readReference } from './read-reference.ts';

const SEA_PA = 101325;
const MOISTURE_WB = 0.15;
/** Unit of the rows that tell what cooling takes off. */
const LOSS = 'points per 10 °F';

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

/** Points that a simulated bed of corn loses while a front of colder air of 70 % goes through it, for each 10 degF that its grain gets colder. */
export function pointsPer10F(grainF: number, airF: number, cfmPerBu: number): number {
  const drying = { crop: 'corn', cfmPerBu, moistureWb: MOISTURE_WB, airF, rh: 0.7, riseF: 0, grainF };
  const bed = bedOf(drying, {});
  blowUntil(bed, drying, Math.round(hoursCfmPerBu(grainF, airF, 'tail') / cfmPerBu), () => false);
  const meanC = bed.tempC.reduce((sum, one) => sum + one, 0) / bed.layers;
  return (100 * (MOISTURE_WB - bedWb(bed))) / (((celsius(grainF) - meanC) * 1.8) / 10);
}

/** What each unit of the rows is told as: by which formula, of what, and the part of the published number that may lie between. */
const TOLD = {
  h: { formulaId: 'temperature-front', part: 0.35 },
  ratio: { formulaId: 'temperature-front', part: 0.5 },
  [LOSS]: { formulaId: 'bed-balances', part: 0.35 },
} as const;

function oursOf(row: ReferenceRow): number {
  if (row.unit === 'ratio') return waveRatio(10);
  return row.unit === LOSS ? pointsPer10F(Number(row.from_F), Number(row.to_F), Number(row.cfm_per_bu)) : rowHours(row);
}

const GROUPS: Readonly<Record<string, string>> = {
  ratio: 'Speed of the temperature front over the moisture front',
  [LOSS]: 'Moisture that corn loses in cooling',
};

/**
 * The rows of tests/reference/cooling.csv. Planning figures carry a margin: a front should be out within 35 % of them; what cooling takes
 * off is told as about a quarter, and hangs on the humidity of the air.
 */
export function coolingChecks(): PublishedCheck[] {
  return readReference('cooling').map((row) => {
    const published = Number(row.hours);
    const isRatio = row.unit === 'ratio';
    const { formulaId, part } = TOLD[row.unit as keyof typeof TOLD];
    return {
      domain: 'cooling',
      group: GROUPS[row.unit] ?? `Hours to cool or warm, ${row.kind}`,
      crop: row.crop === 'any' ? null : row.crop,
      formulaId,
      at: isRatio
        ? 'corn of 16 %, 50 °F'
        : [row.cfm_per_bu === '' ? '' : `${row.cfm_per_bu} cfm/bu`, row.case].filter((part) => part !== '').join(', '),
      printed: row.hours,
      published,
      unit: row.unit,
      ours: oursOf(row),
      tolerance: part * published,
      misfit: row.misfit,
      provenance: provenanceOf(row.provenance),
      source: row.source,
    };
  });
}
