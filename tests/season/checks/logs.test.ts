import { describe, expect, it } from 'vitest';
import { checkSeason } from '../../../src/season/checks/check-season.ts';
import { FLAGS } from '../../../src/tables/flags.ts';
import { make } from './made-bin.ts';
import { madeSeason, table, tablesOf, text } from './made-season.ts';

const made = make({ seed: 3, days: 90 });
const hours = made.airMs.length;
const season = madeSeason(made.options);
/** Plenum air: outdoors and a little warmer, some pressure while the fan runs. */
const plenum = (
  change: (columns: { temp_c: Float64Array; rh: Float64Array; static_pressure_pa: Float64Array }) => void,
) => {
  const columns = {
    temp_c: made.airC.map((tempC) => tempC + 1.5),
    rh: made.airRh.map((rh) => Math.round(rh * 90) / 100),
    static_pressure_pa: Float64Array.from(made.fanOn, (on) => (on ? 620 : 0)),
  };
  change(columns);
  return table('plenum', hours, { time: made.airMs, bin: text(hours, 'B1'), ...columns });
};
const weather = (change: (columns: { temp_c: Float64Array; rh: Float64Array }) => void) => {
  const columns = { temp_c: made.airC.slice(), rh: made.airRh.slice() };
  change(columns);
  return table('weather', hours, { time: made.airMs, role: text(hours, 'season'), ...columns });
};
const fan = (columns: Record<string, Float64Array>) =>
  table('fan', hours, { time: made.airMs, fan: text(hours, 'F1'), ...columns });
const kinds = (findings: readonly { kind: string; where: string }[]) =>
  findings.filter((one) => one.kind !== 'silent').map((one) => `${one.kind} ${one.where}`);
const energy = () => {
  let sum = 0;
  return Float64Array.from(made.fanOn, (on) => {
    const now = sum;
    sum += on * 8000 * 3600;
    return now;
  });
};

