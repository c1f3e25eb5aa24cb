import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import fanEnergy from '../../notebooks/fan-energy.ts';
import fronts from '../../notebooks/fronts.ts';
import methods from '../../notebooks/methods.ts';
import moisture from '../../notebooks/moisture.ts';
import overview from '../../notebooks/overview.ts';
import { METHODS } from '../../src/base/methods/methods.ts';
import type { NotebookInput } from '../../src/notebook.ts';
import { renderPages } from '../../src/report/html/pages.ts';
import { examplePages, NOTEBOOKS } from '../report/example-pages.ts';
import { exampleInput } from '../report/example-review.ts';

const folder = new URL('../../notebooks/', import.meta.url);

function withBins(
  input: NotebookInput,
  pick: (bins: NotebookInput['review']['bins']) => NotebookInput['review']['bins'],
) {
  return { ...input, review: { ...input.review, bins: pick(input.review.bins) } };
}

describe('notebooks', () => {
  it('import what the kit offers to notebooks and nothing else', () => {
    for (const name of readdirSync(folder).filter((file) => file.endsWith('.ts'))) {
      const text = readFileSync(new URL(name, folder), 'utf8');
      const imports = [...text.matchAll(/from '([^']+)'/g)].map((found) => found[1]);
      expect(new Set(imports), name).toEqual(new Set(['../src/notebook.ts']));
      expect(text.split('\n').length, `${name} is too long to read at a sitting`).toBeLessThan(140);
    }
  });
  it('become the files that the review folder promises', () => {
    expect(examplePages(exampleInput()).map((page) => page.file)).toEqual([
      'index.html',
      'fan-energy.html',
      'moisture.html',
      'fronts.html',
      'bins-compared.html',
      'strategies.html',
      'bin-or-rule.html',
      'condition.html',
      'data-quality.html',
      'methods.html',
    ]);
  });
  it('stand without a single bin, log, bill or file', () => {
    const input = withBins(exampleInput(), () => []);
    const bare = exampleInput().loaded;
    const none = { ...bare.load, files: [], rejects: [], findings: [] };
    const totals = { ...bare.load.totals, rows: 0, cells: 0, missing: 0, rejected: 0 };
    const pages = examplePages({
      ...input,
      loaded: { ...bare, load: { ...none, totals } },
      review: { ...input.review, tariffMonths: [] },
    });
    for (const page of pages) expect(page.failure, page.id).toBeUndefined();
    const answers = Object.fromEntries(pages.map((page) => [page.id, page.answer]));
    for (const id of ['overview', 'fan-energy', 'moisture', 'fronts', 'condition', 'data-quality']) {
      expect(answers[id], id).toMatch(/^Can’t tell/);
    }
  });
  it('stand on bins of which nothing is known', () => {
    const pages = examplePages(withBins(exampleInput(), (bins) => bins.slice(2)));
    expect(renderPages(pages).flatMap((page) => page.failures)).toEqual([]);
    expect(pages[0].answer).toMatch(/^Can’t tell how long the fans ran/);
  });
  it('say what failed when they break, and keep their title', () => {
    const input = exampleInput();
    const broken = { ...input, review: { ...input.review, bins: null as never } };
    const page = overview.page(broken);
    expect(page).toMatchObject({ title: 'Overview', file: 'index.html', sections: [] });
    expect(page.failure).toBeTruthy();
    expect(renderPages([page])[0].failures).toEqual([page.failure]);
    // The other notebooks do not look at the bins and stand.
    expect(NOTEBOOKS.map((notebook) => notebook.page(broken).failure === undefined)).toEqual([
      false,
      false,
      false,
      false,
      false,
      false,
      false,
      false,
      true,
      true,
    ]);
  });
});

