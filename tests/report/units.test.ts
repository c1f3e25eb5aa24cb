import { describe, expect, it } from 'vitest';
import { estimate, withheld } from '../../src/base/estimate.ts';
import { zoneOf } from '../../src/base/zone.ts';
import { dateText, dateTimeText, monthText } from '../../src/report/date-text.ts';
import { grouped, roundTo } from '../../src/report/number-text.ts';
import { Units } from '../../src/report/units.ts';

const us = new Units('us', 'USD', 'America/Chicago');
const si = new Units('si', 'CAD', 'America/Winnipeg');

describe('numbers as text', () => {
  it('group thousands, round half away from zero, and keep a true minus', () => {
    expect(grouped(1234567.891, 1)).toBe('1,234,567.9');
    expect(grouped(-999, 0)).toBe('−999');
    expect(grouped(-0.04, 1)).toBe('0.0');
    // Exact decimal halves that binary numbers do not hold: 1.005 must not become 1.00.
    expect(roundTo(1.005, 2)).toBe(1.01);
    expect(roundTo(-2.5, 0)).toBe(-3);
    expect(roundTo(51249, -2)).toBe(51200);
    expect(roundTo(1e-9, 2)).toBe(0);
  });
  it('refuse what is no number, so that no page can say NaN', () => {
    expect(() => grouped(Number.NaN, 0)).toThrow(/finite/);
    expect(() => us.number('hours', Number.POSITIVE_INFINITY)).toThrow(/finite/);
  });
  it('take at most three figures', () => {
    expect(us.say('hours', 4312.4)).toBe('4,310 h');
    expect(us.say('energy', 51_234)).toBe('51,200 kWh');
    expect(us.say('money', 6018.2)).toBe('6,020 USD');
    expect(us.say('money', 38)).toBe('38 USD');
    expect(us.say('money', 5.2)).toBe('5.20 USD');
    expect(us.say('money', 9.996)).toBe('10 USD');
    expect(us.say('hours', 99.96)).toBe('100 h');
    expect(us.number('count', 1_238_274)).toBe('1,238,274');
  });
  it('say an interval at the digits of its middle', () => {
    expect(us.say('points', estimate(2.3, 2.02, 2.58))).toBe('2.3 points (2.0 to 2.6)');
    expect(us.say('money per grain point', estimate(0.0235, 0.0203, 0.0274))).toBe(
      '0.024 USD a bushel-point (0.020 to 0.027)',
    );
    expect(us.amount('money', estimate(0, 0, 174.2))).toBe('0 (0 to 174)');
    expect(us.amount('points', estimate(2, 2, 2))).toBe('2.0');
    expect(us.say('points', withheld('no log'))).toBe('–');
    expect(us.number('points', null)).toBe('–');
  });
});

describe('units of people', () => {
  // Fixed points of the scales and exact definitions: NIST SP 811 (2008), appendix B: 1 ft = 0.3048 m, 1 hp (550 ft lbf/s) = 745.6999 W,
  // 1 ft3/min = 4.719474e-4 m3/s, conventional inch of water 249.0889 Pa.
  it('convert at the door', () => {
    expect(us.say('temperature', 0)).toBe('32 °F');
    expect(us.say('temperature', -40)).toBe('−40 °F');
    expect(si.say('temperature', -40)).toBe('−40 °C');
    expect(us.say('temperature difference', 5)).toBe('9.0 °F');
    expect(us.say('length', 0.3048 * 20)).toBe('20.0 ft');
    expect(si.say('length', 6.1)).toBe('6.1 m');
    expect(us.shown('airflow', 4.719474e-4)).toBeCloseTo(1, 6);
    expect(us.shown('pressure', 249.0889)).toBeCloseTo(1, 4);
    expect(us.shown('nameplate', 745.6999)).toBeCloseTo(1, 6);
    expect(si.say('moisture', 0.1784)).toBe('17.8 %');
    expect(si.unit('money per grain point')).toBe('CAD/t-point');
  });
});

describe('dates', () => {
  const chicago = zoneOf('America/Chicago');
  it('follow the clock of the site, with English months', () => {
    expect(dateText(chicago, Date.UTC(2024, 9, 4, 4, 59))).toBe('3 Oct 2024');
    expect(dateTimeText(chicago, Date.UTC(2024, 9, 4, 5, 7))).toBe('4 Oct 2024 00:07');
    // after the end of daylight saving time on 3 Nov 2024
    expect(dateTimeText(chicago, Date.UTC(2024, 10, 4, 6, 0))).toBe('4 Nov 2024 00:00');
    expect(monthText('2025-01')).toBe('Jan 2025');
  });
});
