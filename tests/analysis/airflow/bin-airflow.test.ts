import { describe, expect, it } from 'vitest';
import { airflowFrom, missing } from '../../../src/analysis/airflow/bin-airflow.ts';
import { cableFlux } from '../../../src/analysis/airflow/cable-flux.ts';
import { likelyAirflow } from '../../../src/analysis/airflow/disagreement.ts';
import { fanSetAt, mainFanSet } from '../../../src/analysis/airflow/fan-sets.ts';
import { relativeFlow } from '../../../src/analysis/airflow/flow-through-time.ts';
import { runWindows } from '../../../src/analysis/airflow/run-windows.ts';
import type { FanSeason } from '../../../src/analysis/types.ts';
import { estimate, withheld } from '../../../src/base/estimate.ts';
import { overlap } from '../../../src/base/overlap.ts';
import { HOUR_MS, inventedBin, START_MS, spansOf } from '../fronts/invented-bin.ts';

const at = (hour: number) => START_MS + hour * HOUR_MS;
const bin = inventedBin([1], 1, 'up', 6);

describe('the airflow past a cable', () => {
  const pair = (window: number, fluxKgM2S: number) => ({ window, fluxKgM2S, logSd: 0.08 });
  it('is not moved by a pair that went wrong', () => {
    const good = [0.05, 0.051, 0.049, 0.0505, 0.0495].map((flux, i) => pair(i, flux));
    const found = cableFlux('C1', [...good, pair(2, 0.4)])!;
    expect(Math.abs(found.fluxKgM2S / 0.05 - 1)).toBeLessThan(0.02);
    expect(found.windows).toBe(5);
  });
  it('is less sure where windows disagree, and where there is one', () => {
    const found = (fluxes: readonly number[]) =>
      cableFlux(
        'C1',
        fluxes.map((flux, i) => pair(i, flux)),
      )!;
    const [apart, alike, one] = [[0.04, 0.05, 0.06, 0.07], [0.05, 0.05, 0.05, 0.05], [0.05]].map(found);
    expect(apart.weatherSd).toBeGreaterThan(2 * alike.weatherSd);
    expect(apart.ownSd).toBeCloseTo(alike.ownSd, 12);
    expect(one.ownSd).toBeGreaterThan(1.5 * alike.ownSd);
    expect(one.weatherSd).toBeGreaterThan(1.5 * alike.weatherSd);
    expect(cableFlux('C1', [])).toBeNull();
  });
  it('counts the weather of a window once: what it leaves wrong is no error of the cable', () => {
    // By hand, one window, fit sd sqrt(0.08^2 - 0.03^2) = 0.0742: own sqrt(0.03^2 + (1.25 x 0.0742)^2) = 0.0974, weather 3 %.
    const one = cableFlux('C1', [pair(0, 0.05)])!;
    expect(one.ownSd).toBeCloseTo(0.0974, 4);
    expect(one.weatherSd).toBeCloseTo(0.03, 12);
    // Heights of sensors stay wrong however many windows there are.
    const many = cableFlux(
      'C1',
      Array.from({ length: 400 }, (_, i) => pair(i, 0.05)),
    )!;
    expect(many.ownSd).toBeGreaterThan(0.03);
    expect(many.ownSd).toBeLessThan(0.031);
    expect(many.weatherSd).toBeLessThan(0.002);
  });
});

describe('stretches of running', () => {
  it('are cut at a rest of three days, where the depth changes, and at 120 fan hours', () => {
    const on = Uint8Array.from({ length: 700 }, (_, h) => (h < 200 || (h >= 300 && h < 360) ? 1 : 0));
    const grain = {
      ...bin.grain,
      depthSteps: [
        { fromMs: at(0), depthM: 3 },
        { fromMs: at(330), depthM: 6 },
      ],
    };
    const windows = runWindows({ ...bin, grain }, spansOf(on, 1));
    expect(windows.map((one) => [one.fromH, one.toH, one.depthM])).toEqual([
      [0, 100, 3],
      [100, 200, 3],
      [200, 230, 3],
      [230, 260, 6],
    ]);
  });
});

describe('which fans run', () => {
  const fan = (fanId: string, on: readonly number[]) =>
    ({ fanId, spans: spansOf(Uint8Array.from(on), 1) }) as FanSeason;
  const fans = [fan('F1', [1, 1, 1, 0, 0]), fan('F2', [0, 1, 1, 1, 0])];
  it('is told by moment and by most of the hours', () => {
    expect(fanSetAt(fans, at(0.5))).toBe('F1');
    expect(fanSetAt(fans, at(1.5))).toBe('F1+F2');
    expect(fanSetAt(fans, at(4.5))).toBe('');
    expect(mainFanSet(fans, fans[0].spans, at(0), at(5))).toEqual({ set: 'F1+F2', share: 0.5 });
  });
  it('and the pressure say how the airflow went through time', () => {
    const log = {
      timeMs: Float64Array.of(at(0.5), at(1.5)),
      pressurePa: Float64Array.of(300, 800),
      depthM: Float64Array.of(6, 6),
      fanSet: ['F1', 'F1+F2'],
    };
    const flow = relativeFlow(bin, log, fans, 6, 'F1+F2');
    expect(flow(at(1.6))).toBeCloseTo(1, 9);
    // 300 of 800 Pa drive less air: at the power of 0.6 to 0.8 that the resistance of corn has, 0.46 to 0.56 of it
    expect(flow(at(0.6))).toBeGreaterThan(0.46);
    expect(flow(at(0.6))).toBeLessThan(0.56);
    const blind = relativeFlow(
      bin,
      { ...log, timeMs: new Float64Array(0), pressurePa: new Float64Array(0), depthM: new Float64Array(0), fanSet: [] },
      fans,
      6,
      'F1+F2',
    );
    expect(blind(at(0.6))).toBeCloseTo(0.5 ** 0.7, 9);
  });
});

describe('fronts and pressure', () => {
  it('agree where their intervals overlap', () => {
    expect(overlap(estimate(5, 4, 6), estimate(7, 5.5, 9))).toBe(true);
    expect(overlap(estimate(5, 4, 5.4), estimate(7, 5.5, 9))).toBe(false);
    expect(overlap(estimate(5, 4, 6), withheld('No.'))).toBeNull();
  });
  it('are used in turn, but neither where pressure took a front’s number away by contradicting it', () => {
    const [front, pressure, none] = [estimate(5, 4, 6), estimate(7, 5.5, 9), withheld('No.')];
    expect(airflowFrom(front, pressure, false)).toBe('front');
    expect(airflowFrom(none, pressure, true)).toBe('pressure');
    expect(airflowFrom(none, pressure, null)).toBe('pressure');
    expect(airflowFrom(none, pressure, false)).toBeNull();
    expect(airflowFrom(none, none, null)).toBeNull();
  });
  it('say what their parting most likely means, with the packing factor that would mend it', () => {
    const parted = (byFront: number, byPressure: number) =>
      likelyAirflow(bin, {
        ...missing('x'),
        byFront: estimate(byFront, 0.9 * byFront, 1.1 * byFront),
        byPressure: estimate(byPressure, 0.9 * byPressure, 1.1 * byPressure),
        agree: false,
      })[0];
    // 1.5 x 1.5^(1/0.7) = 2.7
    expect(parted(4, 6)).toMatch(/Most likely the grain resists more.*about 2\.7 in place of 1\.5/);
    expect(parted(6, 4)).toMatch(/Most likely the grain lies looser.*about 0\.8 in place of 1\.5/);
    expect(likelyAirflow(bin, { ...missing('x'), agree: true })).toEqual([]);
  });
});
