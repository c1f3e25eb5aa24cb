import { describe, expect, it } from 'vitest';
import { stampParser } from '../../../src/season/clock/stamp-parser.ts';

const iso = stampParser(null, true);

describe('stamps without a format', () => {
  it.each([
    ['2024-10-04T13:00', 'local', Date.UTC(2024, 9, 4, 13)],
    ['2024-10-04 13:00:30', 'local', Date.UTC(2024, 9, 4, 13, 0, 30)],
    ['2024-10-04T13:00:30.250', 'local', Date.UTC(2024, 9, 4, 13, 0, 30, 250)],
    ['2024-10-04T24:00', 'local', Date.UTC(2024, 9, 5)],
    ['2024/1/4 7:05', 'local', Date.UTC(2024, 0, 4, 7, 5)],
    ['2024-10-04T13:00Z', 'instant', Date.UTC(2024, 9, 4, 13)],
    ['2024-10-04T13:00:00-05:00', 'instant', Date.UTC(2024, 9, 4, 18)],
    ['2024-10-04 13:00+0530', 'instant', Date.UTC(2024, 9, 4, 7, 30)],
    ['2024-02-29 00:00', 'local', Date.UTC(2024, 1, 29)],
  ])('%s', (text, kind, ms) => {
    expect(iso(text)).toMatchObject({ kind, ms });
  });
  it.each([
    '2023-02-29 00:00',
    '2024-13-45 99:10',
    '2024-10-04 25:00',
    '2024-10-04 13:60',
    'yesterday',
    '2024-10-04T13:00+19:00',
  ])('refuse %s', (text) => {
    expect(iso(text)).toMatch(/is no time of the form/);
  });
  it('take a date alone only where a date is enough', () => {
    expect(iso('2024-10-04')).toMatch(/^has a date but no time of day; .*set time_format: yyyy-MM-dd$/);
    expect(iso('10/04/2024')).toMatch(/^has a date but no time of day; .*set time_format: MM\/dd\/yyyy$/);
    expect(stampParser(null, false)('10/04/2024')).toMatch(/is no time of the form .*set time_format: MM\/dd\/yyyy$/);
    expect(stampParser(null, false)('2024-10-04')).toMatchObject({ ms: Date.UTC(2024, 9, 4), dateOnly: true });
  });
  it('advise the format that a stamp looks like, and do not guess', () => {
    expect(iso('10/04/2024 1:00 PM')).toMatch(/set time_format: MM\/dd\/yyyy hh:mm a$/);
    expect(iso('14.10.2024 13:00')).toMatch(/set time_format: dd\.MM\.yyyy HH:mm$/);
    expect(iso('1728046800')).toMatch(/set time_format: epoch seconds$/);
  });
});

describe('stamps with a format', () => {
  it('follow the tokens of Unicode TR35, one digit allowed where a token stands alone', () => {
    const us = stampParser('MM/dd/yyyy hh:mm a', true);
    expect(us('10/04/2024 01:00 PM')).toMatchObject({ kind: 'local', ms: Date.UTC(2024, 9, 4, 13) });
    expect(us('1/4/2025 12:05 am')).toMatchObject({ ms: Date.UTC(2025, 0, 4, 0, 5) });
    expect(us('2024-10-04 13:00')).toBe('does not fit time_format MM/dd/yyyy hh:mm a');
    // An offset in the text wins over any format.
    expect(us('2024-10-04T13:00Z')).toMatchObject({ kind: 'instant', ms: Date.UTC(2024, 9, 4, 13) });
    expect(stampParser('yyyyMMddHHmm', true)('202410041300')).toMatchObject({ ms: Date.UTC(2024, 9, 4, 13) });
    expect(stampParser('d MMM yyyy HH:mm', true)('4 Oct 2024 13:00')).toMatchObject({ ms: Date.UTC(2024, 9, 4, 13) });
    expect(stampParser('dd.MM.yyyy HH:mm ZZ', true)('04.10.2024 13:00 -05:00')).toMatchObject({
      kind: 'instant',
      ms: Date.UTC(2024, 9, 4, 18),
    });
  });
  it('count from 1970 only when told so', () => {
    expect(stampParser('epoch seconds', true)('1728046800')).toMatchObject({
      kind: 'instant',
      ms: Date.UTC(2024, 9, 4, 13),
    });
    expect(stampParser('epoch milliseconds', true)('1728046800000')).toMatchObject({ ms: Date.UTC(2024, 9, 4, 13) });
  });
  it('refuse years that no season is in', () => {
    expect(iso('1850-01-01T00:00')).toMatch(/outside the years/);
  });
});
