import { describe, expect, it } from 'vitest';
import yearEnd from '../../notebooks/year-end.ts';
import { withheld } from '../../src/base/estimate.ts';
import type { NotebookInput } from '../../src/notebook.ts';
import { renderDocument } from '../../src/report/html/document.ts';
import { exampleInput } from '../report/example-review.ts';

const drawn = (input: NotebookInput) => {
  const page = yearEnd.page(input);
  return { page, ...renderDocument(page, [{ file: page.file, title: page.title }]) };
};
const withBins = (count: [number, number?]): NotebookInput => {
  const input = exampleInput();
  return { ...input, review: { ...input.review, bins: input.review.bins.slice(...count) } };
};

describe('the year-end report', () => {
  it('is drawn whole, of all bins, of one, and of those of which nothing is known', () => {
    for (const input of [exampleInput(), withBins([0, 1]), withBins([2])]) {
      const { page, failures } = drawn(input);
      expect(page.failure).toBeUndefined();
      expect(failures).toEqual([]);
    }
    expect(drawn(withBins([2])).page.answer).toMatch(/^Can’t tell/);
  });

  it('stands without a single bin', () => {
    const { page, failures, html } = drawn(withBins([0, 0]));
    expect(page.failure).toBeUndefined();
    expect(failures).toEqual([]);
    expect(page.answer).toMatch(/^Can’t tell/);
    expect(html).toContain('There is no bin in season.yaml.');
  });

  it('begins each chapter with an answer: a number, or why there is none', () => {
    const { page } = drawn(exampleInput());
    for (const { id, lead } of page.sections.slice(1)) expect(lead, id).toMatch(/\d|[Cc]an’t|None|Nothing|[Nn]o /);
  });

  it('bears what is stated for it, and takes nothing from a clock', () => {
    const stated = { preparedFor: 'A <Farm> (invented)', preparedBy: 'A. Consultant', date: '20 May 2025' };
    const { html } = drawn({ ...exampleInput(), stated });
    expect(html).toContain('A &lt;Farm&gt; (invented)');
    expect(html.replaceAll('\u00a0', ' ')).toContain('<dt>Date</dt><dd>20 May 2025</dd>');
    expect(drawn(exampleInput()).html).not.toContain('<dt>Date</dt><dd>2');
    expect(drawn({ ...exampleInput(), stated }).html).toBe(html);
  });

  it('tells in one note of its summary why bins that were not run to dry have no cost of a point, so that it stays one sheet', () => {
    const input = exampleInput();
    const bins = (['cool', 'condition', 'hold'] as const).map((goal, i) => {
      const one = input.review.bins[i];
      const why = `The fans of ${one.bin.name} were run otherwise, so a cost per point removed has no meaning.`;
      const each = { perBushelPoint: withheld(why) };
      return { ...one, bin: { ...one.bin, goal }, unitCosts: { ...one.unitCosts, ...each } };
    });
    const page = yearEnd.page({ ...input, review: { ...input.review, bins } });
    const cells = page.sections.find(({ id }) => id === 'summary')?.table?.rows.map(({ perPoint }) => perPoint) ?? [];
    expect(cells).toHaveLength(3);
    expect(cells[0]).toMatchObject({ value: null });
    expect(new Set(cells.map((cell) => (cell as { why: string }).why)).size).toBe(1);
  });

  it('has every heading of its contents once, in their order', () => {
    const { html } = drawn(exampleInput());
    const contents = [...html.matchAll(/<li class="(?:chapter|part)"><a href="#([^"]+)"/g)].map(([, id]) => id);
    const headings = [...html.matchAll(/<h[23][^>]*? id="([^"]+)"[^>]*>\d/g)].map(([, id]) => id);
    expect(contents.length).toBeGreaterThan(15);
    expect(headings).toEqual(contents);
  });
});
