import { describe, expect, it } from 'vitest';
import type { FanSeason, Span } from '../../../src/analysis/types.ts';
import { usefulHours } from '../../../src/analysis/useful/useful-hours.ts';
import { HOUR, knownInput, type Made } from './known-input.ts';

const DAY = 24 * HOUR;

/** The season as a meter read at each local midnight leaves it: hours of `days` spread over the day, twelve of each. */
function readDaily(days: readonly number[], made: Made = {}) {
  const usual = (hour: number) => hour >= 14 || hour < 2;
  const input = knownInput({ ...made, on: (hour, day) => (days.includes(day) ? hour % 2 === 0 : usual(hour)) });
  const startMs = input.spans.startMs[0];
  const spread: Span[] = days.map((day) => ({ fromMs: startMs + day * DAY, toMs: startMs + (day + 1) * DAY }));
  const fans = input.fans.map((fan): FanSeason => ({ ...fan, spread }));
  return usefulHours({ ...input, fans, fan: { ...input.fan, fans } });
}
const all = Array.from({ length: 20 }, (_, day) => day);

describe('hours of which a meter tells how many, but not when', () => {
  it('of two days of twenty: 24 h are not classed, whatever the air of the hours over which they are spread', () => {
    const got = readDaily([10, 11]);
    expect(got.hours.unknown.value).toBeCloseTo(24, 6);
    expect(got.notes.join(' ')).toContain(
      'Of 24 h a meter that was read once a day or more seldom tells how many, not when',
    );
    // They may all have been run by night: 12 h of each other day work against drying by night, and these at most beside them.
    const rest = usefulHours(knownInput({ on: (hour, day) => day !== 10 && day !== 11 && (hour >= 14 || hour < 2) }));
    expect(got.against.value).toBeCloseTo(rest.against.value!, 6);
    expect(got.against.interval![1]).toBeGreaterThanOrEqual(rest.against.value! + 24);
    expect(got.against.interval![0]).toBeLessThanOrEqual(rest.against.value!);
  });
  it('a season told so throughout: nothing is classed, and the reason names the meter', () => {
    const got = readDaily(all);
    expect(got.why).toContain('tells how many hours the fan ran, not which');
    for (const name of ['dry', 'rewet', 'cool', 'warm', 'little'] as const) expect(got.hours[name].value).toBeNull();
    expect(got.forGoal.value).toBeNull();
    expect(got.againstCost.value).toBeNull();
    expect(got.offWouldHavePaid.value).toBeNull();
    expect(got.hours.unknown.value).toBeCloseTo(240, 6);
  });
  it('by the hour of the day and by the outdoor air they are a part of their own, and may lie in each of the others', () => {
    const got = readDaily([10, 11]);
    const bands = Object.fromEntries(got.hoursOfDay.map((one) => [one.key, one]));
    // 18 days from 14 to 2 h: three hours of each between 15 and 18 h, none between 3 and 6 h. Of the two days' twelve hours
    // each part of the day may have held its three.
    expect(bands['15'].hours).toMatchObject({ value: 54, interval: [54, 60] });
    expect(bands['3'].hours).toMatchObject({ value: 0, interval: [0, 6] });
    expect(bands['3'].against.interval).toEqual([0, 6]);
    expect(bands.none.hours.value).toBeCloseTo(24, 6);
    expect(got.hoursOfDay.at(-1)!.key).toBe('none');
    const sum = (of: typeof got.hoursOfDay) => of.reduce((all, { hours }) => all + hours.value!, 0);
    expect(sum(got.hoursOfDay)).toBeCloseTo(240, 6);
    expect(sum(got.outdoor)).toBeCloseTo(240, 6);
    expect(got.outdoor.find(({ key }) => key === 'none')!.hours.value).toBeCloseTo(24, 6);
    for (const { key, hours } of got.outdoor.filter((one) => one.key !== 'none'))
      expect(hours.interval![1], key).toBeGreaterThanOrEqual(hours.value! + 24);
  });
});
