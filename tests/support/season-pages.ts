import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import firstLook from '../../notebooks/first-look.ts';
import { madeBy, unitsOf } from '../../scripts/review/made-by.ts';
import { NOTEBOOKS } from '../../scripts/review/run-review.ts';
import { besidePrevious } from '../../src/analysis/previous/beside-previous.ts';
import { type BinNumbers, seasonNumbers } from '../../src/analysis/previous/previous-shape.ts';
import { reviewSeason } from '../../src/analysis/review-season.ts';
import { summaryOf } from '../../src/analysis/summary.ts';
import { estimate, scaled } from '../../src/base/estimate.ts';
import { clientLine } from '../../src/notebook/year-end/client-line.ts';
import { CLIENTS_NOTEBOOK } from '../../src/notebook/year-end/clients-page.ts';
import type { NotebookInput } from '../../src/notebook.ts';
import type { Page } from '../../src/report/page.ts';
import { loadSeason } from '../../src/season/load-season.ts';
import { readSeason } from '../../src/season/read-season.ts';
import { makeFarmOfTwo } from './farm-of-two.ts';
import { WRITTEN_MODELS } from './written-models.ts';

const MADE_MS = Date.UTC(2024, 10, 20, 12);

export interface SeasonPages {
  /** those of a review, in its order */
  kit: readonly Page[];
  /** the consultant's, across clients */
  clients: Page;
  firstLook: Page;
  /** what they are made of, for further notebooks */
  input: NotebookInput;
  /** a page with so many bins that they stand on pages of their own */
  manyBins: Page;
}

/** A page of every kind that is written for people, all of one small season. */
export async function seasonPages({ madeMs = MADE_MS, date = '20 November 2024' } = {}): Promise<SeasonPages> {
  const folder = mkdtempSync(join(tmpdir(), 'fanbook-golden-season-'));
  try {
    makeFarmOfTwo(folder);
    const loaded = await loadSeason(await readSeason(folder));
    const review = { ...reviewSeason(loaded), whatIf: WRITTEN_MODELS };
    const now = seasonNumbers(summaryOf(loaded, review));
    const units = unitsOf(loaded);
    const input: NotebookInput = {
      loaded,
      review,
      units,
      made: madeBy(loaded, 'npm run review -- farm-of-two', madeMs),
      beside: besidePrevious(now, { ...now, title: 'Harvest 2023', bins: now.bins.map(aThirdMore) }),
      stated: { preparedFor: null, preparedBy: 'A. Consultant', date },
    };
    const kit = NOTEBOOKS.map((notebook) => notebook.page(input));
    // It tries ways on its first bin, for which a trusted bed would have to be fitted.
    const untrusted = WRITTEN_MODELS[1];
    const moisture = kit.find(({ id }) => id === 'moisture')!;
    return {
      input,
      kit,
      clients: clientsPage(input),
      firstLook: await firstLook.page({ ...input, review: { ...review, whatIf: [{ ...untrusted, binId: 'B1' }] } }),
      manyBins: ofManyBins(moisture),
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The season before, made up: a third more of everything. */
function aThirdMore(bin: BinNumbers): BinNumbers {
  const more = (of: BinNumbers['hours']) => scaled(of, 4 / 3);
  return {
    ...bin,
    hours: more(bin.hours),
    energyKwh: more(bin.energyKwh),
    cost: more(bin.cost),
    points: more(bin.points),
  };
}

/** The farm, another that cost more and has nothing to tell, and one that could not be read. */
function clientsPage({ loaded, review, units, made }: NotebookInput): Page {
  const line = clientLine(loaded, review, 'quillmoor', [], 'us');
  const other = {
    ...line,
    client: 'vexholm',
    farm: null,
    costPerGrain: estimate(0.061, 0.057, 0.066),
    worth: null,
    findings: [],
    todo: [],
    failures: ['a section could not be drawn'],
  };
  const problems = ['SEASON_UNIT season.yaml:6:13 bins[0].diameter is "36"; a length needs a unit.'];
  return CLIENTS_NOTEBOOK.page({
    lines: [line, other],
    failed: [{ client: 'tarnwick', problems }],
    units,
    made: { ...made, seasonTitle: 'Clients, for the consultant alone', farm: 'A. Consultant' },
  });
}

/** Thirteen bins, one more than a page takes whole, each with the lead and notes of the second. */
function ofManyBins(page: Page): Page {
  const common = page.sections.filter(({ id }) => !id.startsWith('bin-'));
  const last = page.sections.findLast(({ id }) => id.startsWith('bin-'))!;
  const bins = Array.from({ length: 13 }, (_, i) => ({
    ...last,
    id: `bin-B${i + 1}`,
    title: `Bin ${i + 1}`,
    figures: [],
    tables: [],
  }));
  return { ...page, sections: [...common, ...bins] };
}
