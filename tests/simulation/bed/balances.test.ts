import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { humidityRatio } from '../../../src/air/humidity-ratio.ts';
import { type Bed, newBed } from '../../../src/simulation/bed/bed.ts';
import { bedHolds, bedImbalance } from '../../../src/simulation/bed/bed-totals.ts';
import { conduct } from '../../../src/simulation/bed/conduct.ts';
import { keepState, newState, restoreState } from '../../../src/simulation/bed/keep-state.ts';
import { mediumOf } from '../../../src/simulation/bed/medium-of.ts';
import { passAir } from '../../../src/simulation/bed/pass-air.ts';
import { setLevel } from '../../../src/simulation/bed/set-level.ts';
import { spoil } from '../../../src/simulation/bed/spoil.ts';

const HOURS = 24 * 270;
const PRESSURE_PA = 97_000;

/** A season drawn at random: which grain and bin, and a generator of what happens hour by hour. */
const season = fc.record({
  crop: fc.constantFrom('corn', 'soybean', 'wheat', 'durum', 'barley', 'canola', 'rice', 'sunflower'),
  near: fc.boolean(),
  layers: fc.integer({ min: 2, max: 60 }),
  depthM: fc.double({ min: 0.5, max: 12, noNaN: true }),
  air: fc.constantFrom('up' as const, 'down' as const),
  columns: fc.constantFrom([1], [0.7, 1.3], [1.4, 0.6, 1, 0]),
  moistureDb: fc.double({ min: 0.08, max: 0.4, noNaN: true }),
  airflow: fc.double({ min: 1, max: 600, noNaN: true }),
  seed: fc.integer({ min: 1, max: 2 ** 31 - 1 }),
});

/** Linear congruential numbers, 0 to 1: enough for forcing, and the same everywhere. */
function chance(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1103515245) + 12345) & 0x7fffffff;
    return state / 0x7fffffff;
  };
}

function run(drawn: typeof season extends fc.Arbitrary<infer T> ? T : never): Bed {
  const { crop, near, layers, depthM, air, columns, moistureDb, airflow, seed } = drawn;
  const medium = mediumOf(crop, 600, near ? { thinLayer: 'near-equilibrium' } : {});
  const bed = newBed({
    ...{ medium, layers, depthM, air, pressurePa: PRESSURE_PA, wallWM3K: 0.05, airShares: columns },
    areaShares: columns.map((_, i) => (columns.length === 4 ? [0.3, 0.3, 0.4, 0][i] : 1 / columns.length)),
  });
  const next = chance(seed);
  const kept = newState(bed);
  setLevel(bed, depthM * next(), 25 * next(), moistureDb);
  for (let hour = 0; hour < HOURS; hour++) {
    const tempC =
      12 * Math.cos((2 * Math.PI * hour) / HOURS) + 6 * Math.sin((2 * Math.PI * hour) / 24) + 8 * next() - 4;
    if (next() < 0.5)
      passAir(bed, airflow * next(), 3600, tempC, humidityRatio(tempC, 0.2 + 0.8 * next(), PRESSURE_PA));
    const fanRests = next() < 0.5;
    conduct(bed, 3600, { plenumC: fanRests ? tempC : Number.NaN, headspaceC: tempC + 5 * next(), wallC: tempC });
    if (hour % 6 === 0) spoil(bed, 6);
    // Filled on, drawn down, now and then to nothing.
    if (next() < 0.01)
      setLevel(bed, next() < 0.1 ? 0 : depthM * next(), 30 * next(), moistureDb * (0.8 + 0.4 * next()));
    // What a search tries and takes back leaves no trace.
    if (next() < 0.005) {
      keepState(bed, kept);
      passAir(bed, 300, 3600, 20, 0.01);
      setLevel(bed, depthM, 30, 0.3);
      restoreState(bed, kept);
    }
  }
  return bed;
}

describe('water and heat of a bed', () => {
  it('close to 1e-9 over nine months of drawn weather, fills, draws, rests, spoiling, columns, air up and down', () => {
    fc.assert(
      fc.property(season, (drawn) => {
        const bed = run(drawn);
        const { water, heat } = bedImbalance(bed);
        expect(Math.abs(water)).toBeLessThan(1e-9);
        expect(Math.abs(heat)).toBeLessThan(1e-9);
        for (const array of [bed.tempC, bed.moistureDb, bed.lifeUsed, bed.account, bed.leaving]) {
          expect(array.every(Number.isFinite)).toBe(true);
        }
      }),
      { seed: 5, numRuns: 24 },
    );
  }, 60_000);

  it('are found open when something is lost', () => {
    const bed = run({ ...fc.sample(season, { seed: 3, numRuns: 1 })[0], layers: 10 });
    setLevel(bed, bed.layers * bed.layerM, 10, 0.2);
    const { waterKgM2, heatJM2 } = bedHolds(bed);
    bed.moistureDb[0] *= 1.0001;
    expect(Math.abs(bedImbalance(bed).water)).toBeGreaterThan(1e-9);
    expect(bedHolds(bed).waterKgM2).toBeGreaterThan(waterKgM2);
    expect(bedHolds(bed).heatJM2).not.toBe(heatJM2);
  });
});
