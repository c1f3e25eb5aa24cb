import { parse } from 'csv-parse/sync';
import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { type Estimate, estimate } from '../../../src/base/estimate.ts';
import type { KnownTotal } from '../../../src/notebook/words.ts';
import type { ClientLine } from '../../../src/notebook/year-end/client-line.ts';
import { CLIENTS_NOTEBOOK } from '../../../src/notebook/year-end/clients-page.ts';
import { renderPages } from '../../../src/report/html/pages.ts';
import { pageTables } from '../../../src/report/page-tables.ts';
import { Units } from '../../../src/report/units.ts';
import { exampleInput } from '../../report/example-review.ts';

const known = (total: Estimate): KnownTotal => ({ total, of: null });

/** A client with one bin; its money made up in numbers that no other client has. */
function client(name: string, currency: string, cost: Estimate, perGrain: Estimate): ClientLine {
  return {
    client: name,
    farm: null,
    season: 'Made for a test',
    currency,
    timeZone: 'UTC',
    bins: 1,
    grain: known(estimate(1000, 1000, 1000)),
    hours: known(estimate(100, 100, 100)),
    energyKwh: known(estimate(500, 500, 500)),
    cost: known(cost),
    costPerGrain: perGrain,
    overdrying: known(estimate(12, 12, 12)),
    ranked: [{ name: 'Bin', crop: 'corn', points: estimate(2, 1.5, 2.5), perPoint: perGrain }],
    worth: null,
    findings: [],
    todo: [],
    logFindings: 0,
    trusted: null,
    failures: [],
  };
}

function pageOf(lines: readonly ClientLine[]) {
  const { made } = exampleInput();
  const page = CLIENTS_NOTEBOOK.page({ lines, failed: [], units: new Units('us', lines[0].currency, 'UTC'), made });
  return { page, document: parseHTML(renderPages([page])[0].html).document };
}

describe('the summary across clients of two currencies', () => {
  const lines = [
    client('Elm', 'USD', estimate(91, 80, 103), estimate(0.091, 0.08, 0.103)),
    client('Oak', 'EUR', estimate(260, 208, 311), estimate(0.129, 0.103, 0.155)),
  ];
  const { page, document } = pageOf(lines);

  it('says each amount in its own currency, on the page and in the files', () => {
    for (const [currency, other] of [
      ['USD', 'EUR'],
      ['EUR', 'USD'],
    ]) {
      for (const part of ['clients', 'bins']) {
        const text = document.querySelector(`#${part}-${currency.toLowerCase()}`)?.textContent ?? '';
        expect(text, part).toContain(currency);
        expect(text, part).not.toContain(other);
      }
    }
    for (const { name, csv } of pageTables(page)) {
      const [, of] = name.match(/-(usd|eur)-/) ?? [];
      const [head] = parse(csv) as string[][];
      const units = head.join(' ').match(/USD|EUR/g) ?? [];
      expect(units.length, name).toBeGreaterThan(0);
      expect(new Set(units), name).toEqual(new Set([of.toUpperCase()]));
    }
  });

  it('ranks none above one of another currency', () => {
    expect(page.answer).toBe(
      'Can’t tell where a visit is worth most: the clients’ money is in several currencies. The fans of Elm cost 0.091 USD a bushel (0.080 to 0.103). The fans of Oak cost 0.129 EUR a bushel (0.103 to 0.155).',
    );
    const three = pageOf([...lines, client('Ash', 'EUR', estimate(400, 390, 410), estimate(0.2, 0.19, 0.21))]);
    expect(three.page.answer).toContain(
      'The fans of Elm cost 0.091 USD a bushel (0.080 to 0.103). Fans cost from 0.129 EUR a bushel (0.103 to 0.155) at Oak to 0.200 EUR a bushel (0.190 to 0.210) at Ash.',
    );
  });

  it('leaves captions and the range as they are where all money is of one', () => {
    const one = pageOf([lines[0], { ...lines[1], currency: 'USD' }]);
    expect(one.page.answer).toContain('Fans cost from 0.091 USD a bushel (0.080 to 0.103) at Elm to 0.129 USD');
    expect(one.document.querySelector('#clients-clients caption')?.textContent).toBe('Clients side by side');
  });
});
