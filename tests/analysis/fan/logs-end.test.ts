import { describe, expect, it } from 'vitest';
import { logsEnd, reachOf } from '../../../src/analysis/fan/logs-end.ts';
import type { LoadedSeason } from '../../../src/season/loaded.ts';
import { toArrow } from '../../../src/tables/arrow.ts';
import { fanTable, H, SEASON } from './known-fan.ts';

const DAY = 24 * H;
const at = (day: number) => Date.UTC(2024, 9, 1) + day * DAY;
const days = (from: number, to: number, perDay = 24) =>
  Array.from({ length: (to - from) * perDay + 1 }, (_, i) => at(from) + (i * DAY) / perDay);

function table(name: 'plenum' | 'weather', times: readonly number[], clock: readonly number[] = []) {
  const text = (value: string) => ({ codes: new Int32Array(times.length), values: [value] });
  const none = new Float64Array(times.length).fill(Number.NaN);
  const flags = Uint8Array.from(times, (ms) => (clock.includes(ms) ? 16 : 0));
  const common = { time: Float64Array.from(times), temp_c: none, rh: none, flags, file: text('a.csv') };
  return name === 'plenum'
    ? toArrow('plenum', { ...common, bin: text('B1'), static_pressure_pa: none })
    : toArrow('weather', { ...common, dew_point_c: none, pressure_pa: none, role: text('season') });
}
const season = (endsMs: number | null, plenum: readonly number[], weather: readonly number[], clock?: number[]) =>
  ({
    season: { ...SEASON, endsMs },
    tables: {
      readings: fanTable([]),
      fan: fanTable([{ time: at(3), on: 1 }]),
      plenum: table('plenum', plenum, clock),
      weather: table('weather', weather),
    },
  }) as unknown as LoadedSeason;

describe('how far a season’s data reach', () => {
  it('to the last row of any log of the farm; a weather file of the whole year does not carry it on', () => {
    expect(logsEnd(season(null, days(0, 40), days(0, 90)))).toBe(at(40));
    expect(logsEnd(season(null, [], days(0, 90)))).toBe(at(3));
  });
  it('never past the stated end, nor past the data where the end lies ahead', () => {
    expect(logsEnd(season(at(30), days(0, 40), days(0, 90)))).toBe(at(30));
    expect(logsEnd(season(at(200), days(0, 40), days(0, 90)))).toBe(at(90));
  });
  it('a row whose clock is flagged does not count, nor does one stray stamp among a thousand', () => {
    expect(logsEnd(season(null, [...days(0, 40), at(60)], [], [at(60)]))).toBe(at(40));
    // 1,201 rows and one of the year 2099
    expect(reachOf(Float64Array.from([Date.UTC(2099, 0, 1), ...days(0, 50)]))).toBe(at(50));
    // A month of silence and then a week of readings is no stray.
    expect(reachOf(Float64Array.from([...days(0, 50), ...days(90, 97)]))).toBe(at(97));
    // One row of ten is too many to be one.
    expect(reachOf(Float64Array.from([...days(0, 9, 1), at(60)]))).toBe(at(60));
    expect(reachOf(new Float64Array(0))).toBeNaN();
  });
});
