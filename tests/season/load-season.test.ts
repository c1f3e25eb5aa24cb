import { createHash } from 'node:crypto';
import { createRequire } from 'node:module';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { loadOf, rowsOf } from './readers/load-of.ts';
import { fileOf } from './readers/season-of.ts';

const psychrolib = createRequire(import.meta.url)('psychrolib');
psychrolib.SetUnitSystem(psychrolib.SI);

const cols = (text: string) =>
  Object.fromEntries(
    text.split(',').map((part) => {
      const [key, header, unit] = part.trim().split('|');
      return [key, { header, unit: unit ?? null }];
    }),
  );
const LONG = { columns: cols('time|Stamp,bin|Bin,cable|Cable,sensor|No,temperature|T|degF,moisture|MC|%') };

// 50 degF = 10 degC, 41 degF = 5 degC; Chicago in October is UTC-5.
const long = [
  'Stamp,Bin,Cable,No,T,MC',
  '2024-10-04 13:00,B1,C1,1,50,17.5',
  '2024-10-04 13:00,B1,C1,2,41,n/a',
  '2024-10-04 13:00,B1,C1,3,ERR,--',
  '2024-10-04 13:00,B9,C1,1,50,17.5',
  '2024-10-04 13:00,B1,C1,4,50,17.5',
  ',B1,C1,1,50,17.5',
  '2024-10-04 14:00,B1,C1',
  '2024-10-04T19:00Z,b2,c1,01,50.0 F,17.5 %',
  '',
].join('\n');

