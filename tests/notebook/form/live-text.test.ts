import { describe, expect, it } from 'vitest';
import { estimate, withheld } from '../../../src/base/estimate.ts';
import { amount } from '../../../src/notebook/form/amount.ts';
import { type Live, sayLive } from '../../../src/notebook/form/live-text.ts';
import { Units } from '../../../src/report/units.ts';

const us = new Units('us', 'USD', 'America/Chicago');
const si = new Units('si', 'EUR', 'Europe/Berlin');
const said = (units: Units, words: TemplateStringsArray, ...live: readonly Live[]) => sayLive(units, words, live);

describe('a text with live numbers', () => {
  it('says numbers in the reader’s units, with their intervals', () => {
    // 10 degC is 50 °F and 12 degC 53.6 °F, by the definition of the scales; 3 m is 9.84 ft (1 ft = 0.3048 m).
    const warm = amount('temperature', estimate(10, 8, 12));
    expect(said(us, ['It was ', '.'] as never, warm).text).toBe('It was 50 °F (46 to 54).');
    expect(said(si, ['It was ', '.'] as never, warm).text).toBe('It was 10 °C (8 to 12).');
    expect(sayLive(us, ['', ''], [amount('length', 3)]).text).toBe('9.8 ft');
    expect(sayLive(us, ['', ''], [amount('money', 1234.4)]).text).toBe('1,230 USD');
  });

  it('takes numbers in the unit that they are in', () => {
    expect(sayLive(us, ['', ''], [amount('temperature', 50, 'degF')]).text).toBe('50 °F');
    expect(sayLive(si, ['', ''], [amount('temperature', 50, 'degF')]).text).toBe('10 °C');
    expect(sayLive(si, ['', ''], [amount('moisture', 15.5, '%')]).text).toBe('15.5 %');
    expect(sayLive(si, ['', ''], [amount('length', estimate(10, 9, 11), 'ft')]).text).toBe('3.0 m (2.7 to 3.4)');
  });

  it('counts, lists, dates, and closes up line breaks', () => {
    const parts: Live[] = [1234567, ['a', 'b', 'c'], new Date(Date.UTC(2024, 10, 3, 5))];
    expect(sayLive(us, ['  ', '\n   of ', ',\n\tfrom ', ' on. '], parts).text).toBe(
      '1,234,567 of a, b and c, from 3 Nov 2024 on.',
    );
    expect(sayLive(us, ['', ''], [-1500]).text).toBe('−1,500');
  });

  it('makes a dash of what is missing, and tells each reason once', () => {
    const none = amount('points', withheld('No sensor'));
    const told = sayLive(us, ['', ' and ', ' and ', ' and ', ''], [none, none, null, { value: null, why: 'Why not.' }]);
    expect(told).toEqual({ text: '– and – and – and –', whys: ['No sensor.', 'Not known.', 'Why not.'] });
    expect(sayLive(us, ['', ''], [amount('hours', Number.NaN)]).text).toBe('–');
  });

  it('refuses a number that does not say what it is of', () => {
    for (const bare of [2.5, estimate(1, 0, 2) as never]) {
      expect(() => sayLive(us, ['', ''], [bare])).toThrow(/without its kind.*amount\('hours'/);
    }
    expect(() => sayLive(us, ['', ''], [{ some: 1 } as never])).toThrow('a text cannot say {"some":1}');
    expect(() => amount('hour' as never, 1)).toThrow(/no kind of number "hour"; there are count, number, hours/);
    expect(() => amount('length', 1, 'degF')).toThrow(/"degF" is no unit of length; there are ft, in, m/);
    expect(() => amount('hours', 1, 'h')).toThrow('take no unit');
  });
});