describe('plenum, weather and fan logs', () => {
  it('are believed when they are good', () => {
    const { flags, findings } = checkSeason(
      season,
      tablesOf(made, {
        plenum: plenum(() => {}),
        fan: fan({ current_a: Float64Array.from(made.fanOn, (on) => on * 20), energy_j: energy() }),
      }),
    );
    expect(kinds(findings)).toEqual([]);
    expect(findings).toEqual([]);
    for (const column of [flags.fan, flags.plenum, flags.weather])
      expect(column.some((bits) => bits !== 0)).toBe(false);
  });

  it('a frozen plenum sensor and an outdoor humidity at 100 % for weeks are stuck', () => {
    const { flags, findings } = checkSeason(
      season,
      tablesOf(made, {
        plenum: plenum(({ temp_c }) => temp_c.fill(12.3, 100, 400)),
        weather: weather(({ rh }) => rh.fill(1, 600, 1100)),
      }),
    );
    expect(kinds(findings)).toEqual(['stuck B1 plenum', 'stuck weather']);
    expect([...flags.plenum.keys()].filter((row) => flags.plenum[row] === FLAGS.stuck)).toEqual(
      Array.from({ length: 300 }, (_, i) => 100 + i),
    );
    expect([...flags.weather.keys()].filter((row) => flags.weather[row] === FLAGS.stuck)).toHaveLength(500);
  });

  it('a spike, a failure code and a humidity as a fraction', () => {
    const { flags, findings } = checkSeason(
      season,
      tablesOf(made, {
        plenum: plenum(({ temp_c, rh }) => {
          temp_c[50] = 999;
          for (let i = 200; i < 300; i++) rh[i] /= 100;
        }),
        weather: weather(({ temp_c }) => {
          temp_c[70] += 40;
        }),
      }),
    );
    expect(kinds(findings).sort()).toEqual(['spike B1 plenum', 'spike weather', 'unit B1 plenum']);
    expect(flags.plenum[50]).toBe(FLAGS.spike);
    expect(flags.plenum.filter((bits) => bits === FLAGS.unit)).toHaveLength(100);
    expect(flags.weather[70]).toBe(FLAGS.spike);
  });

  // 620 Pa that season.yaml calls inches of water are 620 x 249.089 = 154,435 Pa.
  it('a static pressure that cannot be all the while the fan runs asks first for its unit', () => {
    const wrong = plenum(({ static_pressure_pa }) => {
      for (const [i, pa] of static_pressure_pa.entries()) static_pressure_pa[i] = pa > 0 ? pa * 249.089 : i % 3;
    });
    const { flags, findings } = checkSeason(season, tablesOf(made, { plenum: wrong }));
    const told = findings.find((one) => one.kind === 'spike' && one.where === 'B1 plenum')!;
    expect(told.text).toMatch(/static pressure readings cannot be/);
    expect(told.advice).toBe(
      'Check the unit of its column in season.yaml; where that is right, have the sensor or its line checked.',
    );
    // The row's temperature and humidity stay believed.
    expect(flags.plenum.some((bits) => (bits & FLAGS.spike) !== 0)).toBe(false);
  });

  it('a plenum in the other scale, all season', () => {
    const { flags } = checkSeason(
      season,
      tablesOf(made, {
        plenum: plenum(({ temp_c }) =>
          temp_c.forEach((tempC, i) => {
            temp_c[i] = (tempC - 32) / 1.8;
          }),
        ),
      }),
    );
    expect(flags.plenum.every((bits) => bits === FLAGS.unit)).toBe(true);
  });

  it('a meter that was reset is told and keeps its rows', () => {
    const energy_j = energy();
    for (let i = 300; i < hours; i++) energy_j[i] -= energy_j[299];
    const { flags, findings } = checkSeason(
      season,
      tablesOf(made, { plenum: plenum(() => {}), fan: fan({ energy_j }) }),
    );
    expect(kinds(findings)).toEqual(['meter-reset fan F1']);
    expect(findings[0].fromMs).toBe(made.airMs[300]);
    expect(flags.fan.some((bits) => bits !== 0)).toBe(false);
  });

  it.each([
    [
      'back to a reading that is not zero',
      812,
      /jumped back once, from 4,\d{3} h to 812 h, .* reset, or replaced by another/,
    ],
    ['back by little', 3990, /jumped back once, from 4,\d{3} h to 3,990 h/],
    ['ahead', 9000, /jumped ahead once, from 4,\d{3} h to 9,000 h, by more than it can have counted/],
  ])('a run-hour meter replaced in mid-season, %s, is told with both readings and keeps its rows', (_, first, text) => {
    let ran = 0;
    const run_s = Float64Array.from(made.fanOn, (on) => {
      ran += on;
      return 3600 * (4000 + ran);
    });
    const offset = run_s[300] - 3600 * first;
    for (let i = 300; i < hours; i++) run_s[i] -= offset;
    const { flags, findings } = checkSeason(season, tablesOf(made, { plenum: plenum(() => {}), fan: fan({ run_s }) }));
    expect(kinds(findings)).toEqual(['meter-reset fan F1']);
    expect(findings[0].text).toMatch(text);
    expect(findings[0].advice).toContain('note what the old one showed last');
    expect(findings[0].fromMs).toBe(made.airMs[300]);
    expect(flags.fan.some((bits) => bits !== 0)).toBe(false);
  });

  it('a dead current sensor keeps rows with a good meter, and loses them without', () => {
    const current_a = Float64Array.from(made.fanOn, (on, i) => (i < 200 ? on * 20 : 0));
    const metered = checkSeason(
      season,
      tablesOf(made, { plenum: plenum(() => {}), fan: fan({ current_a, energy_j: energy() }) }),
    );
    expect(kinds(metered.findings)).toEqual(['stuck fan F1']);
    expect(metered.flags.fan.some((bits) => bits !== 0)).toBe(false);
    const alone = checkSeason(season, tablesOf(made, { plenum: plenum(() => {}), fan: fan({ current_a }) }));
    expect(kinds(alone.findings)).toContain('stuck fan F1');
    expect(alone.flags.fan[300]).toBe(FLAGS.stuck);
    expect(alone.flags.fan[100]).toBe(0);
  });

  it('a clamp the wrong way round, and a current that no fan draws, are no standing fan', () => {
    const backwards = Float64Array.from(made.fanOn, (on) => on * -20);
    const alone = checkSeason(season, tablesOf(made, { fan: fan({ current_a: backwards }) }));
    expect(kinds(alone.findings)).toContain('spike fan F1');
    const told = alone.findings.find((one) => one.kind === 'spike' && one.where === 'fan F1')!;
    expect(told.text).toMatch(/cannot be \(-20\.0 A\)/);
    expect(told.advice).toMatch(/wrong way round/);
    for (const [i, on] of made.fanOn.entries()) expect(alone.flags.fan[i]).toBe(on ? FLAGS.spike : 0);

    const wild = Float64Array.from(made.fanOn, (on, i) => (i === 300 ? 1e14 : on * 20));
    const one = checkSeason(season, tablesOf(made, { fan: fan({ current_a: wild }) }));
    expect([...one.flags.fan.keys()].filter((i) => one.flags.fan[i] !== 0)).toEqual([300]);
    // A row with a good meter beside it stays.
    const metered = checkSeason(season, tablesOf(made, { fan: fan({ current_a: wild, energy_j: energy() }) }));
    expect(kinds(metered.findings)).toContain('spike fan F1');
    expect(metered.flags.fan.some((bits) => bits !== 0)).toBe(false);
  });

  it('what never shows is told', () => {
    const { findings } = checkSeason(
      { ...season, fans: [...season.fans, { ...season.fans[0], id: 'F2' }] },
      tablesOf({ ...made, temp: made.temp.slice(0, 9), moisture: made.moisture.slice(0, 9) }),
    );
    const silent = findings.filter((one) => one.kind === 'silent');
    expect(silent.map((one) => one.where)).toEqual(['B1', 'fan F2', 'plenum']);
    expect(silent[0].text).toContain('3 sensors named in season.yaml never show a value: C2 sensors 4, 5 and 6');
  });
});

