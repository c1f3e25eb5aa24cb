import { describe, expect, it } from 'vitest';
import { fileClock } from '../../../src/season/clock/file-clock.ts';
import type { Stamps } from '../../../src/season/clock/stamps.ts';

// US rule since 2007 (Energy Policy Act of 2005, sec. 110): in Chicago clocks go from 2:00 CDT to 1:00 CST on 3 November 2024 (07:00 UTC),
// and from 2:00 CST to 3:00 CDT on 9 March 2025 (08:00 UTC). CDT = UTC-5, CST = UTC-6.
const ZONE = 'America/Chicago';
const at = (text: string) => Date.parse(`${text.replace(' ', 'T')}Z`);

function stamps(texts: readonly string[], series: readonly number[] = texts.map(() => 0)): Stamps {
  return {
    ms: Float64Array.from(texts, at),
    local: new Uint8Array(texts.length).fill(1),
    series: Int32Array.from(series),
  };
}
const read = (given: Stamps, timeZone: string | null = null) => {
  const clock = fileClock('logs/a.csv', given, timeZone, ZONE, true);
  return { ...clock, utc: Array.from(clock.timeMs, (ms) => new Date(ms).toISOString().slice(5, 16).replace('T', ' ')) };
};
/** Wall clock every `minutes` from `from`, as a logger on a fixed offset shows it. */
const steady = (from: string, count: number, minutes: number) =>
  Array.from({ length: count }, (_, i) =>
    new Date(at(from) + i * minutes * 60_000).toISOString().slice(0, 16).replace('T', ' '),
  );

describe('the repeated hour of autumn', () => {
  const half = [
    '2024-11-03 00:30',
    '2024-11-03 01:00',
    '2024-11-03 01:30',
    '2024-11-03 01:00',
    '2024-11-03 01:30',
    '2024-11-03 02:00',
  ];
  const utc = ['11-03 05:30', '11-03 06:00', '11-03 06:30', '11-03 07:00', '11-03 07:30', '11-03 08:00'];
  it('is told apart by the order of the rows', () => {
    expect(read(stamps(half)).utc).toEqual(utc);
    expect(read(stamps(half)).findings).toEqual([]);
  });
  it('also newest first', () => {
    expect(read(stamps(half.toReversed())).utc).toEqual(utc.toReversed());
  });
  it('also in an hourly log, where it shows as the same stamp twice', () => {
    const hourly = ['2024-11-03 00:00', '2024-11-03 01:00', '2024-11-03 01:00', '2024-11-03 02:00'];
    expect(read(stamps(hourly)).utc).toEqual(['11-03 05:00', '11-03 06:00', '11-03 07:00', '11-03 08:00']);
  });
  it('by series: sensors interleaved, or one below the other', () => {
    const both = half.flatMap((text) => [text, text]);
    const want = utc.flatMap((text) => [text, text]);
    expect(
      read(
        stamps(
          both,
          both.map((_, i) => i % 2),
        ),
      ).utc,
    ).toEqual(want);
    expect(read(stamps([...half, ...half], [0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 1, 1])).utc).toEqual([...utc, ...utc]);
  });
  it('by the file where a series has one row in the hour: fan 1 switched in the second pass', () => {
    const events = ['2024-11-02 12:00', '2024-11-02 12:00', '2024-11-03 01:50', '2024-11-03 01:10', '2024-11-03 04:00'];
    expect(read(stamps(events, [0, 1, 0, 1, 0])).utc.slice(2, 4)).toEqual(['11-03 06:50', '11-03 07:10']);
  });
  it('in each of two copies of the day on its own, and in a log whose rows all stand twice', () => {
    const day = ['2024-11-02 23:30', ...half, '2024-11-03 04:00'];
    const want = ['11-03 04:30', ...utc, '11-03 10:00'];
    expect(read(stamps([...day, ...day])).utc).toEqual([...want, ...want]);
    const twice = ['2024-11-03 00:00', '2024-11-03 01:00', '2024-11-03 01:00', '2024-11-03 02:00'].flatMap((one) => [
      one,
      one,
    ]);
    expect(read(stamps(twice)).utc.slice(2, 6)).toEqual(['11-03 06:00', '11-03 06:00', '11-03 07:00', '11-03 07:00']);
  });
  it('not in a log read every three hours: one time twice is a row written twice', () => {
    const rows = [
      '2024-11-02 19:10',
      '2024-11-02 22:10',
      '2024-11-03 01:10',
      '2024-11-03 01:10',
      '2024-11-03 03:10',
      '2024-11-03 06:10',
    ];
    expect(read(stamps(rows)).utc.slice(2, 4)).toEqual(['11-03 06:10', '11-03 06:10']);
  });
  it('a single pass is daylight time', () => {
    expect(read(stamps(['2024-11-02 12:00', '2024-11-03 01:10', '2024-11-04 09:00'])).utc[1]).toBe('11-03 06:10');
  });
  it('stamps with an offset need no order', () => {
    const given = stamps(['2024-11-03 07:30', '2024-11-03 06:30']);
    given.local.fill(0);
    expect(read(given).utc).toEqual(['11-03 07:30', '11-03 06:30']);
  });
});

