import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { binMoisture } from '../../../src/analysis/moisture/bin-moisture.ts';
import { binTemperature } from '../../../src/analysis/moisture/bin-temperature.ts';
import { FAN_OFF, FAN_ON, FAN_UNKNOWN } from '../../../src/analysis/types.ts';
import { HOUR, makeBin, makeCable, makeSeason, makeSeries, makeSpans, T0 } from './make-bin.ts';

const hole = fc.record({ from: fc.nat(600), to: fc.nat(900), missing: fc.boolean(), flag: fc.nat(3) });
const messy = fc.record({
  cables: fc.array(
    fc.record({
      at: fc.double({ min: 0, max: 5, noNaN: true }),
      heights: fc.array(fc.double({ min: 0, max: 8, noNaN: true }), { minLength: 1, maxLength: 5 }),
      holes: fc.array(hole, { maxLength: 5 }),
    }),
    { maxLength: 5 },
  ),
  runs: fc.option(
    fc.array(fc.tuple(fc.integer({ min: 1, max: 200 }), fc.constantFrom(FAN_OFF, FAN_ON, FAN_UNKNOWN)), {
      maxLength: 8,
    }),
  ),
  filled: fc.option(fc.integer({ min: -1000, max: 700 })),
  unloaded: fc.option(fc.integer({ min: 0, max: 1500 })),
  depth: fc.double({ min: 0.1, max: 8, noNaN: true }),
});

function numbersIn(value: unknown, path = ''): [string, number][] {
  if (typeof value === 'number') return [[path, value]];
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, inner]) => numbersIn(inner, `${path}.${key}`));
}

describe('messy logs', () => {
  it('every number is finite and within its interval, or null with a sentence', () => {
    let told = 0;
    fc.assert(
      fc.property(messy, ({ cables, runs, filled, unloaded, depth }) => {
        const built = cables.map((one, i) => makeCable(`C${i}`, one.at, ...one.heights));
        const series = built.flatMap((cable, c) =>
          cable.sensorHeightsM.map((_, s) => {
            const made = makeSeries(cable, s + 1, 0, 600, (hour) => 0.18 - 0.00005 * hour + 0.001 * c);
            cables[c].holes.forEach((one, h) => {
              if (h % cable.sensorHeightsM.length !== s) return;
              if (one.missing) made.moistureWb.fill(Number.NaN, one.from, one.to);
              else made.moistureFlags.fill(one.flag, one.from, one.to);
            });
            return made;
          }),
        );
        const bin = makeBin(built, {
          filledMs: filled === null ? null : T0 + filled * HOUR,
          unloadedMs: unloaded === null ? null : T0 + unloaded * HOUR,
          depthSteps: [{ fromMs: Number.NEGATIVE_INFINITY, depthM: depth }],
        });
        const spans = runs === null ? null : makeSpans(...runs);
        const fanHours = { value: 100, interval: null, why: null };
        const moisture = binMoisture({ bin, season: makeSeason(), series, spans, fanHours, tickets: [] });
        const temperature = binTemperature(bin, series, spans);
        for (const [path, value] of numbersIn({ moisture, temperature })) {
          expect(Number.isFinite(value), path).toBe(true);
        }
        const { value, interval, why } = moisture.pointsRemoved;
        if (value === null) expect(why!.length).toBeGreaterThan(20);
        else {
          told += 1;
          expect(why).toBeNull();
          expect(interval![0]).toBeLessThan(value);
          expect(interval![1]).toBeGreaterThan(value);
          expect(moisture.shares.reduce((sum, one) => sum + one.share, 0)).toBeCloseTo(1, 9);
        }
        for (const moment of [temperature.start, temperature.end]) {
          if (moment.value === null) expect(temperature.why).not.toBeNull();
          else expect(moment.value).toBeCloseTo(10, 9);
        }
      }),
      { seed: 7, numRuns: 300, endOnFailure: true },
    );
    expect(told).toBeGreaterThan(100); // the property is not empty: many of the logs do carry points
  });
});
