import { describe, expect, it } from 'vitest';
import { usefulHours } from '../../../src/analysis/useful/useful-hours.ts';
import { HOUR_CLASSES, type UsefulHours } from '../../../src/analysis/useful/useful-hours-types.ts';
import { psychrolibSi } from '../../support/psychrolib-si.ts';
import { HOUR, knownInput, LOCAL_HOUR, type Made } from './known-input.ts';

const valuesOf = ({ hours }: UsefulHours) => Object.fromEntries(HOUR_CLASSES.map((name) => [name, hours[name].value]));
const told = (made: Made = {}) => usefulHours(knownInput(made));

describe('a season whose every hour is known', () => {
  // The fan runs from 14 to 2 h: 6 h of dry day air and 6 h of damp night air on each of 20 days (the reading at the full
  // hour starts the other air, and air is on the line between two readings, so one hour at each change is in between).
  it('hours by class, for and against, and what they cost', () => {
    const useful = told();
    expect(useful.hours.dry.value! + useful.hours.rewet.value! + useful.hours.little.value!).toBeCloseTo(240, 9);
    expect(useful.hours.dry.value).toBeGreaterThanOrEqual(100);
    expect(useful.hours.dry.value).toBeLessThanOrEqual(140);
    expect(useful.forGoal.value).toBe(useful.hours.dry.value);
    expect(useful.against.value).toBe(useful.hours.rewet.value);
    expect(useful.againstShare.value).toBeCloseTo(useful.against.value! / 240, 12);
    // Every damp hour lies after 20 h: 10 kW at 0.1 a kWh.
    const night = useful.stretches
      .filter(({ of }) => of === 'rewet')
      .reduce((sum, one) => sum + (one.toMs - one.fromMs) / HOUR, 0);
    expect(night).toBeCloseTo(useful.against.value!, 9);
    expect(useful.air).toMatchObject({ plenumHours: 240, weatherHours: 0 });
    expect(useful.why).toBeNull();
  });

  it('each hour costs its own price: by day the double of by night', () => {
    // Day only, grain far drier than its target: every one of 6 x 20 dry hours works against the goal, at 0.2.
    const byDay = told({ on: (hour) => hour >= 10 && hour < 16, targetWb: 0.2, goal: 'dry' });
    expect(valuesOf(byDay)).toEqual({ dry: 120, rewet: 0, cool: 0, warm: 0, little: 0, unknown: 0, empty: 0 });
    expect(byDay.against.value).toBe(120);
    // 120 h x 10 kW (and half a watt) x 0.2
    expect(byDay.againstCost.value).toBeCloseTo(240, 1);
    const byNight = told({ on: (hour) => hour >= 22 || hour < 4 });
    expect(byNight.against.value).toBe(120);
    expect(byNight.againstCost.value).toBeCloseTo(120, 1);
    // 2 % of the energy's standard error is 3.3 % at 90 %.
    expect(byNight.againstCost.interval![1]).toBeCloseTo(120 * (1 + 1.645 * 0.02), 1);
  });

  it('with the fan off by day, running would have paid; not once the target is reached, nor without one', () => {
    const night = (hour: number) => hour >= 22 || hour < 4;
    const missed = told({ on: night });
    // 12 h of dry air a day, those at the change in part
    expect(missed.offWouldHavePaid.value).toBeGreaterThanOrEqual(20 * 11);
    expect(missed.offWouldHavePaid.value).toBeLessThanOrEqual(20 * 13);
    for (const { fromMs, toMs } of missed.offStretches) {
      expect(LOCAL_HOUR(fromMs)).toBeGreaterThanOrEqual(7);
      expect(LOCAL_HOUR(toMs)).toBeLessThanOrEqual(21);
    }
    expect(told({ on: night, targetWb: 0.16 }).offWouldHavePaid.value).toBe(0);
    expect(told({ on: night, targetWb: null }).offWouldHavePaid).toMatchObject({
      value: null,
      why: 'No target moisture is stated.',
    });
    expect(told({ on: night, goal: 'hold' }).offWouldHavePaid.why).toMatch(/hold/);
  });

  it('goal cool: named by temperature; warm air works against it', () => {
    const air = () => ({ tempC: 20, rh: 0.6 });
    const warm = told({ goal: 'cool', air, grainC: 10 });
    expect(valuesOf(warm)).toMatchObject({ warm: 240 });
    expect(warm.against.value).toBe(240);
    const cool = told({ goal: 'cool', air: () => ({ tempC: 2, rh: 0.7 }), grainC: 15, targetC: 5 });
    expect(valuesOf(cool)).toMatchObject({ cool: 240 });
    expect(cool.forGoal.value).toBe(240);
    expect(cool.first).toBe('temperature');
    expect(cool.offWouldHavePaid.value).toBe(240);
  });

  it('goal condition: damp air is wanted', () => {
    const damp = told({ goal: 'condition', on: (hour) => hour >= 22 || hour < 4, grainWb: 0.12, targetWb: 0.145 });
    expect(valuesOf(damp)).toMatchObject({ rewet: 120 });
    expect([damp.forGoal.value, damp.against.value]).toEqual([120, 0]);
  });

  it('thresholds of season.yaml move the classes, and the interval spans half and double', () => {
    // Air of 10 degC and 30 %: 9.5 % as published. Grain of 10.4 %: 0.9 point apart.
    const near = { air: () => ({ tempC: 10, rh: 0.3 }), grainWb: 0.104, targetWb: 0.09, grainC: 10 };
    const usual = told(near);
    expect(usual.hours.dry.value).toBe(240);
    // Double of half a point is more than 0.9.
    expect(usual.hours.dry.interval![0]).toBe(0);
    const wide = told({ ...near, usefulHours: { moistureWb: 0.012, temperatureK: 5 } });
    expect(wide.hours.dry.value).toBe(0);
    expect(wide.hours.little.value).toBe(240);
    expect(wide.limits).toEqual({ moistureWb: 0.012, temperatureK: 5, stated: true });
  });

  it('hours before the grain came are a class of their own, and count neither way', () => {
    const late = told({ filledDay: 5 });
    expect(late.hours.empty.value).toBe(60);
    expect(HOUR_CLASSES.reduce((sum, name) => sum + late.hours[name].value!, 0)).toBeCloseTo(240, 9);
    expect(late.forGoal.value! + late.against.value! + late.hours.little.value!).toBeLessThanOrEqual(180);
    expect(late.notes.join(' ')).toMatch(/60 h ran while the bin held no grain/);
  });
});

