import { createHash } from 'node:crypto';
import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { renderPages } from '../../../src/report/html/pages.ts';
import type { Page } from '../../../src/report/page.ts';
import { section } from '../../../src/report/section.ts';
import { examplePages } from '../example-pages.ts';
import { exampleInput } from '../example-review.ts';

const HOSTILE = ['<script>alert(1)</script>', '"><img src=x onerror=alert(1)>', "O'Brien & </style> sons", '=cmd|A1'];
const read = (html: string) => parseHTML(html).document;
const textOf = (document: Document) => {
  for (const code of document.querySelectorAll('style,script')) code.remove();
  return document.documentElement.textContent ?? '';
};

describe.each([
  ['in US units', {}],
  ['in SI units', { units: 'si' as const }],
  ['with hostile names', { names: HOSTILE }],
])('pages %s', (_name, options) => {
  const rendered = renderPages(examplePages(exampleInput(options)));
  const each = rendered.map((page) => ({ ...page, document: read(page.html) }));

  it('are made without a failure, the way in first', () => {
    expect(rendered.flatMap((page) => page.failures)).toEqual([]);
    expect(rendered[0].file).toBe('index.html');
  });
  it('never say undefined, NaN, null or an object', () => {
    for (const { file, document } of each) {
      expect(textOf(document), file).not.toMatch(/undefined|NaN|\bnull\b|\[object|Infinity/);
    }
    for (const { file, html } of rendered) {
      expect(html, file).not.toMatch(/="[^"]*(undefined|NaN)[^"]*"/);
    }
  });
  it('load nothing from anywhere and run no script but their own, known by its fingerprint', () => {
    for (const { file, html, document } of each) {
      expect(document.querySelectorAll('script[src],link,img,iframe,object,embed,base,form').length, file).toBe(0);
      for (const element of document.querySelectorAll('*')) {
        for (const { name, value } of element.attributes) {
          expect(name, file).not.toMatch(/^on/);
          if (name === 'src' || name === 'srcset' || name === 'xlink:href') expect(value, file).toBe('');
          // Sources are cited with an address to read them at; nothing else leads out.
          if (name === 'href' && /^\w+:/.test(value)) expect(element.className, `${file} ${value}`).toBe('source');
        }
      }
      for (const style of document.querySelectorAll('style')) {
        expect(style.textContent, file).not.toMatch(/url\((?!#)|@import/);
      }
      const policy = document.querySelector('meta[http-equiv="Content-Security-Policy"]')?.getAttribute('content');
      expect(policy, file).toContain("default-src 'none'");
      const scripts = [...html.matchAll(/<script>([\s\S]*?)<\/script>/g)].map(([, text]) => text);
      expect(html.match(/<script/g)?.length, file).toBe(1);
      expect(scripts.length, file).toBe(1);
      const fingerprint = createHash('sha256').update(scripts[0]).digest('base64');
      expect(policy, file).toContain(`script-src 'sha256-${fingerprint}';`);
    }
  });
  it('have no id twice, and every link inside leads somewhere', () => {
    for (const { file, document } of each) {
      const ids = [...document.querySelectorAll('[id]')].map((element) => element.id);
      expect(
        ids.filter((id, at) => ids.indexOf(id) !== at),
        file,
      ).toEqual([]);
      for (const link of document.querySelectorAll('a[href^="#"]')) {
        expect(ids, `${file} ${link.getAttribute('href')}`).toContain(link.getAttribute('href')?.slice(1));
      }
      for (const [, id] of [...(document.documentElement.outerHTML.matchAll(/url\(#([^)]+)\)/g) ?? [])]) {
        expect(ids, file).toContain(id);
      }
    }
  });
  it('have language, landmarks, one first heading, and headings without a step left out', () => {
    for (const { file, document } of each) {
      expect(document.documentElement.getAttribute('lang'), file).toBe('en');
      for (const landmark of ['main', 'nav[aria-label="Pages"]', 'header', 'footer', 'h1']) {
        expect(document.querySelectorAll(landmark).length, `${file} ${landmark}`).toBe(1);
      }
      // Long pages list their sections too; landmarks of one kind are told apart by their names.
      const names = [...document.querySelectorAll('nav')].map((nav) => nav.getAttribute('aria-label'));
      expect(new Set(names).size, file).toBe(names.length);
      expect(document.querySelector('a.skip')?.getAttribute('href'), file).toBe('#answer');
      expect(document.querySelector('nav [aria-current=page]')?.getAttribute('href'), file).toBe(file);
      const levels = [...document.querySelectorAll('h1,h2,h3,h4')].map((heading) => Number(heading.tagName.slice(1)));
      levels.forEach((level, at) => {
        if (at > 0) expect(level - levels[at - 1], `${file} heading ${at}`).toBeLessThanOrEqual(1);
      });
    }
  });
  it('open with a question and an answer that says a number or why it cannot', () => {
    for (const { file, document } of each) {
      expect(document.querySelector('.question')?.textContent, file).toMatch(/\?$/);
      expect(document.querySelector('#answer')?.textContent?.trim(), file).toMatch(/\d.*\.$|^Can’t tell.*\.$/);
    }
  });
  it('give every figure a text alternative, a title, a subtitle and both widths', () => {
    const figures = each.flatMap(({ file, document }) =>
      [...document.querySelectorAll('figure')].map((figure) => ({ file, figure })),
    );
    expect(figures.length).toBeGreaterThan(10);
    for (const { file, figure } of figures) {
      const at = `${file} ${figure.id}`;
      const drawings = [...figure.querySelectorAll('[role=img]')];
      expect(
        drawings.map((one) => one.className),
        at,
      ).toEqual(['at-wide', 'at-narrow']);
      for (const drawing of drawings) {
        expect(drawing.getAttribute('aria-label'), at).toMatch(/\S{3,}.*\S/);
        expect(drawing.querySelectorAll('svg').length, at).toBe(1);
        expect(drawing.innerHTML.length, `${at} is too large`).toBeLessThan(150_000);
      }
      expect(figure.querySelector('h3')?.textContent, at).toBeTruthy();
      expect(figure.querySelector('figcaption p')?.textContent, at).toBeTruthy();
    }
  });
  it('give every table a caption, scopes, and a reason for every dash', () => {
    for (const { file, document } of each) {
      for (const table of document.querySelectorAll('table')) {
        const at = `${file} ${table.id}`;
        expect(table.querySelector('caption')?.textContent, at).toBeTruthy();
        expect(table.querySelectorAll('thead tr:first-child th:not([scope=col])').length, at).toBe(0);
        expect(table.querySelectorAll('thead tr:first-child th').length, `${at} is too wide`).toBeLessThanOrEqual(9);
        for (const row of table.querySelectorAll('tbody tr')) {
          expect(row.firstElementChild?.getAttribute('scope'), at).toBe('row');
        }
        for (const cell of table.querySelectorAll('td')) {
          if (!cell.textContent?.trim().startsWith('–')) continue;
          const reason = cell.querySelector('a')?.getAttribute('href')?.slice(1) ?? '';
          expect(document.getElementById(reason)?.textContent, at).toMatch(/\w{3,}.*\./);
        }
      }
    }
  });
  it('tell warnings, how they were made, and sources', () => {
    for (const { file, document } of each) {
      for (const id of ['warnings', 'made', 'sources'])
        expect(document.getElementById(id), `${file} ${id}`).toBeTruthy();
      const made = document.getElementById('made')?.parentElement?.textContent ?? '';
      expect(made, file).toContain('npm run review -- my-season');
      expect(made, file).toContain('abababababababab');
      expect(made, file).toContain('airflow factor of North 36: 1.5');
      expect(made, file).toContain('1 May 2025');
    }
  });
});

describe('pages', () => {
  it('escape what the files say', () => {
    for (const { file, html } of renderPages(examplePages(exampleInput({ names: HOSTILE })))) {
      expect(html.match(/<script/g)?.length, file).toBe(1);
      expect(html, file).not.toContain('<img src=x');
      expect(html.match(/<\/style>/g)?.length, file).toBe(html.match(/<style>/g)?.length);
    }
    const farm = exampleInput();
    const pages = examplePages({
      ...farm,
      made: { ...farm.made, farm: '</style><script>x', seasonTitle: '"};*{color:red' },
    });
    for (const { html } of renderPages(pages)) {
      expect(html.match(/<script/g)?.length).toBe(1);
      expect(html).not.toContain('content:""}');
    }
  });
  it('are the same bytes twice', () => {
    const once = renderPages(examplePages(exampleInput()));
    const again = renderPages(examplePages(exampleInput()));
    expect(again).toEqual(once);
  });
  it('warn of a bin that broke, and say the cautions where a page could send somebody to a bin', () => {
    const [overview] = renderPages(examplePages(exampleInput()));
    const document = read(overview.html);
    expect(document.getElementById('warnings')?.parentElement?.textContent).toContain(
      'East 42 could not be worked out whole',
    );
    const cautions = document.getElementById('cautions')?.parentElement?.textContent ?? '';
    for (const word of [
      'alone',
      'Lock out',
      'ladder',
      'Electrical',
      'umigat',
      'mould',
      'ice',
      'never added',
      'probe',
    ]) {
      expect(cautions).toContain(word);
    }
  });
  it('let a section, a figure and a whole notebook fail without taking the rest down', () => {
    const [overview, second] = examplePages(exampleInput());
    const broken: Page = {
      ...overview,
      sections: [
        section('broken', 'A broken part', () => {
          throw new Error('the cable <b>fell</b>');
        }),
        {
          ...overview.sections[0],
          figures: [
            {
              ...overview.sections[0].figures![0],
              draw: () => {
                throw new Error('no ink');
              },
            },
          ],
        },
        ...overview.sections.slice(1),
      ],
    };
    const [page, other] = renderPages([broken, second]);
    expect(page.failures).toEqual(['A broken part: the cable <b>fell</b>', 'Fans and cost, bin by bin: no ink']);
    expect(other.failures).toEqual([]);
    const document = read(page.html);
    expect([...document.querySelectorAll('h2')].map((heading) => heading.textContent)).toEqual([
      'A broken part',
      'Fans and cost, bin by bin',
      'Grain, bin by bin',
      'What the change of moisture was worth',
      'Airflow, bin by bin',
      'How each bin was run',
      'Warnings',
      'Before you go to a bin',
      'How this page was made',
      'Sources',
    ]);
    expect(document.querySelectorAll('.failure').length).toBe(2);
    expect(page.html).toContain('&lt;b&gt;fell');
    expect(document.querySelectorAll('table').length).toBeGreaterThan(1);
  });
  it('let key numbers and the list of files fail without taking the page down', () => {
    const [overview] = examplePages(exampleInput());
    const keyNumbers = [{ label: 'Hours', quantity: 'hours' as const, amount: Number.NaN }];
    const madeBy = { ...overview.madeBy, inputs: null as never };
    const [page] = renderPages([{ ...overview, keyNumbers, madeBy }]);
    expect(page.failures).toHaveLength(2);
    expect(page.failures[0]).toMatch(/finite/);
    expect(read(page.html).querySelectorAll('.failure').length).toBe(2);
    expect(page.html).toContain('Sources');
  });
  it('say what failed when a source is not in the bibliography', () => {
    const [overview] = examplePages(exampleInput());
    const [page] = renderPages([{ ...overview, sources: ['no-such-work'] }]);
    expect(page.failures).toEqual([expect.stringContaining('no-such-work')]);
  });
});
