import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InputError } from '../../../src/base/errors.ts';
import { loadSeason } from '../../../src/season/load-season.ts';
import type { FileSpec } from '../../../src/season/season.ts';
import { loadOf, noChecks, problemsOf } from './load-of.ts';
import { fileOf, folderOf, seasonOf } from './season-of.ts';

const good = 'time,bin,temperature (degF),humidity (%)\n2024-10-04 13:00,B1,50,60\n';
const plenum = (more: Partial<FileSpec> = {}) => fileOf('plenum', 'p.csv', more);
const one = async (data: string | Uint8Array, spec = plenum()) => {
  const problems = await problemsOf({ 'p.csv': data }, [spec]);
  expect(problems).toHaveLength(1);
  expect(problems[0].file).toBe('p.csv');
  return `${problems[0].code} ${problems[0].message}`;
};

describe('a file that cannot be read as a whole', () => {
  it.each<[string, string | Uint8Array, RegExp]>([
    ['nothing in it', '', /^FILE_EMPTY is empty/],
    ['only line ends', '\r\n\r\n', /^FILE_EMPTY/],
    ['only a byte-order mark', '\ufeff', /^FILE_EMPTY/],
    ['a header alone', good.split('\n')[0], /^FILE_EMPTY has a header and not one row/],
    [
      'a workbook',
      Buffer.from('PK\u0003\u0004 rest'),
      /^FILE_BINARY is a zip file or a spreadsheet workbook.*Save the sheet as CSV/,
    ],
    ['a PDF', '%PDF-1.7 …', /^FILE_BINARY is a PDF/],
    ['zero bytes', Uint8Array.from([65, 0, 66, 0, 44]), /^FILE_BINARY is a binary file/],
    ['a picture', Buffer.from('89504e470d0a1a0a0d49484452', 'hex'), /^FILE_BINARY is a PNG picture/],
    ['a picture in gzip', gzipSync(Buffer.from('ffd8ffe04a464946', 'hex')), /^FILE_BINARY is a JPEG picture/],
    [
      'a gzip in a gzip',
      gzipSync(gzipSync(good)),
      /^FILE_BINARY is a gzip file inside a gzip file, .* Unpack it once\./,
    ],
    ['a workbook in gzip', gzipSync(Buffer.from('PK\u0003\u0004 rest')), /^FILE_BINARY is a zip file/],
    ['a tar archive', gzipSync(`${'log.csv'.padEnd(257, '\0')}ustar  rest`), /^FILE_BINARY is a tar archive/],
    [
      'controls without a zero byte',
      Uint8Array.from({ length: 60 }, (_, i) => 1 + ((i * 37) % 255)),
      /^FILE_BINARY is a binary file \(bytes that no text holds\), not a text file/,
    ],
    [
      'a few high bytes alone',
      Uint8Array.from([0xc3, 0x9e, 0xf1, 0x88, 0xb2, 0x41, 0xe7]),
      /^FILE_BINARY is a binary file, or text in an encoding that is not known/,
    ],
    [
      'a gzip with a bit wrong',
      Uint8Array.from(gzipSync(good.repeat(50)), (byte, i) => (i === 40 ? byte ^ 16 : byte)),
      /^FILE_GZIP .*cut off or damaged/,
    ],
    ['a gzip cut off', gzipSync(good.repeat(50)).subarray(0, 60), /^FILE_GZIP .*cut off or damaged/],
    ['a quote that never closes', `${good}2024-10-04 14:00,B1,"50,60\n`, /^FILE_FORMAT a quote is opened/],
    [
      'no bin',
      'time,temperature (degF)\n2024-10-04 13:00,50\n',
      /^FILE_COLUMNS there is no bin column.*"time", "temperature \(degF\)"/,
    ],
    ['no measured column', 'time,bin\n2024-10-04 13:00,B1\n', /^FILE_COLUMNS has no measured column of plenum/],
    [
      'no unit',
      'time,bin,temperature\n2024-10-04 13:00,B1,50\n',
      /^FILE_UNIT temperature has no unit \(allowed: degF, degC, K\)/,
    ],
    [
      'a unit of something else',
      'time,bin,temperature (psi)\n2024-10-04 13:00,B1,50\n',
      /^FILE_UNIT temperature has the unit "psi"/,
    ],
    [
      'times of another form',
      good.replace('2024-10-04 13:00', '10/04/2024 1:00 PM'),
      /^FILE_ROWS its only row cannot be placed: .*set time_format: MM\/dd\/yyyy hh:mm a/,
    ],
    ['another farm', good.replace('B1', 'Z9'), /^FILE_ROWS .*names the bin "Z9"/],
  ])('%s', async (_, data, message) => {
    expect(await one(data)).toMatch(message);
  });

  // Values differ from row to row, the reason does not: counted by hand.
  it('rows that all fail alike are told as that', async () => {
    const rows = ['05/07/2025 00:00', '18/07/2025 01:00', '18/07/2025 02:00'].map((stamp) => `${stamp},B1,50,60\n`);
    const told = await one(good.slice(0, good.indexOf('\n') + 1) + rows.join(''));
    expect(told).toMatch(
      /^FILE_ROWS not one of its 3 rows can be placed, all for one reason: the time "18\/07\/2025 01:00" \(time\) is no time of .*set time_format: dd\/MM\/yyyy HH:mm; the row is "18\/07\/2025 01:00,/,
    );
  });

  it('rows that fail in several ways are counted by the way, not by the value', async () => {
    const head = good.slice(0, good.indexOf('\n') + 1);
    const bins = ['Z7', 'Z8', 'Z9'].map((bin) => `2024-10-04 13:00,${bin},50,60\n`);
    const times = ['soon', 'soon'].map((stamp) => `${stamp},B1,50,60\n`);
    // Two rows say the same word, three name a bin that is not there, each another.
    expect(await one(head + times.join('') + bins.join(''))).toMatch(
      /^FILE_ROWS not one of its 5 rows can be placed\. Most often \(3 rows\): names the bin "Z7"/,
    );
    expect(await one(`${head}${times[0]}${bins[0]}`)).toMatch(
      /2 rows can be placed\. Most often \(1 row\): the time "soon"/,
    );
  });

  it('a declared column that is not there: the headers and the nearest are named', async () => {
    const columns = {
      time: { header: 'time', unit: null },
      bin: { header: 'bin', unit: null },
      temperature: { header: 'temperature (degf', unit: 'degF' },
    };
    expect(await one(good, plenum({ columns }))).toMatch(
      /temperature: the file has no column "temperature \(degf"; its headers are "time", .* the nearest is "temperature \(degF\)"/,
    );
  });

  it('a declared column that is not there, and none like it: the headers alone are named', async () => {
    const columns = {
      time: { header: 'time', unit: null },
      bin: { header: 'bin', unit: null },
      temperature: { header: 'warmth', unit: 'degF' },
    };
    const told = await one(good, plenum({ columns }));
    expect(told).toMatch(/temperature: the file has no column "warmth"; its headers are "time", /);
    expect(told).not.toContain('nearest');
  });

  it('a declared column that stands there with its unit is the nearest, however short', async () => {
    const columns = {
      time: { header: 'time', unit: null },
      bin: { header: 'bin', unit: null },
      temperature: { header: 'T', unit: 'degF' },
    };
    expect(await one('time,bin,T (F),No\n2024-10-04 13:00,B1,50,1\n', plenum({ columns }))).toMatch(
      /no column "T"; .* the nearest is "T \(F\)"/,
    );
  });

  it('a quote that never closes is told where its row begins', async () => {
    const rows = Array.from({ length: 30 }, (_, i) => `2024-10-05 ${10 + (i % 10)}:00,B1,50,60\n`).join('');
    const text = `${good}2024-10-04 14:00,"B\n1",50,60\n2024-10-04 15:00,"B1,50,60\n${rows}`;
    // The header, one row, one row over two lines: the fifth line opens it.
    const [problem] = await problemsOf({ 'p.csv': text }, [plenum()]);
    expect([problem.code, problem.line]).toEqual(['FILE_FORMAT', 5]);
  });

  it('a header of a wide file that names no sensor of the season is told once', async () => {
    const columns = {
      time: { header: 'time', unit: null },
      temperature: { header: 'T {cable}-{sensor}', unit: 'degC' },
    };
    const spec = fileOf('grain', 'p.csv', { shape: 'wide', columns, constants: { bin: 'B1' } });
    const text = 'time,T C1-1,T C1-9,T C7-1\n2024-10-04 13:00,1,2,3\n2024-10-04 14:00,1,2,3\n';
    expect(await one(text, spec)).toMatch(/^FILE_COLUMNS temperature: the headers "T C1-9", "T C7-1" fit .* bin B1/);
    expect(await one('time,x\n2024-10-04 13:00,1\n', spec)).toMatch(/no header fits "T \{cable\}-\{sensor\}"/);
  });

  it('a file of another format than said', async () => {
    expect(await one(good, fileOf('weather', 'p.csv', { format: 'isd-lite' }))).toMatch(
      /^FILE_FORMAT has no line of the form of ISD-Lite/,
    );
  });

  it('all files tell their problems at once; a folder and a missing file among them', async () => {
    const { folder, remove } = folderOf({ 'a.csv': '', 'b.csv': good });
    mkdirSync(join(folder, 'dir.csv'));
    const specs = ['a.csv', 'b.csv', 'dir.csv', 'gone.csv'].map((path) => fileOf('plenum', path));
    const error = await loadSeason(seasonOf(folder, specs), undefined, noChecks).catch((caught: unknown) => caught);
    remove();
    expect((error as InputError).problems.map(({ code, file }) => [code, file])).toEqual([
      ['FILE_EMPTY', 'a.csv'],
      ['FILE_READ', 'dir.csv'],
      ['FILE_READ', 'gone.csv'],
    ]);
  });

  it('zeros inside a good file cost only their row', async () => {
    const { load } = await loadOf(
      { 'p.csv': `${good.repeat(1)}${'2024-10-05 13:00,B1,51,61\n'.repeat(60)}\0\0\0\0\n2024-10-06 13:00,B1,51,61\n` },
      [plenum()],
    );
    expect(load.rejects).toMatchObject([{ line: 63, column: null }]);
  });

  it('a burst of noise inside a good file costs only its row, and so do letters beyond ASCII nothing', async () => {
    const rows = '2024-10-05 13:00,B1,51,61\n'.repeat(60);
    const noisy = Buffer.concat([Buffer.from(good + rows), Buffer.from([1, 2, 3, 0x9d, 10]), Buffer.from(rows)]);
    expect((await loadOf({ 'p.csv': noisy }, [plenum()])).load.rejects).toMatchObject([{ line: 63, column: null }]);
    const latin = Buffer.from(good.replace('degF', '°F').replace('time', 'Zeit für'), 'latin1');
    const columns = {
      time: { header: 'Zeit für', unit: null },
      bin: { header: 'bin', unit: null },
      temperature: { header: 'temperature (°F)', unit: 'degF' },
    };
    expect((await loadOf({ 'p.csv': latin }, [plenum({ columns })])).load.files[0].kept).toBe(1);
  });

  it('hostile bytes end in a list of problems or in rejects, never in a crash', async () => {
    const bytes = fc.oneof(
      fc.uint8Array({ maxLength: 400 }),
      fc.uint8Array({ maxLength: 200 }).map((tail) => Buffer.concat([Buffer.from(good), tail])),
      fc.uint8Array({ maxLength: 60 }).map((tail) => Buffer.concat([Buffer.from([0x1f, 0x8b, 8]), tail])),
      fc.uint8Array({ maxLength: 60 }).map((tail) => Buffer.concat([Buffer.from([0xff, 0xfe]), tail])),
    );
    let read = 0;
    await fc.assert(
      fc.asyncProperty(bytes, async (data) => {
        try {
          const { load } = await loadOf({ 'p.csv': data }, [plenum()]);
          const { cells, kept, missing, rejected, outside } = load.files[0];
          expect(cells).toBe(kept + missing + rejected + outside);
          expect(kept).toBeGreaterThanOrEqual(2);
          read += 1;
        } catch (error) {
          expect(error).toBeInstanceOf(InputError);
        }
      }),
      { seed: 20241004, numRuns: 300 },
    );
    expect(read).toBeGreaterThan(20);
  });
});
