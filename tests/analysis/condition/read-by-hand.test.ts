import { describe, expect, it } from 'vitest';
import { DAY, fromF, type Kept, kept } from './kept-bin.ts';

/** A bin of 59 days, and the same read once a week only: on its second day and every seventh after it. */
function both(made: Omit<Kept, 'days'>, everyDays = 7) {
  const days = 59;
  const isRead = (day: number) => Math.abs(day - 1.125 - everyDays * Math.round((day - 1.125) / everyDays)) < 0.1;
  const tempC = (heightM: number, day: number) => (isRead(day) ? made.tempC(heightM, day) : null);
  return { full: kept({ ...made, days }), weekly: kept({ ...made, days, tempC }) };
}
const moist = { moistureWb: () => 0.18 };
const holds = ({ interval }: { interval: [number, number] | null }, value: number | null) =>
  interval !== null && value !== null && interval[0] <= value && value <= interval[1];
const width = ({ interval }: { interval: [number, number] | null }) =>
  (interval?.[1] ?? Number.NaN) - (interval?.[0] ?? 0);

describe('cables read by hand once a week', () => {
  // Minnesota table (Wilcke & Morey, WW-6577-GO): corn of 18 % keeps 57 days at 60 °F.
  it('tell the storage time of grain at rest, hardly less surely than a log', () => {
    const { full, weekly } = both({ ...moist, tempC: () => fromF(60) });
    expect(Math.abs((weekly.age.lifeUsed.value ?? 0) / (59 / 57) - 1)).toBeLessThan(0.015);
    expect(width(weekly.age.lifeUsed) / width(full.age.lifeUsed)).toBeCloseTo(1, 1);
    expect(weekly.age.loss.value).toBeCloseTo(full.age.loss.value ?? Number.NaN, 4);
    expect(weekly.age.notes.join(' ')).toContain('Readings lie up to 7 days apart');
    expect(full.age.notes.join(' ')).not.toContain('apart');
  });

  // A third of the grain at 28 °C throughout: 59 / 3 days of grain, within the best range too (fields-1992).
  it('tell insects, by days that lie surely and days that may lie in the range', () => {
    const third = both({ tempC: (heightM) => (heightM === 5 ? 28 : 10) }).weekly.insects;
    expect(third.develop.value).toBeCloseTo(59 / 3, 6);
    expect(third.best.value).toBeCloseTo(59 / 3, 6);
    // Cooled on the sixteenth day, through 13 °C: that week counts wholly or not at all.
    const { full, weekly } = both({
      tempC: (_, day) => (day < 16 ? 20 : 6),
      fanOn: (day) => day === 16,
      outdoorC: () => 6,
    });
    expect(full.insects.develop.value).toBe(16);
    expect(holds(weekly.insects.develop, 16)).toBe(true);
    // Read early on days 15 and 22: the fifteen days before are sure, and all up to the next reading may have been.
    expect(weekly.insects.develop.interval?.map(Math.round)).toEqual([15, 22]);
  });

  it('put the change of a week where the fan ran, not straight over it', () => {
    const made = { ...moist, tempC: (_: number, day: number) => (day < 16 ? 25 : 5), outdoorC: () => 5 };
    const { full, weekly } = both({ ...made, fanOn: (day) => day === 16 });
    const straight = both(made).weekly;
    const off = ({ age }: typeof full) =>
      Math.abs(Math.log((age.lifeUsed.value ?? 0) / (full.age.lifeUsed.value ?? 1)));
    expect(off(weekly)).toBeLessThan(0.1);
    expect(off(straight)).toBeGreaterThan(2 * off(weekly));
    for (const one of [weekly, straight]) expect(holds(one.age.lifeUsed, full.age.lifeUsed.value)).toBe(true);
  });

  it('are less sure of a week in which the fan blew colder or warmer air through, as far as that may have gone', () => {
    // Between two readings of 10 °C the fan blows air of 26 °C for two days and cools the grain again: no reading tells it.
    const outdoorC = (day: number) => (day % 7 > 3 && day % 7 < 5.5 ? 26 : 8);
    const tempC = (_: number, day: number) => (day % 7 > 4 && day % 7 < 5.5 ? 18 : 10);
    const { full, weekly } = both({ ...moist, tempC, outdoorC, fanOn: () => true });
    const rest = both({ ...moist, tempC: () => 10, outdoorC }).weekly;
    expect(holds(weekly.age.lifeUsed, full.age.lifeUsed.value)).toBe(true);
    expect(weekly.insects.develop.interval?.[1]).toBeGreaterThan(full.insects.develop.value ?? Number.NaN);
    expect(full.insects.develop.value).toBeGreaterThan(5);
    expect(width(weekly.age.lifeUsed)).toBeGreaterThan(1.2 * width(rest.age.lifeUsed));
    expect(rest.insects.develop.interval?.[1]).toBeLessThan(1);
    // No log of one of the fans: any of them may have blown all week.
    const untold = both({ ...moist, tempC: () => 10, outdoorC, fansTold: false }).weekly;
    expect(untold.insects.develop.interval?.[1]).toBeGreaterThan(20);
  });

  it('reach to the outdoor air near an edge, not in the middle', () => {
    const outdoorC = (day: number) => (day % 7 > 2 && day % 7 < 6 ? 30 : 5);
    const { weekly } = both({ heightsM: [0.1, 3], tempC: () => 10, outdoorC });
    const most = Math.max(...weekly.grainDays.map((day) => day.warmestC ?? 0));
    expect(most).toBeGreaterThan(16);
    const inside = both({ heightsM: [2, 3], fromCentreM: 1, tempC: () => 10, outdoorC }).weekly;
    expect(Math.max(...inside.grainDays.map((day) => day.warmestC ?? 0))).toBeLessThan(10.1);
  });

  it('tell nothing between readings where a heater ran, the blown air is not known or they lie over 15 days apart', () => {
    const made = { ...moist, tempC: () => 10, fanOn: () => true };
    for (const blind of [both({ ...made, heater: true }), both({ ...made, weather: false }), both({ ...made }, 16)]) {
      expect(blind.weekly.age.lifeUsed.value).toBeNull();
      expect(blind.weekly.age.lifeUsed.why).toContain('of the time in which the grain lay there');
      expect(blind.weekly.insects.develop.value).toBeNull();
    }
    expect(both({ ...made }, 15).weekly.age.lifeUsed.value).not.toBeNull();
    // With the fan at rest the heater is too, and no air comes in.
    expect(
      both({ ...made, fanOn: () => false, heater: true, weather: false }).weekly.age.lifeUsed.value,
    ).not.toBeNull();
  });

  it('tell the coldest week and the days above the outdoor air with what weeks leave open', () => {
    const made = { tempC: (_: number, day: number) => Math.max(2, 22 - day), outdoorC: () => 2, fanOn: () => true };
    const { full, weekly } = both(made);
    expect(holds(weekly.coldest, full.coldest.value)).toBe(true);
    expect(holds(weekly.outdoors.days, full.outdoors.days.value)).toBe(true);
    expect(holds(weekly.outdoors.mostK, full.outdoors.mostK.value)).toBe(true);
    expect(width(weekly.outdoors.days)).toBeGreaterThan(width(full.outdoors.days));
    expect(weekly.grainDays.filter((day) => day.meanC !== null).length).toBe(59);
    expect(weekly.grainDays[1].dayMs - weekly.grainDays[0].dayMs).toBe(DAY);
  });
});
