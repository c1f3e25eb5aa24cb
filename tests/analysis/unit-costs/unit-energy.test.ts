import { describe, expect, it } from 'vitest';
import { spanList, toFanSpans } from '../../../src/analysis/fan/spans.ts';
import {
  NATURAL_AIR,
  type PlausibilityInput,
  plausibleEnergy,
} from '../../../src/analysis/unit-costs/plausible-energy.ts';
import { unitEnergy } from '../../../src/analysis/unit-costs/unit-energy.ts';
import { estimate, withheld } from '../../../src/base/estimate.ts';
import { sourceOf } from '../../../src/base/sources/sources.ts';
import type { Fan } from '../../../src/bin/fan.ts';
import { makeBin } from '../moisture/make-bin.ts';

const DRY = makeBin([]);
const about = (value: number, half: number) => estimate(value, value - half, value + half);
const energy = (value: number, half = 0) => ({ energyKwh: about(value, half) });
const points = (value: number, half: number) => ({ pointsRemoved: about(value, half) });
const water = (value: number, half: number) => ({ bySensors: about(value, half) });

describe('kWh for what drying did, by hand', () => {
  // 1.57 kWh a bushel from 21 to 16 % is 0.31 kWh a bushel-point (North Dakota State University, 2007; 5 points).
  it('1.57 kWh a bushel for 5 points is 0.314 a bushel-point, whatever the bushels', () => {
    const got = unitEnergy(DRY, energy(15_700), points(5, 0), water(15_000, 0), 10_000);
    expect(got.kwhPerPoint.value).toBe(3140);
    expect(got.kwhPerBushelPoint.value).toBeCloseTo(0.314, 12);
    expect(got.why).toBeNull();
  });
  // A wet bushel of 56 lb from 21 to 16 % gives off 56 x 0.4536 x 5/84 = 1.512 kg: 1 kWh a bushel is 0.661 kWh a kilogram,
  // 3412.14 / 2.20462 x 0.661 = 1,023 Btu a pound (design reference: about 1,036, with the water of a dry bushel).
  it('1 kWh a bushel over 21 to 16 %: 0.661 kWh a kilogram of water, about 1,036 Btu a pound', () => {
    const waterKg = 10_000 * 56 * 0.45359237 * (0.05 / 0.84);
    const got = unitEnergy(DRY, energy(10_000), points(5, 0), water(waterKg, 0), 10_000).kwhPerKgWater.value ?? NaN;
    expect(got).toBeCloseTo(0.6614, 4);
    const btuPerLb = (got * 3412.14) / 2.20462;
    expect(Math.abs(btuPerLb / 1036 - 1)).toBeLessThan(0.02);
  });
  it('the intervals join: 900 kWh over 3 points give or take 0.3 is 300, from 900/3.3 to 900/2.7', () => {
    const got = unitEnergy(DRY, energy(900), points(3, 0.3), water(3000, 300), 1);
    expect(got.kwhPerPoint.interval?.[0]).toBeCloseTo(900 / 3.3, 9);
    expect(got.kwhPerPoint.interval?.[1]).toBeCloseTo(900 / 2.7, 9);
    expect(got.kwhPerKgWater.interval?.[1]).toBeCloseTo(900 / 2700, 9);
    const unsure = unitEnergy(DRY, energy(900, 90), points(3, 0.3), water(3000, 300), 1);
    expect(unsure.kwhPerPoint.interval?.[1]).toBeGreaterThan(900 / 2.7);
  });
  it('withheld with the reason: points or water that reach zero, another goal, no bushels, no log', () => {
    const zero = unitEnergy(DRY, energy(900), points(0.4, 0.5), water(400, 500), 1);
    expect(zero.kwhPerPoint).toEqual(withheld(zero.why as string));
    expect(zero.why).toContain('reaches zero');
    expect(zero.kwhPerKgWater.value).toBeNull();
    const wet = unitEnergy(DRY, energy(900), points(3, 0.3), water(400, 500), 1);
    expect(wet.kwhPerPoint.value).toBe(300);
    expect(wet.kwhPerKgWater.why).toContain('reaches zero');
    const cool = unitEnergy(makeBin([], {}, { goal: 'cool' }), energy(900), points(3, 0.3), water(1, 0), 1);
    expect(cool.why).toContain('run to cool');
    expect(unitEnergy(DRY, energy(900), points(3, 0.3), water(1, 0), null).kwhPerBushelPoint.why).toContain('bushels');
    expect(unitEnergy(DRY, { energyKwh: withheld('no log') }, points(3, 0.3), water(1, 0), 1).why).toBe('no log');
  });
});

