import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { estimate } from '../../../src/base/estimate.ts';
import { rankedCosts } from '../../../src/report/figures/ranked-costs.ts';
import { Units } from '../../../src/report/units.ts';

const us = new Units('us', 'USD', 'America/Chicago');
const bins = (count: number) =>
  Array.from({ length: count }, (_, i) => ({
    name: `Bin ${i}`,
    cost: estimate(0.05 - i / 1000, 0.045 - i / 1000, 0.057 - i / 1000),
    place: `${count - i}`,
  }));
const figure = (groups: Parameters<typeof rankedCosts>[0]['groups']) =>
  rankedCosts({ id: 'c', title: 't', quantity: 'money per grain point', groups, notShown: null }, us);
const texts = (svg: string) =>
  [...parseHTML(svg).document.querySelectorAll('text')].map((one) => one.textContent ?? '');
const wide = { width: 900, narrow: false, idPrefix: 'w' };
const narrow = { width: 360, narrow: true, idPrefix: 'n' };

describe('bins by cost with their places', () => {
  it('names place, bin and number with its interval in every row, cheapest first', () => {
    const svg = figure([{ name: 'Corn', bins: bins(3) }]).draw(wide);
    const said = texts(svg);
    expect(said.filter((text) => /^Bin \d$/.test(text))).toEqual(['Bin 2', 'Bin 1', 'Bin 0']);
    expect(said).toContain('0.050 (0.045 to 0.057)');
    expect(said.filter((text) => /^[123]$/.test(text))).toEqual(['1', '2', '3']);
    // One group needs no heading.
    expect(said).not.toContain('Corn');
    expect(texts(figure([{ name: 'Corn', bins: bins(3) }]).draw(narrow))).toContain('3. Bin 0: 0.050 (0.045 to 0.057)');
  });

  it('shows bins without a place as rings, under the heading of their group', () => {
    const made = figure([
      { name: 'Corn', bins: bins(2) },
      { name: 'Wheat', bins: [{ name: 'Road', cost: estimate(0.03, 0.025, 0.036), place: null }] },
    ]);
    expect(made.legend.map((item) => item.swatch)).toContain('ring');
    expect(made.alt).toContain('Road not ranked');
    const svg = made.draw(wide);
    expect(texts(svg)).toEqual(expect.arrayContaining(['Corn', 'Wheat', '–']));
    expect(svg.match(/<circle/g)).toHaveLength(3);
  });

  it('of fifty bins stays within a printed page’s height for its width', () => {
    const svg = parseHTML(figure([{ name: 'Corn', bins: bins(50) }]).draw(wide)).document.querySelector('svg');
    // Letter less margins is 186 × 243 mm.
    expect(Number(svg?.getAttribute('height')) / 900).toBeLessThan(243 / 186);
  });

  it('stands for one bin and for none', () => {
    expect(figure([{ name: 'Corn', bins: bins(1) }]).alt).toBe(
      'One bin: Bin 0 at 0.050 (0.045 to 0.057) USD/bu-point.',
    );
    expect(figure([]).alt).toBe('No bin has this cost.');
  });
});