describe('grain, one row a reading', () => {
  it('comes out in SI and UTC with every cell accounted for', async () => {
    const { tables, load } = await loadOf({ 'a.csv': long }, [fileOf('grain', 'a.csv', LONG)]);
    const rows = rowsOf(tables.readings);
    expect(rows.map((row) => [row.time, row.bin, row.cable, row.sensor, row.height_m])).toEqual([
      ['2024-10-04T18:00:00.000Z', 'B1', 'C1', 1, 0.5],
      ['2024-10-04T18:00:00.000Z', 'B1', 'C1', 2, 1.5],
      ['2024-10-04T18:00:00.000Z', 'B1', 'C1', 3, 2.5],
      ['2024-10-04T19:00:00.000Z', 'B2', 'C1', 1, 0.6],
    ]);
    expect(rows[0].temp_c).toBeCloseTo(10, 9);
    expect(rows[0].moisture_wb).toBeCloseTo(0.175, 12);
    expect(rows[1].temp_c).toBeCloseTo(5, 9);
    expect([rows[1].moisture_wb, rows[2].temp_c, rows[2].moisture_wb]).toEqual([null, null, null]);
    // 8 rows of 2 cells: kept 2 + 1 + 0 + 2, missing n/a and --, rejected ERR and four whole rows.
    expect(load.files[0]).toMatchObject({
      rows: 8,
      cells: 16,
      kept: 5,
      missing: 2,
      rejected: 9,
      outside: 0,
      bytes: long.length,
    });
    expect(load.files[0].sha256).toBe(createHash('sha256').update(long).digest('hex'));
    expect(load.rejects.map(({ line, column, text }) => [line, column, text])).toEqual([
      [4, 'T', 'ERR'],
      [5, null, '2024-10-04 13:00,B9,C1,1,50,17.5'],
      [6, null, '2024-10-04 13:00,B1,C1,4,50,17.5'],
      [7, null, ',B1,C1,1,50,17.5'],
      [8, null, '2024-10-04 14:00,B1,C1'],
    ]);
    expect(load.rejects[1].reason).toMatch(/bin "B9"/);
    expect(load.rejects[2].reason).toMatch(/sensor "4"; cable C1 of bin B1 has 1 to 3/);
    expect(load.findings).toMatchObject([{ kind: 'reject', cells: 9, where: 'a.csv' }]);
  });

  it('reads semicolons, decimal commas, quoted line breaks, UTF-16 and gzip', async () => {
    const text = [
      '"Stamp";"Bin";"Cable";"No";"T";"MC";"note"',
      '2024-10-04 13:00;B1;C1;1;50,5;"17,5";"two',
      'lines"',
      '2024-10-04 14:00;B1;C1;1;x;1.017,5;',
      '',
    ].join('\r\n');
    const utf16 = Buffer.from(`\ufeff${text}`, 'utf16le');
    const { tables, load } = await loadOf({ 'a.csv': gzipSync(utf16) }, [fileOf('grain', 'a.csv', LONG)]);
    const rows = rowsOf(tables.readings);
    expect(rows[0].temp_c).toBeCloseTo((50.5 - 32) / 1.8, 9);
    expect(rows[0].moisture_wb).toBeCloseTo(0.175, 12);
    expect(rows[1].moisture_wb).toBeCloseTo(10.175, 9);
    expect(load.rejects).toMatchObject([{ line: 4, column: 'T', text: 'x' }]);
  });

  it('finds the header below title lines, and takes a first line that tells the delimiter', async () => {
    const titled = `Logger 4711; Shop\n\n${long.split('\n').slice(0, 2).join('\n')}\nbad,B1,C1,1,50,17\n`;
    const { tables, load } = await loadOf({ 'a.csv': titled }, [fileOf('grain', 'a.csv', LONG)]);
    expect(tables.readings.numRows).toBe(1);
    expect(load.files[0]).toMatchObject({ rows: 2, cells: 4 });
    expect(load.rejects).toMatchObject([{ line: 5, text: 'bad,B1,C1,1,50,17' }]);
    const told = 'sep=|\nStamp|Bin|Cable|No|T|MC\n2024-10-04 13:00|B1|C1|1|50,5|17\n';
    const second = await loadOf({ 'a.csv': told }, [fileOf('grain', 'a.csv', LONG)]);
    expect(rowsOf(second.tables.readings)[0].temp_c).toBeCloseTo((50.5 - 32) / 1.8, 9);
  });

  it('counts what lies outside the season and leaves it out', async () => {
    const text = [
      'Stamp,Bin,Cable,No,T,MC',
      '2024-10-04 00:00,B1,C1,1,50,17',
      '2024-10-05 00:00,B1,C1,1,50,17',
      '2024-10-06 00:00,B1,C1,1,bad,17',
    ].join('\n');
    // The local day of 5 October 2024, CDT.
    const bounds = { startsMs: Date.UTC(2024, 9, 5, 5), endsMs: Date.UTC(2024, 9, 6, 5) };
    const { tables, load } = await loadOf({ 'a.csv': text }, [fileOf('grain', 'a.csv', LONG)], bounds);
    expect(tables.readings.numRows).toBe(1);
    expect(load.totals).toMatchObject({ rows: 3, cells: 6, missing: 0, rejected: 0, outside: 4 });
    expect(load.files[0]).toMatchObject({ kept: 2, firstMs: bounds.startsMs, lastMs: bounds.startsMs });
  });

  it('flags the second reading of a sensor at one instant, over files, cell by cell', async () => {
    const header = 'Stamp,Bin,Cable,No,T,MC\n';
    const { tables, load } = await loadOf(
      {
        'a.csv': `${header}2024-10-04 13:00,B1,C1,1,50,\n2024-10-04 13:00,B1,C1,1,51,17\n`,
        'b.csv': `${header}2024-10-04 13:00,B1,C1,1,50,17\n`,
      },
      [fileOf('grain', '*.csv', { ...LONG, paths: ['a.csv', 'b.csv'] })],
    );
    // Row 2 brings a second temperature but the first moisture; row 3 brings both again.
    expect(rowsOf(tables.readings).map((row) => [row.temp_flags, row.moisture_flags])).toEqual([
      [0, 0],
      [8, 0],
      [8, 8],
    ]);
    expect(load.totals.flagged.duplicate).toBe(3);
    expect(load.findings.map((one) => [one.kind, one.where, one.cells])).toEqual([
      ['duplicate', 'a.csv', 1],
      ['duplicate', 'b.csv', 2],
    ]);
  });

  it('flags and counts the reading in the missing hour', async () => {
    const text =
      'Stamp,Bin,Cable,No,T,MC\n2025-03-09 01:00,B1,C1,1,50,17\n2025-03-09 02:00,B1,C1,1,50,\n2025-03-09 04:00,B1,C1,1,50,17\n';
    const { tables, load } = await loadOf({ 'a.csv': text }, [fileOf('grain', 'a.csv', LONG)]);
    // 02:00 does not exist on 9 March 2025; by standard time it is 08:00 UTC. 04:00 CDT is 09:00 UTC.
    expect(rowsOf(tables.readings).map((row) => [row.time, row.temp_flags])).toEqual([
      ['2025-03-09T07:00:00.000Z', 0],
      ['2025-03-09T08:00:00.000Z', 16],
      ['2025-03-09T09:00:00.000Z', 0],
    ]);
    expect(load.totals.flagged.clock).toBe(1);
    expect(load.findings).toMatchObject([{ kind: 'clock', cells: 1, binId: 'B1' }]);
  });
});

