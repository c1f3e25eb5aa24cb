import { describe, expect, it } from 'vitest';
import { usefulHours } from '../../../src/analysis/useful/useful-hours.ts';
import type { UsefulHours } from '../../../src/analysis/useful/useful-hours-types.ts';
import type { Estimate } from '../../../src/base/estimate.ts';
import { knownInput, type Made } from './known-input.ts';

const told = (made: Made = {}) => usefulHours(knownInput(made));

describe('a fan log that is silent for two days', () => {
  const silent = (_: number, day: number) => day === 10 || day === 11;
  // Without plenum readings the air of an hour is the same whether the fan ran or not.
  const whole = told({ plenum: false });
  const quiet = told({ plenum: false, silent });
  const holds = ({ interval }: Estimate, { value }: Estimate) => {
    expect(interval![0]).toBeLessThanOrEqual(value! + 1e-9);
    expect(interval![1]).toBeGreaterThanOrEqual(value! - 1e-9);
  };

  it('whatever the fan did meanwhile, the intervals hold it', () => {
    // As it ran on the other days, stood still, ran by day alone, by night alone, and all the time.
    const usual = (hour: number) => hour >= 14 || hour < 2;
    const meanwhile: ((hour: number) => boolean)[] = [
      usual,
      () => false,
      (hour) => hour >= 8 && hour < 20,
      (hour) => hour >= 20 || hour < 8,
      () => true,
    ];
    for (const ran of meanwhile) {
      const truth = told({ plenum: false, on: (hour, day) => (silent(hour, day) ? ran(hour) : usual(hour)) });
      for (const name of ['dry', 'rewet', 'cool', 'warm', 'little'] as const)
        holds(quiet.hours[name], truth.hours[name]);
      holds(quiet.forGoal, truth.forGoal);
      holds(quiet.against, truth.against);
      holds(quiet.againstShare, truth.againstShare);
      holds(quiet.againstCost, truth.againstCost);
      holds(quiet.offWouldHavePaid, truth.offWouldHavePaid);
      holds(quiet.entryLayer!.dry, truth.entryLayer!.dry);
      holds(quiet.entryLayer!.rewet, truth.entryLayer!.rewet);
      for (const by of ['months', 'hoursOfDay', 'outdoor'] as const) {
        for (const group of truth[by]) {
          const own = quiet[by].find(({ key }) => key === group.key)!;
          holds(own.hours, group.hours);
          holds(own.forGoal, group.forGoal);
          holds(own.against, group.against);
        }
      }
    }
  });

  it('adds only the silent hours whose air could have done so: 24 of 48 by night, at 0.1 a kWh', () => {
    // The fan's 24 h of these two days are not told: 216 of 240 h. The air is damp in 12 h of each day, those at the change in part.
    const tight = (one: UsefulHours) => one.against.interval![1] - one.against.value!;
    const more = tight(quiet) - tight(whole) * (quiet.against.value! / whole.against.value!);
    expect(more).toBeGreaterThanOrEqual(2 * 10);
    expect(more).toBeLessThanOrEqual(2 * 14);
    const cost = (one: UsefulHours) => one.againstCost.interval![1] - one.againstCost.value!;
    expect(cost(quiet) - cost(whole)).toBeGreaterThan(20 * 10 * 0.1 - 3);
    expect(cost(quiet) - cost(whole)).toBeLessThan(28 * 10 * 0.1 + 3);
    expect(quiet.hours.empty).toMatchObject({ value: 0, interval: [0, 0] });
    expect(quiet.notes.join(' ')).toMatch(/silent for 48 h/);
  });

  it('silent while no grain was in: no class can be more for it, but the fan hours of an empty bin', () => {
    const late = told({ filledDay: 12, silent });
    const unbroken = told({ filledDay: 12 });
    expect(late.against).toEqual(unbroken.against);
    expect(late.hours.dry).toEqual(unbroken.hours.dry);
    expect(late.hours.empty.interval).toEqual([120, 168]);
  });

  it('the error of a log’s own hours is in every class: of half of the hours half of the variance', () => {
    // All hours dry: the only error is the log's. Six hours of standard error are 9.9 h at 90 %.
    const all = told({ on: (hour) => hour >= 10 && hour < 16, hoursSd: 6 });
    expect(all.hours.dry.interval![0]).toBeCloseTo(120 - 1.645 * 6, 2);
    expect(all.hours.dry.interval![1]).toBeCloseTo(120 + 1.645 * 6, 2);
    expect(all.months[0].hours.interval![1]).toBeCloseTo(120 + 1.645 * 6, 2);
  });
});
