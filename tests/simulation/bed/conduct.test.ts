import { describe, expect, it } from 'vitest';
import { halve } from '../../../src/base/halve.ts';
import { ACCOUNT, type Bed, wallConductanceWM3K } from '../../../src/simulation/bed/bed.ts';
import { bedHolds, bedImbalance } from '../../../src/simulation/bed/bed-totals.ts';
import { conduct, FLOOR_WM2K, SURFACE_WM2K } from '../../../src/simulation/bed/conduct.ts';
import { setLevel } from '../../../src/simulation/bed/set-level.ts';
import { filledBed } from './filled-bed.ts';

const NONE = Number.NaN;
const HOUR_S = 3600;
const rest = (bed: Bed, hours: number, plenumC: number, headspaceC: number, wallC: number, seconds = HOUR_S) => {
  for (let t = 0; t < hours * HOUR_S; t += seconds) conduct(bed, seconds, { plenumC, headspaceC, wallC });
};
/** J/(m3 K) of the bed's grain. */
const heatJM3K = ({ medium, moistureDb }: Bed) =>
  medium.dryDensityKgM3 * (medium.heatDryJKgK + medium.heatPerMoistureJKgK * moistureDb[0]);

describe('heat through grain at rest', () => {
  it('does not flow in a bed of one temperature without surroundings, nor where they are as warm', () => {
    const bed = filledBed(12, 0.15, { wallWM3K: 0.1 });
    rest(bed, 100, NONE, NONE, NONE);
    rest(bed, 100, 12, 12, 12);
    for (const t of bed.tempC) expect(t).toBeCloseTo(12, 12);
    expect(bed.account[ACCOUNT.heatByConduction]).toBeCloseTo(0, 3);
  });

  it('without surroundings evens out and keeps all of it', () => {
    const bed = filledBed(0, 0.15, { depthM: 1 });
    bed.tempC.fill(30, 0, 10);
    const before = bedHolds(bed).heatJM2;
    rest(bed, 24 * 365, NONE, NONE, NONE);
    expect(Math.abs(bedHolds(bed).heatJM2 / before - 1)).toBeLessThan(1e-12);
    for (const t of bed.tempC) expect(t).toBeCloseTo(15, 2);
  });

  // Carslaw and Jaeger, Conduction of Heat in Solids, ch. 3 (textbook): a slab of one temperature, one face insulated, the other given to
  // air through a film: sum of 2 sin(b) cos(b x / l) exp(-b^2 a t / l^2) / (b + sin(b) cos(b)), b tan(b) = h l / k.
  it.each([
    // Backward steps are of the first order: an hour's is 2 % off next to the surface after six of them, a quarter hour’s half of that.
    [6, 3600, 0.025],
    [6, 900, 0.012],
    [24, 3600, 0.01],
    [24 * 7, 3600, 0.005],
    [24 * 60, 3600, 0.005],
  ])(
    'follows the series of a slab with a film after %d h in steps of %d s, within %d of the drop',
    (hours, seconds, within) => {
      const bed = filledBed(20, 0.15, { depthM: 2, layers: 80 });
      rest(bed, hours, NONE, 0, NONE, seconds);
      const k = bed.medium.conductivityWMK;
      const biot = (SURFACE_WM2K * 2) / k;
      const fourier = ((k / heatJM3K(bed)) * hours * HOUR_S) / 4;
      const roots = Array.from({ length: 400 }, (_, n) =>
        halve(n * Math.PI, (n + 0.5) * Math.PI, (b) => b * Math.tan(b) < biot),
      );
      bed.tempC.forEach((t, i) => {
        const x = (i + 0.5) / 80;
        const terms = roots.map(
          (b) => ((2 * Math.sin(b)) / (b + Math.sin(b) * Math.cos(b))) * Math.cos(b * x) * Math.exp(-b * b * fourier),
        );
        const exact = terms.reduce((sum, one) => sum + one, 0);
        expect(Math.abs(t / 20 - exact), `layer ${i}`).toBeLessThan(within);
      });
    },
  );

  it('ends, between two airs, in the straight line that their films and the grain give', () => {
    const bed = filledBed(5, 0.15, { depthM: 1, layers: 10 });
    rest(bed, 24 * 3000, 0, 20, NONE, 24 * HOUR_S);
    const k = bed.medium.conductivityWMK;
    const flow = 20 / (1 / FLOOR_WM2K + 1 / k + 1 / SURFACE_WM2K);
    bed.tempC.forEach((t, i) => void expect(t).toBeCloseTo(flow / FLOOR_WM2K + (flow * (i + 0.5) * 0.1) / k, 6));
  });

  it('keeps its books and its bounds in steps of a day through layers of an inch with a hair of grain on top', () => {
    const bed = filledBed(20, 0.15, { depthM: 5, layers: 200, wallWM3K: 0.2 });
    setLevel(bed, 4.97505, 20, 0.18);
    for (let day = 0; day < 200; day++) {
      conduct(bed, 24 * HOUR_S, { plenumC: -5, headspaceC: day % 2 === 0 ? 30 : -20, wallC: -10 });
      for (let i = 0; i < bed.filled; i++) {
        expect(bed.tempC[i]).toBeLessThanOrEqual(30);
        expect(bed.tempC[i]).toBeGreaterThanOrEqual(-20);
      }
    }
    expect(Math.abs(bedImbalance(bed).heat)).toBeLessThan(1e-12);
  });

  it('comes out alike in steps of a quarter hour and of six hours, within 0.2 K of 20', () => {
    const [short, long] = [900, 6 * HOUR_S].map((seconds) => {
      const bed = filledBed(20, 0.15);
      rest(bed, 24 * 30, 0, 0, NONE, seconds);
      return bed.tempC;
    });
    short.forEach((t, i) => void expect(Math.abs(t - long[i])).toBeLessThan(0.2));
  });
});

describe('heat through the wall', () => {
  // Carslaw and Jaeger, ch. 7 (textbook): the mean of a long cylinder of one temperature whose wall is brought to another:
  // sum of 4 / b^2 exp(-b^2 a t / r^2) over the zeros b of J0.
  const ZEROS = [2.404826, 5.520078, 8.653728, 11.791534, 14.930918];
  it('falls in time as the mean of a cylinder does', () => {
    const radiusM = 4;
    const k = filledBed(20, 0.15).medium.conductivityWMK;
    const bed = filledBed(20, 0.15, { wallWM3K: wallConductanceWM3K(k, radiusM) });
    const perS = k / heatJM3K(bed) / radiusM ** 2;
    const exact = (hours: number) =>
      ZEROS.reduce((sum, b) => sum + (4 / b ** 2) * Math.exp(-b * b * perS * hours * HOUR_S), 0);
    const ours = (hours: number) => {
      rest(bed, hours, NONE, NONE, 0);
      return bed.tempC[7] / 20;
    };
    const [first, second] = [ours(24 * 300), ours(24 * 300)];
    // The same decay once the first term is what is left of the series; before that the rim has already given a third of its heat.
    expect(Math.log(first / second) / Math.log(exact(24 * 300) / exact(24 * 600))).toBeCloseTo(1, 1);
    expect(first / exact(24 * 300)).toBeGreaterThan(1);
    expect(first / exact(24 * 300)).toBeLessThan(5.783 / 4);
  });
});
