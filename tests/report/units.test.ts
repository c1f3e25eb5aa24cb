import { describe, expect, it } from 'vitest';
import { estimate, withheld } from '../../src/base/estimate.ts';
import { zoneOf } from '../../src/base/zone.ts';
import { dateText, dateTimeText, isoDay, isoMoment, monthText } from '../../src/report/date-text.ts';
import { grouped, roundTo } from '../../src/report/number-text.ts';
import { oneSystem, oneSystemIn } from '../../src/report/one-system.ts';
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
  it('keep all digits of a constant', () => {
    const digits = ['0.000066612', '−0.10164', '374.34', '1.5', '60', '0', '0.00000012'];
    expect([0.000066612, -0.10164, 374.34, 1.5, 60, 0, 1.2e-7].map((each) => us.number('constant', each))).toEqual(
      digits,
    );
    expect(us.number('constant', 20700)).toBe('20,700');
  });
  it('say an interval at the digits of its middle', () => {
    expect(us.say('points', estimate(2.3, 2.02, 2.58))).toBe('2.3 points (2.0 to 2.6)');
    expect(us.say('money per grain point', estimate(0.0235, 0.0203, 0.0274))).toBe(
      '0.024 USD a bushel-point (0.020 to 0.027)',
    );
    expect(us.amount('money', estimate(0, 0, 174.2))).toBe('0 (0 to 174)');
    // No end shows more than three figures, however small its middle.
    expect(us.amount('money', estimate(868.4, 284.4, 1444.7))).toBe('868 (284 to 1,440)');
    expect(us.amount('money per grain', estimate(0.0086, 0.0069, 0.0103))).toBe('0.0086 (0.0069 to 0.010)');
    // Energy of a bin that was only cooled: 429 kWh (401 to 457) over 12,300 bu.
    expect(us.amount('energy per grain', estimate(0.03488, 0.0326, 0.03715))).toBe('0.035 (0.033 to 0.037)');
    expect(us.number('energy per grain', 0.528)).toBe('0.53');
    expect(si.number('energy per grain', 17.36)).toBe('17.4');
    expect(us.amount('hours', estimate(30.8, 9.24, 412.6))).toBe('30.8 (9.2 to 413)');
    // An interval that the rounding swallows is not said twice: both ends would read as the number.
    expect(us.amount('hours', estimate(1037.56, 1035.9, 1039.3))).toBe('1,040');
    expect(us.ends('hours', estimate(1037.56, 1035.9, 1039.3))).toEqual(['1,040', '1,040']);
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
  it('are ISO 8601 in files, with the offset that tells the two passes of autumn’s hour apart', () => {
    expect(isoDay(chicago, Date.UTC(2024, 9, 4, 4, 59))).toBe('2024-10-03');
    // Daylight time ends at 2:00 on 3 November 2024, at UTC 7:00.
    expect(isoMoment(chicago, Date.UTC(2024, 10, 3, 6, 30))).toBe('2024-11-03T01:30-05:00');
    expect(isoMoment(chicago, Date.UTC(2024, 10, 3, 7, 30))).toBe('2024-11-03T01:30-06:00');
    expect(isoMoment(zoneOf('Asia/Kolkata'), Date.UTC(2024, 0, 1))).toBe('2024-01-01T05:30+05:30');
    expect(Date.parse(isoMoment(chicago, Date.UTC(2024, 9, 4, 5, 7)))).toBe(Date.UTC(2024, 9, 4, 5, 7));
  });
});

describe('a text that says both units', () => {
  it('keeps the one that the season shows', () => {
    const text = 'changed by less than 3 °C (5.4 °F); outside -45 °C (-49 °F) to 80 °C (176 °F); 3.6 °F stays';
    expect(oneSystem(text, 'us')).toBe('changed by less than 5.4 °F; outside -49 °F to 176 °F; 3.6 °F stays');
    expect(oneSystem(text, 'si')).toBe('changed by less than 3 °C; outside -45 °C to 80 °C; 3.6 °F stays');
  });
  it('keeps the airflow of the reader too', () => {
    const text = 'leave 650 to 1,500 L/s (0.77 to 1.7 cfm/bu) open';
    expect(oneSystem(text, 'us')).toBe('leave 0.77 to 1.7 cfm/bu open');
    expect(oneSystem(text, 'si')).toBe('leave 650 to 1,500 L/s open');
  });
  it('keeps power, length, pressure and energy of the reader, ranges too, and leaves brackets that say else', () => {
    const text =
      'from the nameplate, 4.03 kW (5.4 hp); 0.3 m (1 ft); 1.7 to 2.8 °C (3 to 5 °F) at 1 to 1.5 kPa (4 to 6 inches of water); 12 kWh a tonne-point (0.31 kWh a bushel-point); 13 L/s per m³ (1 cfm/bu); 3 m (a yard)';
    expect(oneSystem(text, 'si')).toBe(
      'from the nameplate, 4.03 kW; 0.3 m; 1.7 to 2.8 °C at 1 to 1.5 kPa; 12 kWh a tonne-point; 13 L/s per m³; 3 m (a yard)',
    );
    expect(oneSystem(text, 'us')).toBe(
      'from the nameplate, 5.4 hp; 1 ft; 3 to 5 °F at 4 to 6 inches of water; 0.31 kWh a bushel-point; 1 cfm/bu; 3 m (a yard)',
    );
  });
  it('is found in tables, notes and figures of a page, and what is no text stays itself', () => {
    const draw = () => 'svg 1 °C (34 °F)';
    const values = Float64Array.from([1, 2]);
    const page = { rows: [{ why: '3 °C (5.4 °F)' }], figures: [{ alt: '2 °C (3.6 °F)', draw, values }], empty: null };
    const shown = oneSystemIn(page, 'us');
    expect(shown).toEqual({ rows: [{ why: '5.4 °F' }], figures: [{ alt: '3.6 °F', draw, values }], empty: null });
    expect(shown.figures[0].draw).toBe(draw);
    expect(shown.figures[0].values).toBe(values);
  });
});
