import { describe, expect, it } from 'vitest';
import strategies from '../../notebooks/strategies.ts';
import { sourceOf } from '../../src/base/sources/sources.ts';
import { RULE_SOURCES } from '../../src/notebook/strategy-entries.ts';
import { renderPages } from '../../src/report/html/pages.ts';
import { STRATEGIES } from '../../src/simulation/strategies/strategies.ts';
import { exampleInput } from '../report/example-review.ts';

const page = strategies.page(exampleInput());
const [{ html }] = renderPages([page]);
const said = html.replace(/<[^>]+>/g, ' ').replace(/\s+/g, ' ');

describe('whose rule a strategy is', () => {
  it('is printed on the page under each of them', () => {
    const rules = said.slice(said.indexOf('What the strategies do', said.indexOf('How good the models are')));
    for (const [i, { title }] of STRATEGIES.entries()) {
      const from = rules.indexOf(` ${title} `);
      const next = STRATEGIES[i + 1];
      const entry = rules.slice(from, next === undefined ? undefined : rules.indexOf(` ${next.title} `, from));
      expect(from, title).toBeGreaterThan(0);
      expect(entry.match(/Source: /g), title).toHaveLength(1);
    }
    expect(rules).toMatch(/Daytime hours .*?Source: North Dakota State University Extension \(2009\); read\./);
    expect(rules).toMatch(/Equilibrium window .*?Source: Bartosik, R\. and Maier, D\. E\. \(2007\); read\./);
    expect(rules).toMatch(/Cheap hours .*?Source: none, the rule is the kit’s own\./);
    expect(rules).toMatch(/Night hours .*?Source: common practice; no publication of it was read\./);
  });

  it('stands among the page’s sources with its title', () => {
    expect(RULE_SOURCES.length).toBeGreaterThan(2);
    for (const key of RULE_SOURCES) {
      expect(page.sources).toContain(key);
      expect(said).toContain(sourceOf(key).title);
    }
  });
});
