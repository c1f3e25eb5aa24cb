import { describe, expect, it } from 'vitest';
import { csvRecords } from '../../../src/season/readers/csv-records.ts';
import { findDelimiter, namedDelimiter } from '../../../src/season/readers/find-delimiter.ts';

const wanted = (header: string) => ['time', 'bin', 't'].includes(header.toLowerCase());

describe('the delimiter', () => {
  it.each([
    [',', 'time,bin,T\n2024,B1,12.5'],
    [';', 'time;bin;T\n2024;B1;12,5\n2024;B1;12,6'],
    ['\t', 'time\tbin\tT\n2024\tB1\t12,5'],
    ['|', 'time|bin|T, mean; of 3\n2024|B1|1'],
    [';', '"time";"bin";"T"\n"2024;1";"B1";"12,5"'],
    [';', 'time;bin;"T\n2024;B1;12,5'],
  ])('%j', (delimiter, text) => {
    expect(findDelimiter(text, wanted)).toBe(delimiter);
  });
  it('has names', () => {
    expect(['tab', '\\t', 'semicolon', ';'].map(namedDelimiter)).toEqual(['\t', '\t', ';', ';']);
  });
});

describe('records', () => {
  it('know the line they begin on, with quoted breaks, empty lines and mixed line ends', () => {
    const records = csvRecords('a,b\r\n\r\n1,"x\ny"\r3,"4\r\n5\r6"\n\n\n"q ""r""",5" \n', ',');
    expect(records).toEqual({
      fields: [
        ['a', 'b'],
        ['1', 'x\ny'],
        ['3', '4\r\n5\r6'],
        ['q "r"', '5" '],
      ],
      // a,b: 1; empty: 2; 1,x: 3 and 4; 3,4: 5 to 7; empty: 8, 9; q: 10
      lines: Int32Array.of(1, 3, 5, 10),
    });
  });
});
