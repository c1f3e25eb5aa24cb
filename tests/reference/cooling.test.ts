import { describe, expect, it } from 'vitest';
import { humidityRatio } from '../../src/air/humidity-ratio.ts';
import { BUSHEL_FT3 } from '../../src/base/bushel.ts';
import { bedWaveRatio } from '../../src/bin/bed-waves.ts';
import { frontPlateauC } from '../../src/bin/front-plateau.ts';
import { airVolumeBehindM3Kg, type FrontRatios, frontRatios, frontSpeedMS } from '../../src/bin/front-speed.ts';
import { velocityOfCfmPerBushel } from '../../src/bin/specific-airflow.ts';
import { isothermOf } from '../../src/grain/isotherm.ts';
import { specificHeatJKgK, specificHeatLineOf } from '../../src/grain/specific-heat.ts';
import { provenanceNote, type ReferenceRow, readReference } from './read-reference.ts';

const SEA_PA = 101325;
const CORN_KG_M3 = (56 * 0.45359237) / (BUSHEL_FT3 * 0.3048 ** 3);
const celsius = (f: number) => (f - 32) / 1.8;

/** A front in corn of 15 % when air of 70 % comes in, degF. */
function front(grainF: number, airF: number, moistureWb = 0.15): { ratios: FrontRatios; volume: number } {
  const isotherm = isothermOf('corn');
  const inlet = humidityRatio(celsius(airF), 0.7, SEA_PA);
  const state = {
    isotherm,
    heatJKgK: specificHeatJKgK(specificHeatLineOf('corn'), moistureWb),
    moistureWb,
    aheadC: celsius(grainF),
    behindC: frontPlateauC(isotherm, celsius(airF), inlet, moistureWb, SEA_PA),
    pressurePa: SEA_PA,
  };
  return { ratios: frontRatios(state), volume: airVolumeBehindM3Kg(state) };
}

/** Hours times cfm/bu until a part of the front has left the grain: depth cancels, as in the rule. */
function hoursCfmPerBu(grainF: number, airF: number, part: 'lead' | 'middle' | 'tail'): number {
  const { ratios, volume } = front(grainF, airF);
  const depthM = 6;
  const speed = frontSpeedMS(ratios[part], velocityOfCfmPerBushel(1, depthM), volume, CORN_KG_M3 * 0.85);
  return depthM / speed / 3600;
}

// Grain and air that the collection's own page takes for the seasons of the table (its working, not published).
const SEASONS: Readonly<Record<string, readonly [grainF: number, airF: number]>> = {
  'fall cooling': [70, 50],
  'winter cooling': [45, 25],
  'spring warming': [35, 55],
};

const rows = readReference('cooling');
const title = (row: ReferenceRow) => `${row.id}: ${row.hours} ${row.unit}, ${row.kind}${provenanceNote(row)}`;

describe('published cooling times (tests/reference/cooling.csv: a handbook’s table from memory; the trade’s rule; field notes; a 3-D model)', () => {
  it('are all here', () => {
    expect(rows).toHaveLength(31);
  });
  // The rule and the table it is rounded from are common practice, planning figures with a margin: the last of a front in a
  // level bed of even air should be out sooner, and not by more than a third.
  for (const row of rows.filter((one) => one.unit === 'h' && one.misfit === '')) {
    it(`${title(row)}: a front in a level bed of corn is out in 0.65 to 1.05 of it (common practice)`, () => {
      const cfmPerBu = row.cfm_per_bu === '' ? 1 : Number(row.cfm_per_bu);
      const [grainF, airF] = SEASONS[row.case] ?? SEASONS['fall cooling'];
      const share = hoursCfmPerBu(grainF, airF, 'tail') / cfmPerBu / Number(row.hours);
      expect(share).toBeGreaterThan(0.65);
      expect(share).toBeLessThan(1.05);
    });
  }
  it('15 h/(cfm/bu) to cool lies above the middle of the front and near its end, in air of fall and of winter', () => {
    for (const [grainF, airF] of [SEASONS['fall cooling'], SEASONS['winter cooling']]) {
      expect(hoursCfmPerBu(grainF, airF, 'middle')).toBeLessThan(15);
      expect(Math.abs(hoursCfmPerBu(grainF, airF, 'tail') / 15 - 1)).toBeLessThan(0.3);
    }
  });
  it('without what evaporation carries it would take 25 h cfm/bu: heat of 56 lb of corn over that of a bushel’s cfm-hour', () => {
    // 56 lb * 0.477 Btu/(lb F) over 60 ft3 * 0.075 lb/ft3 * 0.24 Btu/(lb F), the collection's own working
    const sensible = (56 * 0.477) / (60 * 0.075 * 0.24);
    expect(sensible).toBeCloseTo(24.7, 1);
    expect(sensible / hoursCfmPerBu(70, 50, 'middle')).toBeGreaterThan(2);
    expect(sensible / hoursCfmPerBu(45, 25, 'middle')).toBeGreaterThan(1.5);
  });
  it('winter takes longer than fall and warming in spring less than cooling in winter, as the table says', () => {
    const [fall, winter, spring] = Object.values(SEASONS).map(([g, a]) => hoursCfmPerBu(g, a, 'tail'));
    expect(winter / fall).toBeGreaterThan(20 / 15);
    expect(winter / fall).toBeLessThan(1.5);
    expect(spring).toBeLessThan(winter);
  });
  it('cooling takes off about a quarter of a point for 10 degF (common practice)', () => {
    const { ratios } = front(70, 50);
    expect(-100 * ratios.moistureChangeWb).toBeGreaterThan(0.25);
    expect(-100 * ratios.moistureChangeWb).toBeLessThan(0.6);
  });
  for (const row of rows.filter((one) => one.unit === 'ratio')) {
    it(`${title(row)}: the front of temperature runs about ${row.hours} times as fast as that of moisture, within a factor of 2`, () => {
      const heat = specificHeatJKgK(specificHeatLineOf('corn'), 0.16);
      for (const tempC of [5, 10, 15]) {
        const wave = (which: 'fast' | 'slow') =>
          bedWaveRatio(which, isothermOf('corn'), tempC, 0.16 / 0.84, heat, SEA_PA);
        expect(wave('fast') / wave('slow')).toBeGreaterThan(Number(row.hours) / 2);
        expect(wave('fast') / wave('slow')).toBeLessThan(Number(row.hours) * 2);
      }
    });
  }
  for (const row of rows.filter((one) => one.misfit !== '')) {
    it(`${title(row)} does not fit: ${row.misfit}`, () => {
      // air a little colder than the temperature that the whole mass is to fall below; the source does not tell its own
      const ours = hoursCfmPerBu(Number(row.from_F), Number(row.to_F) - 2, 'tail') / Number(row.cfm_per_bu);
      expect(Number(row.hours) / ours).toBeGreaterThan(2);
    });
  }
});