describe('a log from another season', () => {
  // 20 years of 365.25 days: the synthetic logs run side by side.
  const YEARS_MS = 20 * 365.25 * 86_400_000;
  it('is told as such, for a fan and for the weather', () => {
    const tables = tablesOf(made, {
      fan: table('fan', hours, {
        time: made.airMs.map((ms) => ms - YEARS_MS),
        fan: text(hours, 'F1'),
        current_a: Float64Array.from(made.fanOn, (on) => on * 20),
      }),
      weather: table('weather', hours, {
        time: made.airMs.map((ms) => ms + YEARS_MS),
        role: text(hours, 'season'),
        temp_c: made.airC,
        rh: made.airRh,
      }),
    });
    const gaps = checkSeason(season, tables).findings.filter((one) => one.kind === 'gap');
    const texts = Object.fromEntries(gaps.map((one) => [one.where, one.text]));
    expect(texts['fan F1']).toMatch(/^Not one reading .*ends 7,?2\d\d days before that begins/);
    expect(texts.weather).toMatch(/^Not one reading .*begins 7,?2\d\d days after that ends/);
    expect(gaps.find((one) => one.where === 'weather')!.advice).toMatch(/another season/);
  });
});

describe('gaps and loader flags', () => {
  it('a hole in the whole log is one finding, a dead sensor another', () => {
    const holed = {
      ...made,
      temp: made.temp.map((one) => one.slice()),
      moisture: made.moisture.map((one) => one.slice()),
    };
    for (const column of [holed.temp, holed.moisture]) {
      for (const one of column) one.fill(Number.NaN, 500, 572);
      column[7].fill(Number.NaN, 1500);
    }
    const { findings } = checkSeason(season, tablesOf(holed, { plenum: plenum(() => {}) }));
    const gaps = findings.filter((one) => one.kind === 'gap');
    expect(gaps.map(({ where, cells }) => [where, cells])).toEqual([
      ['B1', 72 * 12],
      ['B1 C2 sensor 2', hours - 1500],
    ]);
    expect(gaps[0].text).toBe('No readings for 3 days; 864 readings are lacking.');
    expect(gaps[0].advice).toBeNull();
  });

  it('a sensor that is silent from weeks before the end of the grain on is to be repaired, however few values it failed with', () => {
    const silentFrom = (reading: number, sensors: readonly number[], unloadedMs: number | null = null) => {
      const cut = (columns: Float64Array[], bad: number) =>
        columns.map((one, k) => {
          const own = one.slice();
          if (sensors.includes(k)) own.fill(bad, reading - 18, reading).fill(Number.NaN, reading);
          return own;
        });
      const failed = { ...made, temp: cut(made.temp, -127), moisture: cut(made.moisture, 0) };
      const bins = season.bins.map((bin) => ({ ...bin, grain: { ...bin.grain, unloadedMs } }));
      return checkSeason({ ...season, bins }, tablesOf(failed)).findings.filter((one) => one.kind === 'gap');
    };
    // 90 days of hourly readings: silent for 90 - 60 = 30 days.
    const [gap, ...more] = silentFrom(60 * 24, [7]);
    expect(more).toEqual([]);
    expect(gap.where).toBe('B1 C2 sensor 2');
    expect(gap.text).toBe('No readings for 30 days, to the end of the log; 720 readings are lacking.');
    expect(gap.advice).toContain('Have the sensor or its connection repaired');
    expect(silentFrom(60 * 24, [6, 7, 8, 9, 10, 11])[0].advice).toContain('whether a file of its log is missing');
    expect(silentFrom(80 * 24, [7])[0].advice).toBeNull();
    // Taken down with the grain: unloaded two days after.
    expect(silentFrom(60 * 24, [7], made.airMs[62 * 24])[0].advice).toBeNull();
  });

  it('readings flagged by the loader disturb nothing', () => {
    const n = made.timeMs.length;
    const twice = { ...made, temp: made.temp.map((one) => one.slice()) };
    const temp_flags = new Uint8Array(made.temp.length * n);
    // Wild values, but known to be duplicates.
    for (let i = 300; i < 400; i++) {
      twice.temp[2][i] = i % 2 === 0 ? 50 : -40;
      temp_flags[2 * n + i] = FLAGS.duplicate;
    }
    const flagged = tablesOf(twice, {}, { temp_flags });
    const { flags } = checkSeason(season, flagged);
    expect(flags.readings.temp.some((bits) => bits !== 0)).toBe(false);
  });
});