describe('the air that entered', () => {
  const night = { on: (hour: number) => hour >= 22 || hour < 4 };

  it('without a plenum log is the outdoor air, warmed by 2 degC at its own water content', () => {
    // Outdoor air of 10 degC and 66 %, warmed to 12 degC: psychrolib's saturation pressures give what is left of the humidity.
    const rh = (0.66 * psychrolibSi('GetSatVapPres', 10)) / psychrolibSi('GetSatVapPres', 12);
    const air = () => ({ tempC: 10, rh: 0.66 });
    const warmed = told({ ...night, plenum: false, air, grainC: 12, grainWb: 0.14 });
    const logged = told({ ...night, air: () => ({ tempC: 12, rh }), grainC: 12, grainWb: 0.14 });
    expect(warmed.air).toEqual({ plenumHours: 0, weatherHours: 120, warmingK: 2, warmingFrom: 'stated' });
    expect(valuesOf(warmed)).toEqual(valuesOf(logged));
    expect(warmed.notes.join(' ')).toMatch(
      /warmed by 2 °C \(3.6 °F\), from published figures; the intervals span 1 °C \(1.8 °F\) less and more/,
    );
  });

  it('is not known past a heater whose warming nothing tells', () => {
    const heated = told({ ...night, plenum: false, heater: true });
    expect(heated.hours.unknown.value).toBe(120);
    expect(heated.against).toMatchObject({ value: null, interval: null });
    expect(heated.why).toMatch(/heater warms the air by an amount that no plenum reading tells, so nobody can say/);
  });

  it('drawn down is the outdoor air as it is, whatever the plenum says', () => {
    const down = told({ ...night, direction: 'down' });
    expect(down.air).toEqual({ plenumHours: 0, weatherHours: 120, warmingK: 0, warmingFrom: 'none' });
    expect(down.hours.rewet.value).toBe(120);
  });

  it('where the moisture is never known, hours are named by temperature alone', () => {
    const bare = told({ goal: 'cool', air: () => ({ tempC: 2, rh: 0.7 }), grainC: 15, moistures: false });
    expect(bare.hours.cool.value).toBe(240);
    expect(bare.entryLayer).toBeNull();
    expect(bare.notes.join(' ')).toMatch(/named by temperature alone/);
    expect(bare.hours.dry).toMatchObject({ value: null, why: expect.stringMatching(/moisture is not known/) });
    expect(bare.hours.little.value).toBeNull();
  });
});

