import { describe, expect, it } from 'vitest';
import { DAY, fromF, kept } from './kept-bin.ts';

const wb = (percent: number) => () => percent / 100;

describe('storage time used', () => {
  // Minnesota table (Wilcke & Morey, WW-6577-GO, read at its source): corn of 18 % keeps 57 days at 60 °F and 288 days at 40 °F,
  // whole days; half a day in 57 is 0.9 %, the rule's table of the kit adds up to 0.6 %.
  it('adds up: half of the published time at 60 °F and half of that at 40 °F are all of it', () => {
    const { age } = kept({
      days: 172,
      tempC: (_, day) => fromF(day < 28.5 ? 60 : 40),
      moistureWb: wb(18),
    });
    expect(Math.abs((age.lifeUsed.value ?? 0) - (28.5 / 57 + (172 - 28.5) / 288))).toBeLessThan(0.015);
  });

  // By definition of the rule: when the time is over 0.5 % of the dry matter is lost (asabe-d535).
  it('is over at the loss that the rule is for', () => {
    const { age } = kept({ days: 57, tempC: () => fromF(60), moistureWb: wb(18) });
    expect(Math.abs(100 * (age.loss.value ?? 0) - 0.5)).toBeLessThan(0.01);
  });

  // The curve speaks of corn up to 5 % of its dry matter; what lost more is no grain, and 5 % on the dot would be no finding.
  it('tells no loss where the curve has ended, only that all of the time is used', () => {
    const { age, alerts } = kept({ days: 60, tempC: () => 30, moistureWb: wb(26) });
    expect(age.worstLifeUsed.value).toBeGreaterThan(5);
    expect(age.worstLoss.value).toBeNull();
    expect(age.loss.value).toBeNull();
    expect(age.loss.why).toContain('more than 5 %');
    expect(alerts.map(({ kind }) => kind)).toContain('time used up');
  });

  // NDSU (Hellevang 2019, seen): soybeans of 16 % held 35 days at 50 °F have used half of their time, by a table that the corn
  // equation runs 5 to 40 % above: so by the equation less than a half, and more than 0.6 of it.
  it('lies beside what NDSU says of soybeans, within what its table lies under the equation', () => {
    const { age } = kept({ days: 35, crop: 'soybean', tempC: () => fromF(50), moistureWb: wb(16) });
    const [low, high] = age.lifeUsed.interval ?? [0, 0];
    expect(low).toBeLessThan(0.5);
    expect(high).toBeGreaterThan(0.5);
  });

  it('weighs places by their grain and names the one that used most', () => {
    // Sensors at 1, 3 and 5 m of 6 m stand for a third each (half-way to the neighbours).
    const { age } = kept({
      days: 20,
      tempC: (heightM) => (heightM === 5 ? fromF(60) : fromF(20)),
      moistureWb: wb(18),
    });
    // Minnesota: 57 days at 60 °F, 1459 days at 20 °F.
    const mean = (20 / 57 + 2 * (20 / 1459)) / 3;
    expect(Math.abs((age.lifeUsed.value ?? 0) / mean - 1)).toBeLessThan(0.015);
    expect(age.worst).toMatchObject({ cable: 'C1', sensor: 3, heightM: 5 });
    expect(Math.abs((age.worstLifeUsed.value ?? 0) / (20 / 57) - 1)).toBeLessThan(0.015);
  });

  it('reaches up to what the crop’s other rule gives, which keeps cold corn for half as long', () => {
    // physics of both forms: they part by a factor of 2.0 at 30 °F.
    const { age } = kept({ days: 60, tempC: () => fromF(30), moistureWb: wb(18) });
    const value = age.lifeUsed.value ?? Number.NaN;
    const [low, high] = age.lifeUsed.interval ?? [Number.NaN, Number.NaN];
    expect(high / value).toBeGreaterThan(2 * Math.exp(1.645 * 0.25));
    // On the other side no rule stands: the rule's own quarter and what the sensors leave open.
    expect(value / low).toBeGreaterThan(Math.exp(1.645 * 0.25));
    expect(value / low).toBeLessThan(2);
  });

  it('goes straight over a hole, and the interval holds the colder and the warmer reading beside it', () => {
    const season = { days: 60, moistureWb: wb(18) };
    const hole = (_: number, day: number) => (day > 20 && day < 28 ? null : day <= 20 ? 20 : 0);
    const { age } = kept({ ...season, tempC: hole });
    const cold = kept({ ...season, tempC: (_, day) => (day <= 20 ? 20 : 0) }).age;
    const warm = kept({ ...season, tempC: (_, day) => (day < 28 ? 20 : 0) }).age;
    const of = (one: typeof age) => one.lifeUsed.value ?? Number.NaN;
    expect(of(age)).toBeGreaterThan(of(cold));
    expect(of(age)).toBeLessThan(of(warm));
    const [low, high] = age.lifeUsed.interval ?? [0, 0];
    const [coldLow] = cold.lifeUsed.interval ?? [0, 0];
    const [, warmHigh] = warm.lifeUsed.interval ?? [0, 0];
    expect(low / coldLow).toBeCloseTo(1, 1);
    expect(high / warmHigh).toBeCloseTo(1, 1);
  });

  it('reaches to the outdoor air of the days before the log begins and after it ends, and says so', () => {
    const season = { days: 80, moistureWb: wb(18), outdoorC: (day: number) => (day < 10 ? 25 : day < 72 ? 5 : 20) };
    const late = kept({ ...season, tempC: (_, day) => (day < 10 || day > 72 ? null : 8) }).age;
    const warm = kept({ ...season, tempC: (_, day) => (day < 10 ? 25 : day > 72 ? 20 : 8) }).age;
    const cold = kept({ ...season, tempC: () => 8 }).age;
    expect(late.lifeUsed.value).toBeCloseTo(cold.lifeUsed.value ?? Number.NaN, 12);
    // The end of grain as warm as the air, and a little more: the two rules part farther over the cold middle than over the warm one.
    const reached = (late.lifeUsed.interval?.[1] ?? 0) / (warm.lifeUsed.interval?.[1] ?? 1);
    expect(reached).toBeGreaterThan(0.95);
    expect(reached).toBeLessThan(1.15);
    expect((late.lifeUsed.interval?.[0] ?? 0) / (cold.lifeUsed.interval?.[0] ?? 1)).toBeCloseTo(1, 1);
    expect(late.notes.join(' ')).toContain('begins up to 10 days after the grain came in and ends up to 8 days before');
    expect(cold.notes.join(' ')).not.toContain('begins');
    // Without weather nobody knows how warm it was: the interval stays, the note says so.
    const blind = kept({ ...season, tempC: (_, day) => (day < 10 || day > 72 ? null : 8), weather: false }).age;
    expect(blind.notes.join(' ')).toContain('no weather');
  });

  it('is withheld where readings tell less than four fifths of the stay, or no moisture is known', () => {
    const blind = kept({ days: 60, tempC: (_, day) => (day < 30 ? 10 : null), moistureWb: wb(18) });
    expect(blind.age.lifeUsed.value).toBeNull();
    expect(blind.age.lifeUsed.why).toContain('of the time in which the grain lay there');
    const dry = kept({ days: 60, tempC: () => 10 });
    expect(dry.age.lifeUsed).toMatchObject({ value: null, why: 'No moisture of the grain is known.' });
  });

  it('is withheld with the temperatures of the sensors of which a moisture is known, not of others', () => {
    // The lowest sensor alone tells moisture, and fell silent after 20 of 60 days; the others were read throughout.
    const { why } = kept({
      days: 60,
      tempC: (heightM, day) => (heightM === 1 && day >= 20 ? null : 10),
      moistureWb: (heightM) => (heightM === 1 ? 0.18 : null),
    }).age.lifeUsed;
    expect(why).toMatch(/^At the sensors of which a moisture is known readings tell the temperature for at most 3\d %/);
    const short = kept({ days: 1, depths: [{ day: 0.5, depthM: 6 }], tempC: () => 10, moistureWb: () => 0.18 });
    expect(short.age.lifeUsed.why).toBe('No sensor lay in the grain for a day.');
  });

  it('takes the bin’s mean where no sensor tells moisture, and is less sure of it', () => {
    const { age } = kept({ days: 40, tempC: () => fromF(60), moisture: { start: 0.18, end: 0.18 } });
    expect(Math.abs((age.lifeUsed.value ?? 0) / (40 / 57) - 1)).toBeLessThan(0.015);
    const own = kept({ days: 40, tempC: () => fromF(60), moistureWb: wb(18) }).age;
    const width = (one: typeof age) => (one.worstLifeUsed.interval?.[1] ?? 0) - (one.worstLifeUsed.interval?.[0] ?? 0);
    expect(width(age)).toBeGreaterThan(1.2 * width(own));
    expect(age.notes.join(' ')).toContain('the bin’s mean stands for it');
  });

  // At 60 °F corn keeps 39 days at 19 % and 88 at 17 % (Arkansas, Farm Progress 2014), 275 at 15 %; by Simpson's rule over a straight
  // fall from 19 to 15 % 40 days use 40 (1/39 + 4/88 + 1/275) / 6 = 0.498 of it, where 19 % all the while would use 1.03.
  it.each([{ fan: false }, { noFan: true }, {}] as const)(
    'goes straight from the moisture at the start to that at the end where no fan hours part them: %o',
    (fan) => {
      const { age } = kept({ days: 40, tempC: () => fromF(60), moisture: { start: 0.19, end: 0.15 }, ...fan });
      expect(Math.abs((age.lifeUsed.value ?? 0) / 0.498 - 1)).toBeLessThan(0.04);
    },
  );

  it('is withheld where the fan was to change the moisture and only one moment’s is known', () => {
    const one = { days: 40, tempC: () => fromF(60), moisture: { start: 0.2, end: null } };
    const drying = kept({ ...one, goal: 'dry' }).age;
    expect(drying.lifeUsed.value).toBeNull();
    expect(drying.lifeUsed.why).toContain('Only the moisture at the start is known');
    // Cooling takes little water: there it stands for the whole storage. 28.3 days at 20 % and 60 °F
    // by the equation (physics of steele-1969, computed apart).
    const cooled = kept({ ...one, goal: 'cool' }).age;
    expect(Math.abs((cooled.lifeUsed.value ?? 0) / (40 / 28.3) - 1)).toBeLessThan(0.02);
  });

  it('tells germination’s time without a loss of dry matter for wheat, and nothing for rice', () => {
    const wheat = kept({ days: 30, crop: 'wheat', tempC: () => 20, moistureWb: wb(16) }).age;
    // Fraser & Muir 1981 (from memory): log10 days = 6.234 - 0.2118 * 16 - 0.0527 * 20 = 1.7912, 61.8 days.
    expect(Math.abs((wheat.lifeUsed.value ?? 0) / (30 / 61.8) - 1)).toBeLessThan(0.01);
    expect(wheat.loss.value).toBeNull();
    const rice = kept({ days: 30, crop: 'rice', tempC: () => 20, moistureWb: wb(16) }).age;
    expect(rice.lifeUsed.value).toBeNull();
    expect(rice.lifeUsed.why).toContain('rice');
  });

  it('says where grain lay outside its rule, and which way that errs', () => {
    const said = (tempC: number, percent: number, crop = 'wheat') =>
      kept({ days: 30, crop, tempC: () => tempC, moistureWb: wb(percent) }).age.notes.join(' ');
    // Fraser & Muir: 12 to 24 % and 0 to 40 °C; corn's equation 13 to 35 %.
    expect(said(20, 26)).toContain('wetter than 24 %');
    expect(said(20, 26)).toContain('more than is told');
    expect(said(-5, 14)).toContain('colder than 0 °C (32 °F)');
    expect(said(-5, 14)).toContain('less than is told');
    expect(said(45, 16, 'corn')).toContain('hotter than 40 °C (104 °F)');
    expect(said(20, 16)).toBe('');
  });

  it('tells every local day what was used so far', () => {
    const { age } = kept({ days: 57, tempC: () => fromF(60), moistureWb: wb(18) });
    expect(age.days).toHaveLength(57);
    expect(age.days[0].dayMs).toBe(Date.UTC(2024, 9, 1));
    expect(age.days[28].mean).toBeCloseTo(29 / 57, 1);
    expect(age.days.at(-1)?.mean).toBeCloseTo(age.lifeUsed.value ?? 0, 12);
    expect(age.days[1].dayMs - age.days[0].dayMs).toBe(DAY);
  });
});