// The example has two bins that are known: 480 and 816 fan hours, 5,760 and 9,792 kWh, 878 and 1,492.6 USD; sums by hand.
describe('what they say', () => {
  it('overview: sums, whose they are, and the cheapest point', () => {
    expect(overview.page(exampleInput()).answer).toBe(
      'Your fans ran 1,300 h (1,300 to 1,940) and cost 2,370 USD (2,220 to 2,520) in 2 of 4 bins; drying cost from 0.024 USD a bushel-point (0.020 to 0.027) in North 36 to 0.040 USD a bushel-point (0.035 to 0.047) in South 30.',
    );
  });
  it('fan-energy: the share of a bill that the fans explain', () => {
    const page = fanEnergy.page(exampleInput());
    // The bill runs 1 to 31 October. Fan F1 runs 12 h at 12 kW, 144 kWh, on two days of three from 4 October on: on 19 of
    // the 28 days to the 31st, 2,736 of the 9,000 kWh billed.
    const bills = page.sections.find((one) => one.id === 'bills');
    expect(bills?.lead).toMatch(/^The fans explain 30\.4 % \(.+\) of the 9,000 kWh billed\./);
    // The log begins three days into the bill, when no grain was in yet; the next bill says no energy.
    const [energy] = bills?.tables ?? [];
    expect(energy.rows).toHaveLength(2);
    expect(energy.rows[0].untold).toBe(0);
    expect(energy.rows[1].rest).toMatchObject({ value: null, why: 'The bill does not say its energy.' });
    expect(page.sections.find((one) => one.id === 'tariff')?.lead).toContain('2,000 USD over 2 tariff months');
  });
  it('moisture: points lost, and taken up where they are negative', () => {
    expect(moisture.page(exampleInput()).answer).toMatch(/^North 36 lost 2\.3 points \(2\.0 to 2\.6\)/);
    const damp = withBins(exampleInput(), ([first, ...rest]) => [
      {
        ...first,
        moisture: {
          ...first.moisture,
          pointsRemoved: { value: -1.5, interval: [-1.9, -1.1] as [number, number], why: null },
        },
      },
      ...rest,
    ]);
    expect(moisture.page(damp).answer).toContain('North 36 took up 1.5 points (1.1 to 1.9).');
  });
  it('fronts: where the cooling did not get through, and hours run on where it did', () => {
    // C5 of both bins: arrivals at 6 + 20 i fan hours, none at its upper two sensors (4.3 and 5.2 m: 14.1 and 17.1 ft).
    // Their readings stand at 18 °C plus a sine of 1 °C there, one more in the second bin: near 64 to 66 and 66 to 68 °F.
    const page = fronts.page(exampleInput());
    expect(page.answer).toBe(
      'Not everywhere: the cooling front did not reach cable C5 at 14.1 and 17.1 ft in North 36 (2 of 12 sensors, left at up to 66 °F, measured) and cable C5 at 14.1 and 17.1 ft in South 30 (2 of 12 sensors, left at up to 68 °F, measured). It can’t be told of Old wooden bin and East 42.',
    );
    // At 3.4 m C1 had the front at 6 + 3 × 11 = 39, C5 at 66.
    expect(page.sections[1].lead).toContain(
      'slowest for its height was cable C5 at 11.2 ft, 27.0 h (21.0 to 33.0) behind',
    );
    expect(page.keyNumbers.map((key) => key.amount)).toMatchObject([0, 4, { value: null }, { value: null }]);
    // Without the cable that stalled, the last arrival is at 6 + 5 × 11 = 61 of 120 fan hours: 59 ran on, in each of two bins, each good to 6.
    const one = withBins(exampleInput(), (bins) =>
      bins.map((bin) => ({
        ...bin,
        fronts: {
          ...bin.fronts,
          campaigns: bin.fronts.campaigns.map((each) => ({
            ...each,
            arrivals: each.arrivals.filter((arrival) => arrival.cable === 'C1'),
          })),
        },
      })),
    );
    const through = fronts.page(one);
    expect(through.answer).toContain('got through everywhere in North 36 and South 30');
    expect(through.keyNumbers[2]).toMatchObject({ amount: { value: 118, interval: [106, 130] } });
    // North 36: 560 USD of energy in 480 fan hours; South 30: 952 in 816; so 59 × (7/6 + 7/6) = 137.67 USD.
    expect(through.keyNumbers[3].amount).toMatchObject({ value: expect.closeTo(137.67, 2) });
    // What every sensor did is on screen and in a file, not on paper.
    expect(through.sections[1].tables?.map((table) => table.folded)).toEqual([undefined, 'on screen']);
  });
  it('methods: each of the list, with its sources below', () => {
    const page = methods.page(exampleInput());
    expect(page.sections[0].entries?.map((entry) => entry.term)).toEqual(METHODS.map((method) => method.title));
    for (const key of METHODS.flatMap((method) => method.sourceKeys)) expect(page.sources).toContain(key);
  });
});
