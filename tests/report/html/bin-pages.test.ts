import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { renderPages } from '../../../src/report/html/pages.ts';
import type { Page, Section } from '../../../src/report/page.ts';
import { Units } from '../../../src/report/units.ts';

const units = new Units('us', 'USD', 'America/Chicago');
const made = {
  seasonTitle: 'S',
  farm: null,
  command: 'c',
  version: '0',
  generatedAtMs: 0,
  inputs: [],
  changedDefaults: [],
};
const bin = (n: number): Section => ({ id: `bin-B${n}`, title: `Bin ${n}`, lead: `Of bin ${n}.` });
const page = (bins: number): Page => ({
  id: 'moisture',
  file: 'moisture.html',
  title: 'Moisture',
  question: 'How many points?',
  answer: '3 points.',
  units,
  madeBy: made,
  keyNumbers: [{ label: 'Bins', quantity: 'count', amount: bins }],
  sections: [
    { id: 'all', title: 'All bins', lead: 'All.' },
    ...Array.from({ length: bins }, (_, i) => bin(i + 1)),
    { id: 'end', title: 'After them', lead: 'End.' },
  ],
  warnings: [],
  cautions: [],
  sources: [],
});

describe('a page of many bins', () => {
  it('stays whole up to a dozen', () => {
    expect(renderPages([page(12)]).map(({ file }) => file)).toEqual(['moisture.html']);
  });
  const rendered = renderPages([page(50), { ...page(1), id: 'other', file: 'other.html', title: 'Other' }]);
  const documents = new Map(rendered.map(({ file, html }) => [file, parseHTML(html).document]));
  it('becomes one of all bins and pages of ten, each bin once', () => {
    const parts = [1, 2, 3, 4, 5].map((n) => `moisture-bins-${n}.html`);
    expect([...documents.keys()]).toEqual(['moisture.html', ...parts, 'other.html']);
    const titles = (file: string) =>
      [...(documents.get(file)?.querySelectorAll('main section > h2') ?? [])].map((one) => one.textContent);
    expect(titles('moisture.html').slice(0, 3)).toEqual(['All bins', 'After them', 'Each bin']);
    const bins = parts.flatMap(titles).filter((title) => title?.startsWith('Bin '));
    expect(bins).toEqual(Array.from({ length: 50 }, (_, i) => `Bin ${i + 1}`));
    expect(documents.get(parts[1])?.querySelector('h1')?.textContent).toBe('Moisture: Bin 11 to Bin 20');
  });
  it('lists every bin with a way to it and back, and every link leads somewhere', () => {
    const index = [...(documents.get('moisture.html')?.querySelectorAll('ul.columns a') ?? [])];
    expect(index.map((link) => link.textContent)).toEqual(Array.from({ length: 50 }, (_, i) => `Bin ${i + 1}`));
    for (const [file, document] of documents) {
      for (const link of document.querySelectorAll('a:not(.source)')) {
        const [to, id] = (link.getAttribute('href') ?? '').split('#');
        const target = documents.get(to === '' ? file : to);
        expect(target, `${file} ${to}`).toBeDefined();
        if (id !== undefined) expect(target?.getElementById(id), `${file} #${id}`).not.toBeNull();
      }
    }
    const part = documents.get('moisture-bins-3.html');
    expect(part?.querySelector('nav[aria-label=Pages] [aria-current]')?.getAttribute('href')).toBe('moisture.html');
    expect(part?.querySelector('nav[aria-label=Bins] a')?.getAttribute('href')).toBe('moisture.html');
    expect(part?.querySelector('#answer')?.textContent).toBe('3\u00a0points.');
  });
});
