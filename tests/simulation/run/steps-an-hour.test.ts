import { describe, expect, it } from 'vitest';
import { runSeason } from '../../../src/simulation/run/run-season.ts';
import { strategyOf } from '../../../src/simulation/strategies/strategies.ts';
import { inventedBin, inventedHours } from './invented-bin.ts';

const hours = inventedHours({
  count: 24 * 40,
  tempC: (hour) => 10 + 6 * Math.sin((2 * Math.PI * hour) / 24),
  rh: (hour) => 0.68 - 0.18 * Math.sin((2 * Math.PI * hour) / 24),
});
const runBy = (id: string, stepsAnHour?: number) =>
  runSeason(inventedBin(hours, { bed: { ...inventedBin(hours).bed, wallWM3K: 0.05 }, stepsAnHour }), strategyOf(id))
    .outcome;

describe('an hour of a run in several steps of the bed', () => {
  it('is one step when left out', () => {
    expect(runBy('daytime-hours')).toEqual(runBy('daytime-hours', 1));
  });

  it('runs the fan as long, closes its books and nears one answer as steps get shorter', () => {
    const runs = [1, 2, 4, 8].map((steps) => runBy('daytime-hours', steps));
    for (const { fanHours, energyKwh, imbalance } of runs) {
      expect(fanHours).toBe(runs[0].fanHours);
      expect(energyKwh).toBe(runs[0].energyKwh);
      // The issue's own limit on the books of a bed.
      expect(Math.abs(imbalance.water)).toBeLessThan(1e-9);
      expect(Math.abs(imbalance.heat)).toBeLessThan(1e-9);
    }
    // The rate is taken at a step's end, an error of the first order: each halving moves by about half of the one before.
    for (const key of ['endMoistureWb', 'wettestWb', 'endTempC'] as const) {
      const moved = runs.slice(1).map((run, i) => Math.abs(run[key] - runs[i][key]));
      expect(moved[0], key).toBeGreaterThan(0);
      for (const i of [1, 2]) expect(moved[i] / moved[i - 1], key).toBeLessThan(0.7);
    }
  });
});
