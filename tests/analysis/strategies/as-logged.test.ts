import { describe, expect, it } from 'vitest';
import { runStrategy } from '../../../src/analysis/strategies/run-strategy.ts';
import { hindsightSchedule } from '../../../src/simulation/hindsight/hindsight-schedule.ts';
import { runSeason } from '../../../src/simulation/run/run-season.ts';
import { asLogged } from '../../../src/simulation/strategies/as-logged.ts';
import { BLOWER, inventedBin, inventedHours } from '../../simulation/run/invented-bin.ts';

const HOURS = 48;
// A day's half with the fan on, an hour of it for a quarter.
const share = Float64Array.from({ length: HOURS }, (_, hour) => (hour === 5 ? 0.25 : hour % 24 < 12 ? 1 : 0));
const RAN = 23.25;

describe('a season run as logged', () => {
  const spec = inventedBin(inventedHours({ count: HOURS }));
  const [level] = spec.levels;
  const cold = { ...spec, levels: [{ ...level, blower: { ...BLOWER, heaterK: 0 } }] };

  it('burns the heater whenever the fan runs: energy 23.25 h x 10.5 kW x 0.10, fuel 23.25 h x 3 (by hand)', () => {
    const { outcome } = runStrategy(spec, 'as-logged', { logged: share });
    expect(outcome!.fanHours).toBeCloseTo(RAN, 12);
    expect(outcome!.heatCost).toBeCloseTo(RAN * 3, 9);
    expect(outcome!.energyCost).toBeCloseTo(RAN * 10.5 * 0.1, 9);
  });

  it('burns it in the hours alone that are told: 10 of 23.25 h', () => {
    const burnt = Uint8Array.from({ length: HOURS }, (_, hour) => (hour >= 24 && hour < 34 ? 1 : 0));
    const { outcome } = runStrategy({ ...spec, burnt }, 'as-logged', { logged: share });
    expect(outcome!.fanHours).toBeCloseTo(RAN, 12);
    expect(outcome!.heatCost).toBeCloseTo(10 * 3, 9);
  });

  it('sends in air that is warmer by fan and heater: 10 + 2 + 4 degC', () => {
    const { trace } = runSeason(spec, asLogged(spec, share), {}, { trace: true });
    // The bottom layer comes to the air that enters, cooler by what it evaporates: never above it, clearly above air at 12.
    const bottom = Math.max(...Array.from({ length: 12 }, (_, hour) => trace!.layerC[hour * 20]));
    expect(bottom).toBeLessThanOrEqual(16);
    const bare = runSeason(cold, asLogged(cold, share), {}, { trace: true }).trace!;
    const unheated = bare.layerC[11 * 20];
    expect(trace!.layerC[11 * 20] - unheated).toBeGreaterThan(2);
  });

  it('has no heat without a heater', () => {
    const { outcome } = runStrategy(cold, 'as-logged', { logged: share });
    expect(outcome!.heatCost).toBe(0);
    expect(outcome!.energyCost).toBeCloseTo(RAN * 10 * 0.1, 9);
  });

  it('is a schedule that the search in hindsight starts from, heat and all', () => {
    // Nothing but the log to start from, and no search forward: the log itself, or what is cheaper and comes as near.
    const best = hindsightSchedule(spec, [], { logged: share, search: { widths: [], mostHours: 0 } });
    expect([...best!.ways].filter((way) => way === 2)).toHaveLength(23);
    expect(best!.ways).not.toContain(1);
  });
});
