import type { ColumnTable } from 'arquero';
import type { SeasonReview } from '../../analysis/types.ts';
import { sourceOf } from '../../base/sources.ts';
import type { Figure, FlowItem, KeyNumber, OwnNumber, PageBody, Section, Size, Table } from '../../report/page.ts';
import type { Units } from '../../report/units.ts';
import type { LoadedSeason } from '../../season/loaded.ts';
import type { Season } from '../../season/season.ts';
import type { TableName } from '../../tables/columns.ts';
import { CAUTION_SOURCES, cautionsFor } from '../cautions.ts';
import { brokenBins, counted, sentence } from '../words.ts';
import type { AnyRows } from './any-rows.ts';
import { binNumbers, type NotebookBin } from './bin-numbers.ts';
import { callSite, siteSaid } from './call-site.ts';
import { type FigureSpec, formFigure } from './form-figure.ts';
import { formTable, type TableSpec } from './form-table.ts';
import { type Live, sayLive } from './live-text.ts';
import { type DataOptions, seasonData } from './season-data.ts';
import { type BedStore, type TriedBin, tryWays, type Way } from './try-ways.ts';

/** A template, or one text: text`The fans ran ${hours}.` */
export type Said = (words: TemplateStringsArray | string, ...live: readonly Live[]) => void;

/** A figure drawn by the plotting library's own options; the kit does not know what it shows, so it must say so. */
export interface OwnFigure {
  title: string;
  /** quantity and unit */
  subtitle: string;
  /** the finding and the range, for those who cannot see it */
  alt: string;
  /** the library's options for a width; colours as style-sheet variables: `currentColor`, `var(--c1)` … `var(--c5)` */
  plot(size: Size): object;
  id?: string;
}

/** What a notebook writes on, from top to bottom, and what it can look up. Every member may be taken out by itself. */
export interface Sheet {
  /** season.yaml, checked, in SI and UTC */
  season: Season;
  /** the bins with their numbers under short names, in the season's order */
  bins: readonly NotebookBin[];
  /** one bin by id or name. @throws RangeError with those that there are */
  bin(idOrName: string): NotebookBin;
  /** a table of the log for arquero's verbs, believed readings in the reader's units; what was left out the page says */
  data(table: TableName, options?: DataOptions): ColumnTable;
  /** the page's first sentence: the question's answer with a number and its interval, or why it cannot be told */
  answer: Said;
  /** a number in large type under the answer */
  key(label: string, number: OwnNumber, note?: string): void;
  /** begins a section */
  heading(title: string): void;
  /** a paragraph; live numbers get unit and interval, and a dash with its reason where they are missing */
  text: Said;
  /** a remark in small type */
  note: Said;
  /**
   * Runs a bin's season anew by other ways, on its bed as fitted to its log: the kit's by id (`as-logged` is how it was run), your own as
   * `{ id, title, fan }`. The first time takes some seconds a bin. The page says what the model's trust stands on, or why it has none.
   */
  tryWays(bin: NotebookBin | string, ways: readonly Way[]): TriedBin;
  table(rows: AnyRows, spec?: TableSpec): void;
  figure(spec: FigureSpec | OwnFigure | Figure): void;
  /** into the page's list of warnings */
  warning: Said;
  /** a work of the bibliography by its key. @throws RangeError for one that is not there */
  source(key: string): void;
  /** everything that was read and worked out, where the short names do not reach */
  loaded: LoadedSeason;
  review: SeasonReview;
  units: Units;
}

/** What becomes of a sheet. */
export interface WrittenSheet {
  sheet: Sheet;
  /** what stands on it so far */
  body(): PageBody;
  /** the notebook broke here: the rest of the page says so. @param place  where, if it is known */
  broke(reason: string): void;
}

/** What a sheet is written about. `plotted` turns options into a drawing. */
export interface SheetInput {
  loaded: LoadedSeason;
  review: SeasonReview;
  units: Units;
  /** told what throws as a figure is drawn, when the notebook itself is done */
  onFailure?: (error: unknown) => void;
  /** beds fitted before; left out: each notebook fits anew */
  beds?: BedStore;
}

interface OpenSection {
  id: string;
  title: string;
  flow: FlowItem[];
  figures: Figure[];
  tables: Table[];
}

