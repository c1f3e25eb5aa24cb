import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InputError } from '../../../../src/base/errors.ts';
import type { ArchiveFormat } from '../../../../src/season/season.ts';
import { numbers } from '../../../../src/tables/arrow.ts';
import { loadOf } from '../load-of.ts';
import { fileOf } from '../season-of.ts';

// A small good file of each format, written by hand.
const GOOD: Record<ArchiveFormat, string> = {
  'isd-lite':
    '2016 11 06 00   100    50 10200   260    67     4 -9999 -9999\n2016 11 06 01   -50 -9999 -9999   250    62     2     0 -9999\n',
  epw: `LOCATION,Nowhere,XX,USA,hand-made,999999,42.00,-94.00,-6.0,300.0\nDATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31\n2019,1,1,1,0,?9,10.0,5.0,71,98000\n2018,2,28,2,0,?9,10.0,5.0,71,98000\n`,
  lcd: 'STATION,DATE,REPORT_TYPE,HourlyDewPointTemperature,HourlyDryBulbTemperature,HourlyRelativeHumidity,HourlyStationPressure,REM\n72,2020-07-01T00:52:00,FM-15,50,59,72,29.00,METAR KXXX 010652Z\n72,2020-07-01T01:00:00,FM-12,50,59s,72,29.00,\n72,2020-07-01T23:59:00,SOD,,,,,\n',
  asos: '#DEBUG: Time Zone -> UTC\nstation,valid,tmpf,dwpf,relh,alti,mslp\nX,2013-01-01 00:51,59.00,50.00,72.10,30.00,M\nX,2013-01-01 01:51,59.00,50.00,72.10,30.00,M\n',
  'open-meteo':
    'latitude,longitude,elevation,utc_offset_seconds\n42,-94,320,0\n\ntime,temperature_2m (°C),relative_humidity_2m (%),pressure_msl (hPa)\n2024-03-10T01:00,10.5,71,1013\n2024-03-10T02:00,10.5,71,1013\n',
};
/** Bits that meet the readers' own rules: separators, years, missing codes, marks, numbers too large. */
const shard = fc.constantFrom(
  ',',
  '\n',
  '\n\n',
  '"',
  '-9999',
  '99.9',
  '1e308',
  '-1e9',
  '0',
  's',
  '*',
  'M',
  '2016',
  '02',
  '29',
  '24',
  'NaN',
  '#',
  ':',
  'Z',
  '',
  ' ',
  '\u00b0',
  '\t',
);

describe('a damaged file of an archive', () => {
  it.each(Object.keys(GOOD) as ArchiveFormat[])(
    '%s ends in a list of problems or adds up to the last cell',
    async (format) => {
      const good = GOOD[format];
      let read = 0;
      await fc.assert(
        fc.asyncProperty(
          fc.array(fc.tuple(fc.nat(good.length), fc.nat(4), shard), { minLength: 0, maxLength: 4 }),
          async (cuts) => {
            const text = cuts.reduce((all, [at, length, put]) => all.slice(0, at) + put + all.slice(at + length), good);
            try {
              const { load, tables } = await loadOf({ w: text }, [fileOf('weather', 'w', { format, role: 'history' })]);
              const { cells, kept, missing, rejected, outside } = load.files[0];
              expect(cells).toBe(kept + missing + rejected + outside);
              const given = ['temp_c', 'pressure_pa'].flatMap((name) => [...numbers(tables.weather, name)]);
              expect(given.every((value) => Number.isNaN(value) || Math.abs(value) <= 1e9)).toBe(true);
              expect(numbers(tables.weather, 'time').every(Number.isFinite)).toBe(true);
              read += 1;
            } catch (error) {
              if (!(error instanceof InputError)) throw error;
              expect(error.problems[0].message).toMatch(/^[a-z].*\.$/s);
            }
          },
        ),
        { seed: 20160915, numRuns: 150 },
      );
      expect(read).toBeGreaterThan(50);
    },
  );
});
