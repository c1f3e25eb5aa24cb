import { describe, expect, it } from 'vitest';
import type { ArchiveFormat } from '../../../../src/season/season.ts';
import { loadOf, rowsOf } from '../load-of.ts';
import { fileOf } from '../season-of.ts';

// Two hours in each format, written by hand, a column behind those that are read.
const WHOLE: Record<Exclude<ArchiveFormat, 'isd-lite'>, string> = {
  epw: `LOCATION,Nowhere,XX,USA,hand-made,999999,42.00,-94.00,-6.0,300.0\nDATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31\n2019,1,1,1,0,?9,10.0,5.0,71,98000,0,0\n2019,1,1,2,0,?9,11.5,5.0,64,98100,0,0\n`,
  lcd: 'STATION,DATE,REPORT_TYPE,HourlyDewPointTemperature,HourlyDryBulbTemperature,HourlyRelativeHumidity,HourlyStationPressure,REM\n72,2020-07-01T00:52:00,FM-15,50,59,72,29.00,\n72,2020-07-01T01:52:00,FM-15,50,61,67,29.01,\n',
  asos: 'station,valid,tmpf,dwpf,relh,alti,mslp\nX,2013-01-01 00:51,59.00,50.00,72.10,30.00,M\nX,2013-01-01 01:51,60.10,50.00,69.30,30.01,M\n',
  'open-meteo':
    'latitude,longitude,elevation,utc_offset_seconds\n42,-94,320,0\n\ntime,temperature_2m (°C),relative_humidity_2m (%),pressure_msl (hPa),rain (mm)\n2024-03-10T01:00,10.5,71,1013,0\n2024-03-10T02:00,11.5,64,1014,0\n',
};
const formats = Object.keys(WHOLE) as (keyof typeof WHOLE)[];
const read = (text: string, format: ArchiveFormat) =>
  loadOf({ w: text }, [fileOf('weather', 'w', { format, role: 'history' })]);
const values = (rows: Record<string, unknown>[]) => rows.map((row) => [row.temp_c, row.rh, row.pressure_pa]);

describe('an archive that broke off within its last line', () => {
  it.each(formats)('%s: no half of a number is taken for one, wherever the line is cut', async (format) => {
    const text = WHOLE[format];
    const [first, second] = values(rowsOf((await read(text, format)).tables.weather));
    const start = text.lastIndexOf('\n', text.length - 2) + 1;
    // Before the last field: there is no telling whether that one is whole.
    const stop = text.lastIndexOf(',');
    for (let end = start + 1; end <= stop; end++) {
      const { tables, load } = await read(text.slice(0, end), format);
      expect(values(rowsOf(tables.weather))).toEqual([first]);
      expect(load.rejects).toHaveLength(1);
      expect(load.rejects[0].text.trimEnd()).toBe(text.slice(start, end).trimEnd());
    }
    // A whole last row without an end of line stays.
    const bare = await read(text.trimEnd(), format);
    expect(values(rowsOf(bare.tables.weather))).toEqual([first, second]);
    expect(bare.load.rejects).toEqual([]);
  });
});
