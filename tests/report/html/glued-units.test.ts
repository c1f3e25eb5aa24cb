import { describe, expect, test } from 'vitest';
import { gluedUnits } from '../../../src/report/html/glued-units.ts';
import { html } from '../../../src/report/html/markup.ts';
import { Units } from '../../../src/report/units.ts';

const NBSP = '\u00a0';

describe('no line breaks between a number and its unit', () => {
  test.each([
    ['left at 30 °F', `left at 30${NBSP}°F`],
    ['about 2.3 points (2.0 to 2.6)', `about 2.3${NBSP}points (2.0 to 2.6)`],
    ['1 point', `1${NBSP}point`],
    ['0.1 cfm/bu, 41 h', `0.1${NBSP}cfm/bu, 41${NBSP}h`],
    ['12 fan hours', `12${NBSP}fan hours`],
    ['210 USD a bushel-point', `210${NBSP}USD a bushel-point`],
    ['12 % of', `12${NBSP}% of`],
    ['4.2 K/h', `4.2${NBSP}K/h`],
  ])('%s', (text, glued) => {
    expect(gluedUnits(text)).toBe(glued);
  });

  test.each(['3 heaps', '5 topics', '20 sensors', '2024 Creek 33', 'Creek 33 holds', 'h 3', 'within 6 to 8'])(
    '%s stays as it is',
    (text) => {
      expect(gluedUnits(text)).toBe(text);
    },
  );

  test('pages have it, the text that files carry does not', () => {
    const said = new Units('us', 'USD', 'America/Chicago').say('temperature', 0);
    expect(said).toBe('32 °F');
    expect(html`<p>${said}</p>`.text).toBe(`<p>32${NBSP}°F</p>`);
  });
});
