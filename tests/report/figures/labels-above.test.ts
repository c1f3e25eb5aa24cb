import { describe, expect, it } from 'vitest';
import { labelsAbove } from '../../../src/report/figures/labels-above.ts';
import { waysToRun } from '../../../src/report/figures/ways-to-run.ts';
import { Units } from '../../../src/report/units.ts';

const UNITS = new Units('us', 'USD', 'America/Chicago');
const narrowly = (name: string, reaches: boolean) =>
  waysToRun(
    {
      id: 'ways',
      title: 'Ways',
      ways: [{ name, cost: { value: 974, interval: [933, 1050], why: null }, reaches, apart: false }],
      whisker: 'range',
      notShown: null,
    },
    UNITS,
  ).draw({ width: 360, narrow: true, idPrefix: 'n' });

describe('labels over the whiskers of a narrow figure', () => {
  // A letter of the figures’ 10 px type is about half as wide as it is high (common practice), a little more in bold.
  it('stay on one line of some 325 px, else the name stands over its number', () => {
    const row = { name: 'Always on', text: '5,770 (3,810 to 6,930)', bold: false };
    expect(labelsAbove([row]).words(row)).toBe('Always on: 5,770 (3,810 to 6,930)');
    const long = { name: 'Temperature difference', text: '974 (933 to 1,050), target not reached', bold: false };
    const above = labelsAbove([row, long]);
    expect(above.words(row)).toBe('Always on\n5,770 (3,810 to 6,930)');
    expect(above.step).toBeGreaterThan(labelsAbove([row]).step);
    // 55 letters have room, but not in bold
    const between = { name: 'Equilibrium window', text: '0.187 (0.167 to 0.191), not reached' };
    expect(labelsAbove([{ ...between, bold: false }]).words(between)).toContain(': ');
    expect(labelsAbove([{ ...between, bold: true }]).words(between)).toContain('\n');
  });

  it('are drawn so that no line of a way is longer than a window of 360 px takes', () => {
    const lines = [...narrowly('Temperature difference', false).matchAll(/<(?:text|tspan)[^>]*>([^<]{20,})/g)].map(
      (found) => found[1],
    );
    expect(lines.length).toBeGreaterThan(0);
    expect(lines.filter((line) => line.length > 58)).toEqual([]);
    expect(narrowly('Always on', true)).toContain('Always on: 974 (933 to 1,050)');
  });
});
