import { describe, expect, it } from 'vitest';
import binsCompared from '../../notebooks/bins-compared.ts';
import { compareBins } from '../../src/analysis/compare/compare-bins.ts';
import type { BinReview } from '../../src/analysis/types.ts';
import { estimate, withheld } from '../../src/base/estimate.ts';
import { renderPages } from '../../src/report/html/pages.ts';
import { pageTables } from '../../src/report/page-tables.ts';
import { exact, type MadeBin, madeBin } from '../analysis/compare/made-bin.ts';
import { exampleInput } from '../report/example-review.ts';

function pageOf(made: readonly BinReview[], units: 'us' | 'si' = 'us') {
  const input = exampleInput({ units });
  const loaded = { ...input.loaded, season: { ...input.loaded.season, bins: made.map((one) => one.bin) } };
  const page = binsCompared.page({
    ...input,
    loaded,
    review: { ...input.review, bins: made, compared: compareBins(loaded, made) },
  });
  expect(page.failure).toBeUndefined();
  expect(renderPages([page])[0].failures).toEqual([]);
  return page;
}
const sectionOf = (page: ReturnType<typeof pageOf>, id: string) => page.sections.find((one) => one.id === id);
const leadOf = (page: ReturnType<typeof pageOf>) => sectionOf(page, 'why-dry')?.lead;
const entriesOf = (page: ReturnType<typeof pageOf>) =>
  (sectionOf(page, 'why-dry')?.entries ?? []).map((entry) => [entry.text, ...(entry.details ?? [])].join(' '));

/** 500 h, 5000 kWh, 500 USD of energy, 900 USD in all, 10,000 bushels; the cost follows from the points. */
function dried(name: string, points: number, more: MadeBin = {}): BinReview {
  const unit = 900 / 10_000 / points;
  return madeBin({
    id: name,
    name,
    points: exact(points),
    unitCost: estimate(unit, unit * 0.95, unit * 1.05),
    ...more,
  });
}

describe('the first sentence', () => {
  it('names the cheapest, its cost and how many times the dearest is', () => {
    // 0.09 / 4 = 0.0225 and 0.09 / 2 = 0.045: twice.
    expect(pageOf([dried('Dear', 2), dried('Cheap', 4)]).answer).toBe(
      'Of 2 corn bins run to dry, Cheap was cheapest at 0.023 USD a bushel-point (0.021 to 0.024); Dear cost 2.00 times as much.',
    );
  });
  it('says who shares first place, or that all places are shared', () => {
    expect(pageOf([dried('A', 4), dried('B', 3.9), dried('C', 2)]).answer).toMatch(
      /^Of 3 corn bins run to dry, the lowest cost is 0\.023 .* in A, sharing first place with B; the dearest, C, cost 2\.00 times as much\.$/,
    );
    expect(pageOf([dried('A', 4), dried('B', 3.9)]).answer).toMatch(
      /^The 2 corn bins run to dry share their places, as their intervals overlap: from .* in A to .* in B, 1\.03 times as much\.$/,
    );
  });
  it('says that there is one bin, or none that can be ranked', () => {
    expect(pageOf([dried('Only', 4)]).answer).toBe(
      'Only cost 0.023 USD a bushel-point (0.021 to 0.024). There is no other bin to compare it with.',
    );
    expect(pageOf([dried('N', 4, { unitCost: withheld('No sensor.') })]).answer).toContain('can’t be told. No sensor.');
    expect(pageOf([dried('A', 4), dried('B', 3, { crop: 'wheat' })]).answer).toMatch(
      /^Can’t rank any bin: .* A cost 0\.023 USD a bushel-point \(0\.021 to 0\.024\) and B cost/,
    );
    expect(pageOf([]).answer).toBe('Can’t tell: there is no bin to compare.');
  });
});