describe('beside published figures of natural-air drying', () => {
  const input = (kwh: number, half: number, more: Partial<PlausibilityInput> = {}): PlausibilityInput => ({
    bin: DRY,
    fans: [{ heater: null } as Fan],
    fan: { unknownHours: 0, hours: about(500, 1), spans: toFanSpans(spanList()) },
    moisture: { end: { value: null, window: null, stillAir: false, readings: 0, sensors: 0, fanOn: null } },
    temperature: { start: { value: 15, window: null, stillAir: false, readings: 0, sensors: 0, fanOn: null } },
    water: { agree: true, bySensors: about(1, 0), byAirBetween: about(1, 0), byTickets: withheld('none') },
    airflow: { cfmPerBushel: about(1, 0.1) },
    useful: null,
    kwhPerBushelPoint: about(kwh, half),
    users: 1,
    ...more,
  });

  it('both published figures lie within the working range: 0.31, and 1 kWh a bushel for 3 to 6 points', () => {
    const [low, high] = NATURAL_AIR.kwhPerBushelPoint;
    for (const kwh of [1.57 / 5, 1 / 3, 1 / 6]) {
      expect(kwh).toBeGreaterThan(low);
      expect(kwh).toBeLessThan(high);
    }
    expect(plausibleEnergy(input(0.314, 0.05))).toMatchObject({ stands: 'within' });
    for (const key of plausibleEnergy(input(0.314, 0.05)).sourceKeys) expect(sourceOf(key).provenance).toBe('seen');
  });
  it('wholly outside: below or above, with what most likely makes it so', () => {
    const start = { ...input(0, 0).temperature.start, value: 31 };
    const warm = plausibleEnergy(input(0.09, 0.02, { temperature: { start } }));
    expect(warm.stands).toBe('below');
    expect(warm.text[1]).toContain('warm grain and warm air');
    const silent = plausibleEnergy(input(0.09, 0.02, { fan: { ...input(0, 0).fan, unknownHours: 100 } }));
    expect(silent.text[1]).toContain('not in the log');
    const wrong = plausibleEnergy(input(0.6, 0.05, { useful: { againstShare: about(0.4, 0.1) } }));
    expect(wrong.stands).toBe('above');
    expect(wrong.text[1]).toContain('worked against the goal');
    expect(plausibleEnergy(input(0.6, 0.05)).text[1]).toContain('Nothing in the logs says why');
  });
  it('so far below that no bed and no air explain it, the fan log is doubted first', () => {
    // 0.0017 kWh a bushel-point: a hundredth of what North Dakota measured (0.31).
    const start = { ...input(0, 0).temperature.start, value: 31 };
    const one = plausibleEnergy(input(0.0017, 0.001, { temperature: { start } }));
    expect(one).toMatchObject({ stands: 'below', doubtsLog: true });
    expect(one.text[1]).toMatch(/^Most likely the fan log leaves out most of the hours/);
    expect(plausibleEnergy(input(0.09, 0.02)).doubtsLog).toBeUndefined();
    // Its upper end could be a shallow bed in warm air.
    expect(plausibleEnergy(input(0.03, 0.02)).doubtsLog).toBeUndefined();
  });
  it('of a fan that serves two bins the equal part is no measure: below only where all of its energy would be', () => {
    const shared = (kwh: number, half: number) => plausibleEnergy(input(kwh, half, { users: 2 }));
    // Half of 0.2 is 0.1, alone below 0.15: all of it lies within.
    expect(plausibleEnergy(input(0.1, 0.01)).stands).toBe('below');
    expect(shared(0.1, 0.01)).toMatchObject({ stands: null, text: [expect.stringContaining('is an assumption')] });
    expect(shared(0.6, 0.01).stands).toBeNull();
    // All of it at the most 0.12.
    expect(shared(0.05, 0.01)).toMatchObject({ stands: 'below' });
    // 0.022 to 0.036 are under a quarter of 0.15; twice as much is not.
    expect(plausibleEnergy(input(0.03, 0.006)).doubtsLog).toBe(true);
    expect(shared(0.03, 0.006).doubtsLog).toBeUndefined();
  });
  it('sensors that tell less water than the air make a bin look dear, and the other way about', () => {
    const told = {
      agree: false,
      bySensors: about(1000, 50),
      byAirBetween: about(2000, 50),
      byTickets: withheld('none'),
    };
    expect(plausibleEnergy(input(0.6, 0.05, { water: told })).text[1]).toContain('told too low');
    expect(plausibleEnergy(input(0.09, 0.02, { water: told })).text[1]).not.toContain('told too');
  });
  it('an interval across an end says no more than that; heat and other goals are not held beside it', () => {
    expect(plausibleEnergy(input(0.16, 0.04))).toMatchObject({ stands: 'across' });
    expect(plausibleEnergy(input(0.3, 0.01, { fans: [{ heater: {} } as Fan] })).text[0]).toContain('heater');
    expect(plausibleEnergy(input(0.3, 0.01, { bin: makeBin([], {}, { goal: 'cool' }) })).stands).toBeNull();
    expect(plausibleEnergy({ ...input(0, 0), kwhPerBushelPoint: withheld('reaches zero') }).text).toEqual([
      'reaches zero',
    ]);
  });
});
