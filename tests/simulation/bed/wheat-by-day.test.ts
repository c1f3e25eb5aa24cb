import { describe, expect, it } from 'vitest';
import { humidityRatio, relativeHumidityOfRatio } from '../../../src/air/humidity-ratio.ts';
import { specificVolumeM3Kg } from '../../../src/air/volume.ts';
import { airOf, SEA_PA } from '../../../src/notebook/methods/drying-bed.ts';
import { caseOf } from '../../../src/notebook/methods/drying-checks.ts';
import { celsius } from '../../../src/notebook/methods/printed-units.ts';
import { mediumOf } from '../../../src/simulation/bed/medium-of.ts';
import type { Hours } from '../../../src/simulation/run/hours.ts';
import { runSeason } from '../../../src/simulation/run/run-season.ts';
import type { RunSpec } from '../../../src/simulation/run/run-spec.ts';
import { alwaysOn } from '../../../src/simulation/strategies/always-on.ts';
import { daytimeHours } from '../../../src/simulation/strategies/daytime-hours.ts';
import type { Strategy } from '../../../src/simulation/strategies/strategy.ts';
import { type ReferenceRow, readReference } from '../../reference/read-reference.ts';

const DAYS = 100;
const LAYERS = 20;
const DEPTH_M = 18 * 0.3048;
const rows = readReference('drying');
const [always, byDay] = ['nd-wheat-cont', 'nd-wheat-day'].map(
  (id) => rows.find((row) => row.id === id) as ReferenceRow,
);

/** North Dakota's September of the source, 58 degF and 65 % in the mean, warmest at 3 p.m.; the day's range is not stated. */
function september(rangeF: number): Hours {
  const length = 24 * DAYS;
  const ratio = humidityRatio(celsius(58), 0.65, SEA_PA);
  const tempC = Float64Array.from({ length }, (_, hour) =>
    celsius(58 + (rangeF / 2) * Math.cos((2 * Math.PI * ((hour % 24) - 14.5)) / 24)),
  );
  return {
    startMs: Date.UTC(2009, 8, 1),
    tempC,
    rh: tempC.map((t) => Math.min(1, relativeHumidityOfRatio(t, ratio, SEA_PA))),
    humidityRatio: new Float64Array(length).fill(ratio),
    pressurePa: SEA_PA,
    localHour: Uint8Array.from({ length }, (_, hour) => hour % 24),
    localMonth: new Uint8Array(length).fill(9),
    localDay: Uint16Array.from({ length }, (_, hour) => Math.floor(hour / 24)),
    pricePerKwh: new Float64Array(length).fill(Number.NaN),
    demand: [],
  };
}

/** Days and fan hours until the top is within a point of 13 %, and the bottom then, by the whole run of a strategy. */
function dried(strategy: Strategy, rangeF: number) {
  const { kgM2 } = airOf(caseOf(always));
  const medium = mediumOf('wheat', 670, { isotherm: always.isotherm });
  const blower = {
    airM3M2S: (kgM2 / 3600) * specificVolumeM3Kg(celsius(58), humidityRatio(celsius(58), 0.65, SEA_PA), SEA_PA),
    warmingK: 4 / 1.8,
    powerW: 1000,
    heaterK: 0,
    heaterW: 0,
    heaterFuelPerHour: 0,
  };
  const spec: RunSpec = {
    bed: { medium, depthM: DEPTH_M, layers: LAYERS, pressurePa: SEA_PA },
    floorAreaM2: 50,
    hours: september(rangeF),
    levels: [{ hour: 0, depthM: DEPTH_M, tempC: celsius(58), moistureDb: 0.18 / 0.82, blower }],
    endHour: 24 * DAYS,
    goal: 'dry',
    targetWb: 0.13,
    targetC: null,
  };
  const { trace, outcome } = runSeason(spec, strategy, {}, { trace: true });
  if (trace === null) throw new Error('no trace');
  const hour = trace.fan.findIndex((_, at) => trace.layerWb[at * LAYERS + LAYERS - 1] <= 0.14);
  return {
    days: hour / 24,
    fanHours: trace.fan.subarray(0, hour).reduce((sum, share) => sum + share, 0),
    bottomWb: trace.layerWb[hour * LAYERS],
    outcome,
  };
}

describe('wheat of 18 % at 0.75 cfm/bu in a normal September of North Dakota (NDSU 2009), by the kit’s own strategies', () => {
  it(`always on: ${always.published} days within 15 %, 12 hours a day: ${byDay.published} days within 15 %`, () => {
    // 15 %: both printed to days of a planning estimate; the day's range is not stated, 16 to 28 degF move the second by 6 %.
    for (const rangeF of [16, 24, 28]) {
      expect(Math.abs(dried(alwaysOn, rangeF).days / Number(always.published) - 1)).toBeLessThan(0.15);
      expect(Math.abs(dried(daytimeHours, rangeF).days / Number(byDay.published) - 1)).toBeLessThan(0.15);
    }
  });

  it('the clock takes far more days, fewer fan hours (744 for 840 in the source), and leaves the bottom drier, as the source says', () => {
    const [on, clock] = [alwaysOn, daytimeHours].map((strategy) => dried(strategy, 20));
    expect(clock.days / on.days).toBeGreaterThan(1.4);
    expect(clock.fanHours).toBeLessThan(on.fanHours);
    expect(clock.bottomWb).toBeLessThan(on.bottomWb - 0.01);
    for (const { outcome } of [on, clock]) {
      expect(Math.abs(outcome.imbalance.water)).toBeLessThan(1e-9);
      expect(Math.abs(outcome.imbalance.heat)).toBeLessThan(1e-9);
    }
  });
});
