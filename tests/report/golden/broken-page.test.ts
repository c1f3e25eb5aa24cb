import { describe, expect, it } from 'vitest';
import { estimate } from '../../../src/base/estimate.ts';
import { costByBin } from '../../../src/report/figures/cost-by-bin.ts';
import { renderPages } from '../../../src/report/html/pages.ts';
import type { Page, Section } from '../../../src/report/page.ts';
import { units } from './golden-figures.ts';
import { PAGE_OF_EVERY_PART as PAGE } from './page-of-every-part.ts';
import { pageText } from './page-text.ts';

const drawn = (page: Page) => renderPages([page])[0].html;
const WHOLE = drawn(PAGE);

/** The page with its first section changed. */
function inBins(change: (section: Section) => Partial<Section>): Page {
  const [bins, ...others] = PAGE.sections;
  return { ...PAGE, sections: [{ ...bins, ...change(bins) }, ...others] };
}
const costs = (low: number, title = 'North 36 bought its points cheapest') =>
  costByBin(
    {
      id: 'cost-by-bin',
      title,
      quantity: 'money per grain point',
      bins: [
        { name: 'East 42', cost: estimate(0.041, 0.036, 0.052) },
        { name: 'North 36', cost: estimate(0.027, low, 0.029) },
      ],
    },
    units,
  );
const row = (points: number) => ({ bin: 'North 36', points: estimate(points, 2, 2.6), hours: 1140 });
const table = (section: Section) => section.table!;

const BROKEN: readonly [string, Page][] = [
  ['a word of the answer', { ...PAGE, answer: PAGE.answer.replace('lost', 'gained') }],
  ['an end of a key number’s interval', keyed(estimate(2.3, 2, 2.7))],
  ['a key number', keyed(estimate(2.4, 2, 2.6))],
  [
    'a number in a table',
    inBins((one) => ({ table: { ...table(one), rows: [row(2.4), ...table(one).rows.slice(1)] } })),
  ],
  [
    'the bold of the best and the worst',
    inBins((one) => ({
      table: { ...table(one), columns: table(one).columns.map((column) => ({ ...column, marked: false })) },
    })),
  ],
  [
    'the unit of a column',
    inBins((one) => ({
      table: {
        ...table(one),
        columns: table(one).columns.map((column) =>
          column.key === 'hours' ? { ...column, quantity: 'energy' as const } : column,
        ),
      },
    })),
  ],
  ['the finding of a figure', inBins(() => ({ figures: [costs(0.019, 'North 36 was dearest')] }))],
  ['an end of a whisker', inBins(() => ({ figures: [costs(0.021)] }))],
  ['a figure that is gone', inBins(() => ({ figures: [] }))],
  ['a note', inBins(() => ({ notes: ['A note with 13 fan hours in it.'] }))],
  ['a warning', { ...PAGE, warnings: [] }],
  ['a caution', { ...PAGE, cautions: ['Nobody enters a bin.'] }],
  ['what the page was made from', { ...PAGE, madeBy: { ...PAGE.madeBy, changedDefaults: [] } }],
  ['the farm at the top of printed sheets', { ...PAGE, madeBy: { ...PAGE.madeBy, farm: 'Another Farm' } }],
];

function keyed(amount: ReturnType<typeof estimate>): Page {
  return {
    ...PAGE,
    keyNumbers: [{ label: 'Points removed', quantity: 'points', amount }, ...PAGE.keyNumbers.slice(1)],
  };
}

describe('a golden page', () => {
  it.each(BROKEN)('is another where %s changed', (_, broken) => {
    expect(pageText(drawn(broken))).not.toBe(pageText(WHOLE));
  });

  // Two pixels are seen; the sheet’s own widths and the ids stay.
  it.each(['at-wide', 'at-narrow'])(
    'is another where any mark of the %s drawing moved by two pixels, or has another look',
    (name) => {
      const [drawing] = new RegExp(`<div class="${name}"[\\s\\S]*?</svg>`).exec(WHOLE) ?? [''];
      const moved = [...drawing.matchAll(/ (?:d|x|y|[xy][12]|cx|cy|r|transform)="[^"]*?(-?[\d.]+)/g)].map((one) => {
        const end = one.index + one[0].length;
        return drawing.slice(0, end - one[1].length) + String(Number(one[1]) + 2) + drawing.slice(end);
      });
      const looks = [...drawing.matchAll(/ (?:fill|stroke|stroke-width|stroke-dasharray)="/g)].map(
        ({ index, 0: { length } }) => `${drawing.slice(0, index + length)}x${drawing.slice(index + length)}`,
      );
      expect(moved.length).toBeGreaterThan(20);
      expect(looks.length).toBeGreaterThan(10);
      const whole = pageText(WHOLE);
      const unseen = [...moved, ...looks].filter((other) => pageText(WHOLE.replace(drawing, () => other)) === whole);
      expect(unseen).toEqual([]);
    },
  );
});
