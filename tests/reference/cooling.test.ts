import { describe, expect, it } from 'vitest';
import {
  coolingChecks,
  cornFront as front,
  hoursCfmPerBu,
  pointsPer10F,
  rowHours,
  SEASONS,
  waveRatio,
} from '../../src/notebook/methods/cooling-checks.ts';
import { agrees, provenanceNote, type ReferenceRow, readReference } from './read-reference.ts';

const rows = readReference('cooling');
const title = (row: ReferenceRow) => `${row.id}: ${row.hours} ${row.unit}, ${row.kind}${provenanceNote(row)}`;

describe('published cooling times (tests/reference/cooling.csv: a handbook’s table from memory; the trade’s rule; field notes; a 3-D model)', () => {
  it('are all here', () => {
    expect(rows).toHaveLength(36);
  });
  // The rule and the table it is rounded from are common practice, planning figures with a margin: the last of a front in a
  // level bed of even air should be out sooner, and not by more than a third.
  for (const row of rows.filter((one) => one.unit === 'h' && one.misfit === '')) {
    it(`${title(row)}: a front in a level bed of corn is out in 0.65 to 1.05 of it (common practice)`, () => {
      const share = rowHours(row) / Number(row.hours);
      expect(share).toBeGreaterThan(0.65);
      expect(share).toBeLessThan(1.05);
    });
  }
  it('are shown on the methods page as they are held here', () => {
    for (const [i, check] of coolingChecks().entries()) expect(agrees(check), rows[i].id).toBe(rows[i].misfit === '');
  });
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
  for (const row of rows.filter((one) => one.unit.startsWith('points'))) {
    it(`${title(row)}: a simulated bed of corn loses that within a third`, () => {
      const [grainF, airF] = [Number(row.from_F), Number(row.to_F)];
      const lost = pointsPer10F(grainF, airF, Number(row.cfm_per_bu));
      expect(Math.abs(lost / Number(row.hours) - 1)).toBeLessThan(0.35);
      // It goes with the heat that is taken off, whatever the airflow; grain that is warmed takes about as much up.
      expect(Math.abs(pointsPer10F(grainF, airF, 0.2) / lost - 1)).toBeLessThan(0.05);
      expect(Math.abs(pointsPer10F(airF, grainF, 0.1) / lost - 1)).toBeLessThan(0.35);
    });
  }
  for (const row of rows.filter((one) => one.unit === 'ratio')) {
    it(`${title(row)}: the front of temperature runs about ${row.hours} times as fast as that of moisture, within a factor of 2`, () => {
      for (const tempC of [5, 10, 15]) {
        expect(waveRatio(tempC)).toBeGreaterThan(Number(row.hours) / 2);
        expect(waveRatio(tempC)).toBeLessThan(Number(row.hours) * 2);
      }
    });
  }
  for (const row of rows.filter((one) => one.misfit !== '')) {
    it(`${title(row)} does not fit: ${row.misfit}`, () => {
      expect(Number(row.hours) / rowHours(row)).toBeGreaterThan(2);
    });
  }
});
