import { describe, expect, it } from 'vitest';
import { linearUnit, type UnitKind } from '../../../src/base/units.ts';
import { type Decimal, findDecimal } from '../../../src/season/readers/decimal.ts';
import { numberCell } from '../../../src/season/readers/number-cell.ts';

const read = (text: string, decimal: Decimal | null, kind: UnitKind = 'current', unit = 'A') =>
  numberCell(text, { kind, unit, line: linearUnit(kind, unit)!, decimal, currency: 'USD' });

describe('a number cell', () => {
  it.each([
    ['12.5', '.', 12.5],
    ['-.5', '.', -0.5],
    ['+3', ',', 3],
    ['1.5e2', '.', 150],
    ['1,234,567.5', '.', 1234567.5],
    ['1 234.5', '.', 1234.5],
    ['12,5', ',', 12.5],
    ['1.234,5', ',', 1234.5],
    ['1.234', ',', 1234],
    ['0,750', ',', 0.75],
    ['1 234,5', ',', 1234.5],
    ["1'234,5", ',', 1234.5],
    ['\u22123.5', '.', -3.5],
    ['4.2 A', '.', 4.2],
    ['4.2A', '.', 4.2],
  ] as const)('%s with decimal "%s" is %d', (text, decimal, value) => {
    expect(read(text, decimal)).toBeCloseTo(value, 12);
  });
  it.each([
    ['12,5', '.', /another decimal sign than the file's "."/],
    ['12.5', ',', /another decimal sign than the file's ","/],
    ['0.345', ',', /another decimal sign/],
    ['1234.567', ',', /another decimal sign/],
    ['1,23,456', '.', /is no number/],
    ['1,234', null, /set decimal:/],
    ['ERR', '.', /is no number/],
    ['12.5.1', '.', /is no number/],
    ['0x10', '.', /is no number/],
    ['Infinity', '.', /is no number/],
    ['1e999', '.', /too large/],
    ['1e300', '.', /too large/],
    ['-1e16', '.', /too large/],
    ['4.2 mA', '.', /says mA, but the column is declared in A/],
    ['4.2 kW', '.', /is no number in A/],
  ] as const)('%s with decimal "%s" is rejected', (text, decimal, reason) => {
    expect(read(text, decimal)).toMatch(reason);
  });
  it('takes only the unit that the column is declared in', () => {
    expect(read('50 F', '.', 'temperature', 'degF')).toBeCloseTo(10, 9);
    expect(read('50°F', '.', 'temperature', 'degF')).toBeCloseTo(10, 9);
    expect(read('10 C', '.', 'temperature', 'degF')).toMatch(/declared in degF/);
    expect(read('52 %', '.', 'moisture', '%')).toBeCloseTo(0.52, 12);
    expect(read('52 %', '.', 'moisture', 'fraction')).toMatch(/declared in fraction/);
  });
});

describe('an amount of money', () => {
  it.each([
    ['$523.20', 523.2],
    ['$1,234.50', 1234.5],
    ['-$20.00', -20],
    ['$ 7', 7],
    ['USD 12.5', 12.5],
    ['12.5 USD', 12.5],
  ])('%s', (text, value) => {
    expect(read(text, '.', 'money', 'USD')).toBeCloseTo(value, 12);
  });
  it('in another currency, or before another kind of number, is rejected', () => {
    expect(read('€5', '.', 'money', 'USD')).toMatch(/says €, but the column is declared in USD/);
    expect(read('CAD 5', '.', 'money', 'USD')).toMatch(/says CAD/);
    expect(read('$5', '.', 'current', 'A')).toMatch(/is no number/);
  });
  it('in euros, with a decimal comma', () => {
    const line = linearUnit('money', 'EUR', 'EUR')!;
    const euros = (text: string) =>
      numberCell(text, { kind: 'money', unit: 'EUR', line, decimal: ',', currency: 'EUR' });
    expect(euros('€ 1.234,50')).toBeCloseTo(1234.5, 12);
    expect(euros('$5')).toMatch(/says \$/);
  });
});

describe('the decimal sign of a file', () => {
  it.each([
    [['12.5', '13.1'], ',', '.'],
    [['12,5', '13', '1.234,5'], ';', ','],
    [['0,750', '0,800'], '\t', ','],
    [['1,234', '1,300.5'], ';', '.'],
    [['1,234', '2,345'], ',', '.'],
    [['1,234', '2,345'], ';', ','],
    [['1,234', '2,345'], '\t', null],
    [['12', '13'], '\t', '.'],
    [['1.234', '2.345'], '\t', '.'],
    [['12,5', '12,6', '12.5'], ';', ','],
  ] as const)('%j parted by "%s": %s', (cells, delimiter, decimal) => {
    expect(findDecimal(cells, delimiter)).toBe(decimal);
  });
});