describe('what makes the difference', () => {
  it('is told in shares of price, charges and energy that were worked by hand', () => {
    // Twice the cost, all of it by half the points in the same hours: energy 100 %, price and charges none.
    const [told] = entriesOf(pageOf([dried('Cheap', 4), dried('Dear', 2)]));
    expect(told).toContain('Dear cost 2.00 times as much a bushel-point as Cheap.');
    expect(told).toContain('100 % is the energy used for a point (2.00 times as much)');
    expect(told).toContain('0 % is the price of energy (0.100 against 0.100 USD/kWh)');
    expect(told).toContain('power for the grain 1.00 times the other’s by fan hours for a point 2.00 times');
    // The example's bins had the same air and grain.
    expect(told).toContain('None of the conditions known here explains the longer hours');
  });
  it('says what pulled the other way', () => {
    // The dear one pays 1,800 in all, 250 of it for half the energy, at the same price of a kWh and for the same points.
    const dear = dried('Dear', 4, {
      energyKwh: exact(2500),
      energyCost: exact(250),
      cost: exact(1800),
      unitCost: estimate(0.045, 0.043, 0.047),
    });
    const [told] = entriesOf(pageOf([dried('Cheap', 4), dear]));
    // Cost × 2 = price × 1 · charges (7.2 over 1.8) × 4 · energy × 0.5: shares 0, 200 and -100 %.
    expect(told).toContain('200 % is what comes on top of energy');
    expect(leadOf(pageOf([dried('Cheap', 4), dear]))).toMatch(
      /^The largest part of what Dear cost more than Cheap is what comes on top of energy.*: 200 %.* of the difference\.$/,
    );
    expect(told).toContain('The other way pulled the energy used for a point (0.50 times as much), 100 %.');
  });
  it('leads with the largest part of the clearest difference, or with there being none', () => {
    expect(leadOf(pageOf([dried('Cheap', 4), dried('Dear', 2)]))).toMatch(
      /^The largest part of what Dear cost more than Cheap is the energy used for a point: 100 %.* of the difference\.$/,
    );
    expect(leadOf(pageOf([dried('A', 4), dried('B', 4)]))).toBe(
      'No two bins of one crop cost clearly different amounts, so there is no difference to explain.',
    );
  });
  it('across crops goes by the shown unit of grain, without shares', () => {
    const bins = [dried('A', 4), dried('B', 3.9), dried('W', 2, { crop: 'wheat' })];
    const us = entriesOf(pageOf(bins)).find((text) => text.startsWith('W'));
    expect(us).toContain(
      'W cost 2.00 times as much a bushel-point as A. W holds wheat, A corn, so they are not ranked.',
    );
    expect(us).toContain('these multiply');
    // A bushel of corn weighs 56 lb, one of wheat 60: 2 × 56/60 a tonne.
    const si = entriesOf(pageOf(bins, 'si')).find((text) => text.startsWith('W'));
    expect(si).toContain('W cost 1.87 times as much a tonne-point as A.');
  });
});

it('refusals stand in a table, each with its reason', () => {
  const page = pageOf([dried('A', 4), dried('B', 2), dried('N', 3, { unitCost: withheld('The points reach zero.') })]);
  const table = sectionOf(page, 'refused')?.table;
  expect(table?.rows.map((row) => [row.bin, row.why])).toEqual([['N', 'The points reach zero.']]);
  expect(sectionOf(page, 'refused')?.lead).toBe('1 bin of 3 has no place.');
});

it('fifty bins: a figure, six statements, tables folded and not printed, a row each in the files', () => {
  const page = pageOf(Array.from({ length: 50 }, (_, i) => dried(`Bin ${i}`, 2 + i / 20)));
  expect(sectionOf(page, 'dry')?.figures).toHaveLength(1);
  const why = sectionOf(page, 'why-dry');
  expect(why?.entries).toHaveLength(6);
  expect(why?.notes).toEqual(['The tables tell of 43 more bins.']);
  for (const id of ['dry', 'parts-dry']) {
    for (const table of sectionOf(page, id)?.tables ?? []) expect(table.folded, table.id).toBe('on screen');
  }
  const files = pageTables(page).map((file) => [file.name, file.csv.trim().split('\n').length - 1]);
  expect(files).toContainEqual(['bins-compared-dry-places', 50]);
  expect(files).toContainEqual(['bins-compared-parts-dry-times', 49]);
});
