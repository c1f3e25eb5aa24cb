import type { ColumnTable } from 'arquero';
import type { SeasonReview } from '../../analysis/types.ts';
import type { Figure, PageBody, Size } from '../../report/page.ts';
import type { Units } from '../../report/units.ts';
import type { LoadedSeason } from '../../season/loaded.ts';
import type { Season } from '../../season/season.ts';
import type { TableName } from '../../tables/columns.ts';
import type { ToldNumber } from './amount.ts';
import type { AnyRows } from './any-rows.ts';
import type { NotebookBin } from './bin-numbers.ts';
import type { FigureSpec } from './form-figure.ts';
import type { TableSpec } from './form-table.ts';
import type { Live } from './live-text.ts';
import type { DataOptions } from './season-data.ts';
import type { BedStore, TriedBin, Way } from './try-ways.ts';

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
  key(label: string, number: ToldNumber, note?: string): void;
  /** begins a section */
  heading(title: string): void;
  /** a paragraph; live numbers get unit and interval, and a dash with its reason where they are missing */
  text: Said;
  /** a remark in small type */
  note: Said;
  /**
   * Runs a bin's season anew by other ways, on its bed as fitted to its log: the kit's by id (`as-logged` is how it was run) or as
   * `{ id, parameters: { rh: '65 %' } }`, your own as `{ id, title, fan }`. The first time takes some seconds a bin. The page says what the model's trust stands on, or why it has none.
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
