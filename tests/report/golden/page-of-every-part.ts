import { estimate, withheld } from '../../../src/base/estimate.ts';
import type { Page } from '../../../src/report/page.ts';
import { GOLDEN_FIGURES, units } from './golden-figures.ts';

/** A page with each of its parts once, of numbers written down here. */
export const PAGE_OF_EVERY_PART: Page = {
  id: 'moisture',
  file: 'moisture.html',
  title: 'Moisture',
  question: 'How many points did the fans take out?',
  answer: 'North 36 lost 2.3 points (2.0 to 2.6).',
  units,
  madeBy: {
    seasonTitle: 'Harvest 2024',
    farm: 'Made-up Farm',
    command: 'npm run review -- my-season',
    version: '0.0.0',
    generatedAtMs: Date.UTC(2025, 4, 1, 12),
    inputs: [
      {
        path: 'logs/a.csv',
        sha256: 'ab'.repeat(32),
        bytes: 1204,
        rows: 12,
        firstMs: Date.UTC(2024, 9, 1, 12),
        lastMs: null,
      },
    ],
    changedDefaults: ['North 36: test weight 55.0 lb/bu'],
  },
  keyNumbers: [
    { label: 'Points removed', quantity: 'points', amount: estimate(2.3, 2, 2.6) },
    { label: 'Bins', quantity: 'count', amount: 2 },
    { label: 'Cost', quantity: 'money', amount: withheld('No tariff is stated.') },
  ],
  sections: [
    {
      id: 'bins',
      title: 'Bin by bin',
      lead: 'Two bins.',
      table: {
        id: 'bins',
        caption: 'What the grain went through',
        columns: [
          { key: 'bin', label: 'Bin', quantity: null },
          { key: 'points', label: 'Points removed', quantity: 'points', marked: true },
          { key: 'hours', label: 'Fan hours', quantity: 'hours', known: 'measured' },
        ],
        rows: [
          { bin: 'North 36', points: estimate(2.3, 2, 2.6), hours: 1140 },
          { bin: 'East 42', points: estimate(0.4, 0.1, 0.7), hours: { value: null, why: 'No fan log.' } },
        ],
        total: { bin: 'All bins', hours: 1140 },
      },
      figures: [GOLDEN_FIGURES.find(({ id }) => id === 'cost-by-bin')!],
      notes: ['A note with 12 fan hours in it.'],
    },
    {
      id: 'terms',
      title: 'Terms',
      lead: 'One term.',
      folded: 'What the word means',
      entries: [{ term: 'Point', text: 'One percent of moisture.', code: ['M = 100 w'], details: ['Wet basis.'] }],
    },
  ],
  warnings: ['East 42 has no fan log.'],
  cautions: ['Nobody enters a bin alone.'],
  sources: [],
};