describe('grain, one column a sensor', () => {
  const columns = cols('time|DateTime,temperature|T {cable}-{sensor}|degC,moisture|M {cable}-{sensor}|%');
  it('puts temperature and moisture of a sensor in one row', async () => {
    const text =
      'DateTime,T C1-1,T C1-2,M C1-1,t c2-1\n10/04/2024 1:00 PM,10,,17.5,9\n10/04/2024 02:00 PM,11,12,bad,NA\n';
    const spec = fileOf('grain', 'w.csv', {
      shape: 'wide',
      columns,
      constants: { bin: 'B1' },
      timeFormat: 'MM/dd/yyyy hh:mm a',
    });
    const { tables, load } = await loadOf({ 'w.csv': text }, [spec]);
    expect(rowsOf(tables.readings).map((row) => [row.time, row.cable, row.sensor, row.temp_c])).toEqual([
      ['2024-10-04T18:00:00.000Z', 'C1', 1, 10],
      ['2024-10-04T18:00:00.000Z', 'C1', 2, null],
      ['2024-10-04T18:00:00.000Z', 'C2', 1, 9],
      ['2024-10-04T19:00:00.000Z', 'C1', 1, 11],
      ['2024-10-04T19:00:00.000Z', 'C1', 2, 12],
      ['2024-10-04T19:00:00.000Z', 'C2', 1, null],
    ]);
    expect(rowsOf(tables.readings)[0].moisture_wb).toBeCloseTo(0.175, 12);
    expect(load.files[0]).toMatchObject({ rows: 2, cells: 8, kept: 5, missing: 2, rejected: 1 });
    expect(load.rejects).toMatchObject([{ line: 3, column: 'M C1-1', text: 'bad' }]);
  });
  it('takes the bin from a column; a value of a sensor that the bin lacks is rejected', async () => {
    const own = { ...columns, bin: { header: 'Bin', unit: null } };
    const text =
      'DateTime,Bin,T C1-1,T C1-2,M C1-1\n2024-10-04 13:00,B1,10,11,15\n2024-10-04 13:00,B2,12,,16\n2024-10-04 14:00,B2,12,3,16\n';
    const { tables, load } = await loadOf({ 'w.csv': text }, [
      fileOf('grain', 'w.csv', { shape: 'wide', columns: own }),
    ]);
    expect(rowsOf(tables.readings).map((row) => [row.bin, row.sensor, row.temp_c])).toEqual([
      ['B1', 1, 10],
      ['B1', 2, 11],
      ['B2', 1, 12],
      ['B2', 1, 12],
    ]);
    expect(load.rejects).toMatchObject([{ line: 4, column: 'T C1-2', text: '3', reason: 'bin B2 has no such sensor' }]);
    expect(load.files[0]).toMatchObject({ cells: 9, kept: 7, missing: 1, rejected: 1 });
  });
});

