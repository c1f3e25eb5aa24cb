import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { estimate, withheld } from '../../../src/base/estimate.ts';
import { waysByBin } from '../../../src/report/figures/ways-by-bin.ts';
import { Units } from '../../../src/report/units.ts';

const figure = (system: 'us' | 'si') =>
  waysByBin(
    {
      id: 'w',
      title: 't',
      quantity: 'water',
      bins: [
        {
          name: 'North',
          ways: [
            { name: 'sensors', of: estimate(24_000, 22_000, 26_000) },
            { name: 'air', of: estimate(21_000, 11_000, 31_000) },
          ],
        },
        {
          name: 'South',
          ways: [
            { name: 'sensors', of: estimate(-6000, -7000, -5000) },
            { name: 'air', of: withheld('No airflow.') },
          ],
        },
        { name: 'West', ways: [{ name: 'sensors', of: withheld('No sensor.') }] },
      ],
      notShown: 'West not shown.',
    },
    new Units(system, 'USD', 'America/Chicago'),
  );
const texts = (svg: string) =>
  [...parseHTML(svg).document.querySelectorAll('text')].map((one) => one.textContent ?? '');

describe('one quantity of each bin by independent ways', () => {
  it('names bins and ways that are known, with number and interval in the shown unit', () => {
    // 24,000 kg are 24.0 t and, at 0.45359237 kg a pound, 52,911 lb
    const said = texts(figure('si').draw({ width: 900, narrow: false, idPrefix: 'w' }));
    expect(said).toEqual(expect.arrayContaining(['North', 'South', 'sensors', 'air', '24.0 (22.0 to 26.0)']));
    expect(said).not.toContain('West');
    expect(said.filter((text) => text === 'air')).toHaveLength(1);
    const us = texts(figure('us').draw({ width: 360, narrow: true, idPrefix: 'n' }));
    expect(us.some((text) => text.startsWith('sensors: 52,900 ('))).toBe(true);
  });

  it('tells the same to those who cannot see it', () => {
    const { alt, notShown, subtitle } = figure('si');
    expect(alt).toContain('North: sensors 24.0 (22.0 to 26.0) t, air 21.0 (11.0 to 31.0) t.');
    expect(alt).toContain('West: not known.');
    expect(notShown).toBe('West not shown.');
    expect(subtitle).toContain('90 % interval');
  });
});
