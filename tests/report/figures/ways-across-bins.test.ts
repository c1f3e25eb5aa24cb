import { describe, expect, it } from 'vitest';
import { estimate, withheld } from '../../../src/base/estimate.ts';
import { waysAcrossBins } from '../../../src/report/figures/ways-across-bins.ts';
import { Units } from '../../../src/report/units.ts';

const UNITS = new Units('us', 'USD', 'America/Chicago');
const WORDS = {
  subtitle: 'by the model',
  own: 'its own',
  dot: 'reaches',
  ring: 'does not',
  whisker: 'range',
};
const way = (name: string, value: number, more: { misses?: string; own?: boolean } = {}) => ({
  name,
  of: estimate(value, 0.9 * value, 1.2 * value),
  ...{ misses: null, own: false, ...more },
});
const figureOf = (bins: Parameters<typeof waysAcrossBins>[0]['bins']) =>
  waysAcrossBins(
    { id: 'crossed', title: 'All on all', quantity: 'money per grain', bins, notShown: null, words: WORDS },
    UNITS,
  );
const figure = figureOf([
  {
    name: 'North',
    ways: [way('Always on', 0.02, { own: true }), way('Night hours', 0.01, { misses: 'target not reached' })],
  },
  { name: 'South', ways: [way('Always on', 0.04), { ...way('Night hours', 1), of: withheld('-') }] },
  { name: 'Pit', ways: [{ ...way('Always on', 1), of: withheld('-') }] },
]);

describe('every way on every bin, drawn', () => {
  it('tells the same in words: whose, which, how much, and what does not reach', () => {
    expect(figure.alt).toMatch(
      /^All on all\. In .+\. North: Always on \(its own\) 0\.02\d* \(.*\); Night hours 0\.01\d* \(.*\), target not reached\. South: Always on 0\.04/,
    );
    expect(figure.alt).not.toContain('Pit');
    expect(figure.legend?.map(({ swatch }) => swatch)).toEqual(['dot', 'ring', 'whisker']);
    expect(figureOf([]).alt).toBe('No bin has a value.');
  });

  it.each([
    [960, false],
    [360, true],
  ])('draws a dot or a ring for each run with a cost, %i px', (width, narrow) => {
    const svg = figure.draw({ width, narrow, idPrefix: 'x-' });
    expect(svg.match(/<circle/g)).toHaveLength(3);
    for (const word of ['North', 'South', 'Night hours']) expect(svg).toContain(word);
    expect(svg).not.toContain('NaN');
  });
});