describe('the other logs', () => {
  it('fan: several measures at once, states in words, a file with its own headers', async () => {
    const text = [
      'time,fan,current (A),power (kW),energy (kWh),state,run_hours',
      '2024-10-04 13:00,F1,10,4.5,"1,234",ON,2.5',
      '2024-10-04 13:15,F1,0,0,1234.5,stopped,2.5',
      '2024-10-04 13:30,F2,,,,maybe,3 h',
    ].join('\n');
    const { tables, load } = await loadOf({ 'f.csv': text }, [fileOf('fan', 'f.csv')]);
    expect(
      rowsOf(tables.fan).map((row) => [row.fan, row.current_a, row.power_w, row.energy_j, row.on, row.run_s]),
    ).toEqual([
      ['F1', 10, 4500, 1234 * 3.6e6, 1, 9000],
      ['F1', 0, 0, 1234.5 * 3.6e6, 0, 9000],
      ['F2', null, null, null, null, 10800],
    ]);
    expect(load.rejects).toMatchObject([{ line: 4, column: 'state', text: 'maybe' }]);
    expect(load.files[0]).toMatchObject({ cells: 15, kept: 11, missing: 3, rejected: 1 });
  });
  it('fan: a meter logged beside the current at the same time is no duplicate', async () => {
    const { tables } = await loadOf(
      {
        'a.csv': 'time,current (A)\n2024-10-04 13:00,10\n',
        'm.csv': 'time,energy (kWh)\n2024-10-04 13:00,5\n2024-10-04 13:00,6\n',
      },
      [fileOf('fan', 'a.csv', { constants: { fan: 'F1' } }), fileOf('fan', 'm.csv', { constants: { fan: 'F1' } })],
    );
    expect(rowsOf(tables.fan).map((row) => row.flags)).toEqual([0, 0, 8]);
  });
  it('plenum: pressure in inches of water (249.089 Pa, NIST SP 811)', async () => {
    const text = 't;temp;rh;sp\n2024-10-04T13:00;50;65 %;2\n';
    const columns = cols('time|t,temperature|temp|degF,humidity|rh|%,static_pressure|sp|inH2O');
    const { tables } = await loadOf({ 'p.csv': text }, [
      fileOf('plenum', 'p.csv', { columns, constants: { bin: 'B1' } }),
    ]);
    const [row] = rowsOf(tables.plenum);
    expect(row.rh).toBeCloseTo(0.65, 12);
    expect(row.static_pressure_pa).toBeCloseTo(498.18, 2);
  });
  it('weather: humidity and dew point each from the other, given ones untouched', async () => {
    const text =
      'time,temperature (degC),humidity (%),dew_point (degC),pressure (hPa)\n2024-10-04 13:00,25,,15,980\n2024-10-04 14:00,25,50,,980\n2024-10-04 15:00,25,120,30,\n';
    const { tables, load } = await loadOf({ 'w.csv': text }, [fileOf('weather', 'w.csv')]);
    const rows = rowsOf(tables.weather);
    // psychrolib as the reference, above freezing; its dew point is iterated to 0.001 degC.
    expect(rows[0].rh).toBeCloseTo(psychrolib.GetRelHumFromTDewPoint(25, 15), 8);
    expect(Math.abs(Number(rows[1].dew_point_c) - psychrolib.GetTDewPointFromRelHum(25, 0.5))).toBeLessThan(0.0011);
    expect([rows[2].rh, rows[2].dew_point_c]).toEqual([1.2, 30]);
    expect(rows[0].pressure_pa).toBe(98000);
    expect(load.files[0]).toMatchObject({ cells: 12, kept: 9, missing: 3 });
  });
  it('tickets: dates are enough, words for the direction, another word rejects the row', async () => {
    const text =
      'date,bin,way,lb,mc\n2024-10-04,B1,Inbound,"52,140",17.8\n2025-03-02,B1,OUT,1000 kg,\n2025-03-03,B1,sideways,1,1\n';
    const columns = cols('time|date,bin|bin,direction|way,net|lb|lb,moisture|mc|%');
    const { tables, load } = await loadOf({ 't.csv': text }, [fileOf('tickets', 't.csv', { columns })]);
    const rows = rowsOf(tables.tickets);
    expect(rows.map((row) => [row.time, row.direction])).toEqual([
      ['2024-10-04T05:00:00.000Z', 'in'],
      ['2025-03-02T06:00:00.000Z', 'out'],
    ]);
    // The international pound is 0.45359237 kg exactly.
    expect(rows[0].net_kg).toBeCloseTo(52140 * 0.45359237, 6);
    expect(load.rejects.map((one) => [one.line, one.column, one.reason])).toEqual([
      [3, 'lb', 'says kg, but the column is declared in lb'],
      [4, null, 'has the direction "sideways"; write in or out'],
    ]);
  });
  it('probes and bills: the last day of a bill belongs to it whole', async () => {
    const { tables, load } = await loadOf(
      {
        'p.csv':
          'time,bin,height (ft),from_centre (ft),moisture (%),temperature (degF)\n2025-01-10 09:30,B1,10,0,15.2,35\n',
        'b.csv':
          'from,to,tariff,energy (kWh),demand (kW),amount\n2024-10-01,2024-10-31,T1,100,20,123.45\n2024-11-02,2024-11-01,T1,1,1,1\n',
      },
      [fileOf('probes', 'p.csv'), fileOf('bills', 'b.csv')],
    );
    expect(rowsOf(tables.probes)[0]).toMatchObject({ time: '2025-01-10T15:30:00.000Z', bin: 'B1', from_centre_m: 0 });
    expect(rowsOf(tables.bills)).toMatchObject([
      {
        from: '2024-10-01T05:00:00.000Z',
        to: '2024-11-01T05:00:00.000Z',
        tariff: 'T1',
        energy_j: 3.6e8,
        demand_w: 20000,
        amount: 123.45,
      },
    ]);
    expect(load.rejects).toMatchObject([{ file: 'b.csv', line: 3, reason: 'ends before it begins' }]);
  });
});