/** @param plotted  draws the options of an `OwnFigure` */
export function newSheet(input: SheetInput, plotted: (size: Size, options: object) => string): WrittenSheet {
  const { loaded, review, units, onFailure } = input;
  const bins = review.bins.map((one) => binNumbers(one, units));
  const keyNumbers: KeyNumber[] = [];
  const sections: OpenSection[] = [];
  const warnings = brokenBins(review.bins);
  const sources: string[] = [];
  let answered: string | null = null;

  const open = (): OpenSection => sections.at(-1) ?? begin('What was found');
  const begin = (title: string): OpenSection => {
    const same = sections.filter((one) => one.title === title).length;
    const made = { id: same === 0 ? title : `${title} ${same + 1}`, title, flow: [], figures: [], tables: [] };
    sections.push(made);
    return made;
  };
  const said = (words: TemplateStringsArray | string, live: readonly Live[]) =>
    typeof words === 'string' ? sayLive(units, [words], []) : sayLive(units, words, live);
  const write = (kind: 'text' | 'note'): Said => {
    return (words, ...live) => {
      const { text, whys } = said(words, live);
      const { flow } = open();
      flow.push(kind === 'text' ? { text } : { note: text });
      for (const why of whys) flow.push({ note: `A dash stands for what is not known: ${why}` });
    };
  };
  const unique = <T extends { id: string }>(of: T, among: readonly { id: string }[]): T => {
    const same = among.filter(({ id }) => id === of.id || id.startsWith(`${of.id} (`)).length;
    return same === 0 ? of : { ...of, id: `${of.id} (${same + 1})` };
  };

  const sheet: Sheet = {
    season: loaded.season,
    bins,
    bin(idOrName) {
      const found = bins.find(({ id, name }) => id === idOrName || name === idOrName);
      if (found !== undefined) return found;
      const there = bins.map(({ id, name }) => `${id} (${name})`).join(', ');
      throw new RangeError(`there is no bin "${idOrName}"; there are ${there || 'none'}`);
    },
    data(name, options) {
      const of = options?.bin === undefined ? options : { ...options, bin: sheet.bin(options.bin).id };
      const { table, leftOut } = seasonData(loaded, units, name, of);
      if (leftOut.doubted > 0) {
        const text = `${units.number('count', leftOut.doubted)} of ${counted(leftOut.of, 'value')} in ${name} left out: a check does not believe them, see Data quality.`;
        if (!warnings.includes(text)) warnings.push(text);
      }
      return table;
    },
    answer(words, ...live) {
      const { text, whys } = said(words, live);
      answered = [text, ...whys].join(' ');
    },
    key(label, { of, amount }, note) {
      keyNumbers.push({ label, quantity: of, amount, note });
    },
    heading(title) {
      begin(title);
    },
    text: write('text'),
    note: write('note'),
    tryWays(of, ways) {
      const bin = typeof of === 'string' ? sheet.bin(of) : of;
      const tried = tryWays(input, bin, ways);
      if (tried.why !== null) warnings.push(`${bin.name}, other ways to run it: withheld. ${tried.why}`);
      else open().flow.push({ note: `${bin.name} by its model: ${tried.model.why} ${MODEL_RANGES}` });
      return tried;
    },
    table(rows, spec = {}) {
      const section = open();
      const { table, cut } = formTable(rows, spec, section.title, units);
      const own = unique(table, section.tables);
      section.tables.push(own);
      section.flow.push({ table: own.id });
      if (cut > 0) {
        section.flow.push({
          note: `${units.number('count', cut)} more ${cut === 1 ? 'row is' : 'rows are'} not shown.`,
        });
      }
    },
    figure(spec) {
      const section = open();
      const figure = located(figureOf(spec, units, plotted), callSite(new Error('here').stack), onFailure);
      const own = unique(figure, section.figures);
      section.figures.push(own);
      section.flow.push({ figure: own.id });
    },
    warning(words, ...live) {
      const { text, whys } = said(words, live);
      warnings.push([text, ...whys].join(' '));
    },
    source(key) {
      sourceOf(key);
      sources.push(key);
    },
    loaded,
    review,
    units,
  };

  return {
    sheet,
    body: () => ({
      answer: answered ?? 'Can’t tell yet: this notebook writes no answer.',
      keyNumbers,
      sections: sections.map(sectionOf),
      warnings,
      cautions: cautionsFor(review.bins.some(({ bin }) => bin.goal === 'condition')),
      sources: [...sources, ...CAUTION_SOURCES],
    }),
    broke(reason) {
      open().flow.push({ failure: reason });
      answered ??= `Can’t tell: the notebook broke before its answer. ${sentence(reason)}`;
    },
  };
}

const MODEL_RANGES =
  'Ranges of costs by the model are no 90 % intervals: they are the lowest and highest of six runs, with air, moisture and drying rate to either side of the fit.';

/** A section's first paragraph is its lead. */
function sectionOf({ id, title, flow, figures, tables }: OpenSection): Section {
  const [first, ...rest] = flow;
  const lead = first !== undefined && 'text' in first;
  return { id, title, lead: lead ? first.text : '', flow: lead ? rest : flow, figures, tables };
}

function figureOf(
  spec: FigureSpec | OwnFigure | Figure,
  units: Units,
  plotted: (size: Size, options: object) => string,
): Figure {
  if ('draw' in spec) return spec;
  if ('rows' in spec) return formFigure(spec, units);
  const { title, subtitle, alt, id = title, plot } = spec;
  return { id, title, subtitle, alt, legend: [], notShown: null, draw: (size) => plotted(size, plot(size)) };
}

/** What throws in drawing, after the notebook is done, says where the figure was asked for. */
function located(figure: Figure, site: ReturnType<typeof callSite>, onFailure: SheetInput['onFailure']): Figure {
  return {
    ...figure,
    draw(size) {
      try {
        return figure.draw(size);
      } catch (error) {
        onFailure?.(error);
        const reason = error instanceof Error ? error.message : String(error);
        throw new Error(site === null ? reason : `${sentence(reason)} (${siteSaid(site)})`);
      }
    },
  };
}