describe('a logger that keeps standard time in a file read with daylight saving', () => {
  it('shows in spring by stamps in the missing hour: kept by the offset before, flagged', () => {
    const found = read(stamps(steady('2025-03-08 12:00', 48, 60)));
    const row = 14; // 02:00 on 9 March
    expect(found.utc[row]).toBe('03-09 08:00');
    expect([...found.clock.keys()].filter((i) => found.clock[i] === 1)).toEqual([row]);
    expect(found.findings).toHaveLength(1);
    expect(found.findings[0].rows).toEqual([row]);
    // 03:00 to 11:00 of the 10th are 33 rows, and the flagged one is at 08:00 UTC, daylight time already.
    expect(found.findings[0].text).toMatch(
      /1 row stands in the hour .* \(2025-03-09\): .*keep standard time.* 34 rows/,
    );
    expect(found.findings[0].advice).toMatch(/time_zone: local standard/);
  });
  it('shows in autumn by an hour that stands once in a steady log', () => {
    const found = read(stamps(steady('2024-11-02 12:00', 40, 60)));
    expect(found.findings.map((one) => one.text)).toEqual([
      expect.stringMatching(/1 series runs through .* only once \(2024-11-03\)/),
    ]);
    expect(found.findings[0].rows).toEqual([]);
  });
  it('is not seen in a log that follows the clocks, has a gap there, or reads too seldom', () => {
    const follows = [...steady('2024-11-02 12:00', 14, 60), ...steady('2024-11-03 01:00', 30, 60)];
    expect(read(stamps(follows)).findings).toEqual([]);
    const gap = [...steady('2024-11-02 12:00', 11, 60), ...steady('2024-11-03 01:00', 30, 60)];
    expect(read(stamps(gap)).findings).toEqual([]);
    expect(read(stamps(steady('2024-11-01 01:00', 40, 180))).findings).toEqual([]);
  });
  it('is right once the file says local standard', () => {
    const found = read(stamps(steady('2025-03-08 12:00', 48, 60)), 'local standard');
    expect(found.findings).toEqual([]);
    expect(found.utc[14]).toBe('03-09 08:00');
    expect(found.utc[15]).toBe('03-09 09:00');
  });
});

describe('a logger that follows the clocks in a file declared local standard', () => {
  it('shows in autumn and in spring', () => {
    const autumn = [...steady('2024-11-02 12:00', 28, 30), ...steady('2024-11-03 01:00', 60, 30)];
    const spring = [...steady('2025-03-08 12:00', 14, 60), ...steady('2025-03-09 03:00', 30, 60)];
    for (const [walls, day] of [
      [autumn, '2024-11-03'],
      [spring, '2025-03-09'],
    ] as const) {
      const { findings } = read(stamps(walls), 'local standard');
      expect(findings[0].text).toContain(`(${day}): the logger looks to keep daylight saving time`);
    }
  });
  it('does not show where every row of the log stands twice', () => {
    const walls = steady('2024-11-02 12:00', 60, 60).flatMap((text) => [text, text]);
    expect(read(stamps(walls), 'local standard').findings).toEqual([]);
  });
});

describe('a clock that was reset', () => {
  const days = steady('2024-12-01 00:00', 40, 60);
  const flagged = (texts: string[]) => {
    const { clock } = read(stamps(texts));
    return [...clock.keys()].filter((i) => clock[i] === 1);
  };
  it('back into time already logged, or to another year', () => {
    expect(flagged([...days.slice(0, 20), '2024-12-01 05:30', '2024-12-01 06:30', ...days.slice(20)])).toEqual([
      20, 21,
    ]);
    expect(flagged([...days.slice(0, 20), '2000-01-01 00:00', '2000-01-01 01:00', ...days.slice(20)])).toEqual([
      20, 21,
    ]);
    expect(flagged([...days.slice(0, 20), '2099-01-01 00:00', ...days.slice(20)])).toEqual([20]);
  });
  it('at the first or the last row, where the order says nothing', () => {
    expect(flagged([...days, '2099-01-01 00:00'])).toEqual([40]);
    expect(flagged(['1970-01-01 00:00', ...days])).toEqual([0]);
    expect(flagged(['1970-01-01 00:00', '1970-01-01 01:00', ...days, '2099-01-01 00:00'])).toEqual([0, 1, 42]);
  });
  it('is not a second season in the file, nor one of two rows', () => {
    expect(flagged([...steady('2022-12-01 00:00', 10, 60), ...days])).toEqual([]);
    expect(flagged(['2022-12-01 00:00', '2024-12-01 00:00'])).toEqual([]);
  });
  it('is not an older export appended below, nor a row written twice', () => {
    expect(flagged([...days, ...steady('2024-11-20 00:00', 40, 60)])).toEqual([]);
    expect(flagged([...days, ...days.slice(5, 10)])).toEqual([]);
  });
  it('says nothing about notes, whose order is free', () => {
    const clock = fileClock(
      'tickets.csv',
      stamps(['2024-12-02 10:00', '2024-12-01 10:00', '2024-12-01 10:30', '2024-12-02 11:00']),
      null,
      ZONE,
      false,
    );
    expect([...clock.clock]).toEqual([0, 0, 0, 0]);
    expect(clock.findings).toEqual([]);
  });
});
