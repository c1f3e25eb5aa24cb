import { describe, expect, it } from 'vitest';
import type { Medium } from '../../../src/simulation/bed/medium.ts';
import { mediumOf } from '../../../src/simulation/bed/medium-of.ts';
import { runSeason } from '../../../src/simulation/run/run-season.ts';
import { scheduled } from '../../../src/simulation/strategies/scheduled.ts';
import { inventedBin, inventedHours } from './invented-bin.ts';

const LAYERS = 20;
const HOURS = 24 * 60;
const start = {
  tempC: Float64Array.from({ length: LAYERS }, (_, i) => 4 + i),
  moistureDb: Float64Array.from({ length: LAYERS }, (_, i) => 0.3 - 0.008 * i),
};

/** Two months without the fan, in weather that swings from far below the grain to far above it: state layer by layer at the end. */
function rested(other: Partial<Medium>, respirationFactor: number, wallWM3K = 0) {
  const hours = inventedHours({ count: HOURS, tempC: (hour) => 25 * Math.sin(hour / 200), rh: () => 0.3 });
  const medium = { ...mediumOf('corn', 610, { respirationFactor }), ...other };
  const bin = inventedBin(hours, { start });
  const spec = { ...bin, bed: { ...bin.bed, medium, wallWM3K } };
  const { trace, outcome } = runSeason(spec, scheduled('as-logged', 'As logged', []), {}, { trace: true });
  const last = (HOURS - 1) * LAYERS;
  const [tempC, wb] = [trace!.layerC, trace!.layerWb].map((of) => of.slice(last, last + LAYERS));
  return { tempC, db: wb.map((one) => one / (1 - one)), outcome };
}

const apart = (a: Float64Array, b: Float64Array) => Math.max(...a.map((one, i) => Math.abs(one - b[i])));

describe('a bin whose fan never runs', () => {
  it('keeps every layer as it is where nothing conducts and nothing breathes', () => {
    const { tempC, db, outcome } = rested({ conductivityWMK: 0 }, 0);
    expect(apart(tempC, start.tempC)).toBeLessThan(1e-9);
    expect(apart(db, start.moistureDb)).toBeLessThan(1e-12);
    expect([outcome.fanHours, outcome.waterByAirKg]).toEqual([0, 0]);
  });

  it('moves heat and no water where it only conducts, each end toward the air beside it', () => {
    const { tempC, db } = rested({}, 0);
    expect(apart(tempC, start.tempC)).toBeGreaterThan(1);
    expect(apart(db, start.moistureDb)).toBeLessThan(1e-12);
    // The ends feel the air before the middle does.
    expect(Math.abs(tempC[0] - start.tempC[0])).toBeGreaterThan(Math.abs(tempC[9] - start.tempC[9]));
  });

  it('warms and wets where it only breathes, the wettest most', () => {
    const { tempC, db } = rested({ conductivityWMK: 0 }, 1);
    tempC.forEach((t, i) => void expect(t, `${i}`).toBeGreaterThan(start.tempC[i]));
    db.forEach((m, i) => void expect(m, `${i}`).toBeGreaterThan(start.moistureDb[i]));
  });

  it('gives heat to the wall over its whole height', () => {
    const { tempC } = rested({ conductivityWMK: 0 }, 0, 0.05);
    tempC.forEach((t, i) => void expect(Math.abs(t - start.tempC[i]), `${i}`).toBeGreaterThan(0.1));
  });
});