describe('a bin whose temperature nobody knows', () => {
  it('has no hours of cooling and warming, and none that did next to nothing', () => {
    const bare = told({ temperatures: false, on: (hour) => hour >= 22 || hour < 4 });
    for (const name of ['cool', 'warm', 'little'] as const) {
      expect(bare.hours[name]).toMatchObject({
        value: null,
        interval: null,
        why: 'The grain’s temperature is not known, so no hour is named by it.',
      });
    }
    expect(bare.hours.rewet.value).toBe(120);
    expect(bare.notes.join(' ')).toMatch(/named by moisture alone/);
    // Air in balance with the grain did nothing to its moisture, and what it did to its temperature is open.
    const open = told({ temperatures: false, air: () => ({ tempC: 10, rh: 0.3 }), grainWb: 0.095, targetWb: 0.09 });
    expect(open.hours.unknown.value).toBe(240);
    expect(open.hours.dry.interval![1]).toBe(240);
    expect(open.hours.cool.value).toBeNull();
  });
});

describe('air and grain at the ends of what formulas hold for', () => {
  it.each([
    [-45, 0.9, 0.15, -20],
    [49, 0.02, 0.15, 30],
    [25, 1.04, 0.15, 20],
    [10, 0.5, 0.45, 10],
    [10, 0.5, 0.03, 10],
    [Number.NaN, 0.5, 0.15, 10],
    [10, Number.NaN, 0.15, 10],
  ])('%f degC and %f on grain of %f and %f degC: every hour has a class', (tempC, rh, grainWb, grainC) => {
    for (const goal of ['dry', 'cool', 'condition', 'hold'] as const) {
      const useful = told({ goal, air: () => ({ tempC, rh }), grainWb, grainC, targetC: 5 });
      expect(HOUR_CLASSES.reduce((sum, name) => sum + useful.hours[name].value!, 0)).toBeCloseTo(240, 9);
      for (const one of [useful.forGoal, useful.against, ...Object.values(useful.hours)]) {
        if (one.value === null) continue;
        expect(one.interval![0]).toBeLessThanOrEqual(one.value);
        expect(one.interval![1]).toBeGreaterThanOrEqual(one.value);
        expect(one.interval![1]).toBeLessThanOrEqual(240 + 1e-9);
      }
    }
  });
});

describe('parts of the season', () => {
  it('months, hours of the day and kinds of weather each add up to the fan hours', () => {
    const useful = told();
    for (const groups of [useful.months, useful.hoursOfDay, useful.outdoor]) {
      expect(groups.reduce((sum, one) => sum + one.hours.value!, 0)).toBeCloseTo(240, 9);
      expect(groups.reduce((sum, one) => sum + one.against.value!, 0)).toBeCloseTo(useful.against.value!, 9);
      expect(groups.reduce((sum, one) => sum + one.forGoal.value!, 0)).toBeCloseTo(useful.forGoal.value!, 9);
    }
    expect(useful.months.map((one) => one.key)).toEqual(['2024-10']);
    // 14 to 2 h: bands from 12, 15, 18, 21 and 0
    expect(useful.hoursOfDay.map((one) => [one.key, one.hours.value])).toEqual([
      ['0', 40],
      ['12', 20],
      ['15', 60],
      ['18', 60],
      ['21', 60],
    ]);
  });

  it('the layer where the air enters: sensors nearest to the floor', () => {
    const useful = told({ on: (hour) => hour >= 22 || hour < 4 });
    expect(useful.entryLayer).toMatchObject({ heightM: 0.6 });
    expect(useful.entryLayer?.rewet.value).toBe(120);
    expect(useful.entryLayer?.overdried?.value).toBe(0);
  });
});
