import type { Estimate } from '../base/estimate.ts';
import type { Quantity } from './quantities.ts';
import type { ReadGrid } from './read-grid.ts';
import type { Units } from './units.ts';

/** A number of a kind of its own, for a column of several kinds; its unit stands in a column of its own. */
export interface OwnNumber {
  of: Quantity;
  amount: number | Estimate;
}

/** A cell: text, a number, a number with interval, one of its own kind, or a missing one with its reason. Numbers as `Units` takes them. */
export type Cell = string | number | Estimate | OwnNumber | { value: null; why: string } | null;

/**
 * How a number without an interval is known; pages and files say the word beside its unit. `measured`: as logs and
 * instruments gave it, or their sum or mean; `stated`: in season.yaml or on a bill; `from stated`: reckoned from what is
 * stated, exactly; `counted`: counts over each other; `90 % limit`: itself half of a 90 % interval; `by both ranges`: a weight that the
 * intervals beside it give; `at the middles`: of the middles of estimates, whose sum carries the interval; `by the model`: of one run of a fitted bed, whose page says how near the bed comes to the log.
 */
export type Known =
  | 'measured'
  | 'stated'
  | 'from stated'
  | 'counted'
  | '90 % limit'
  | 'by both ranges'
  | 'at the middles'
  | 'by the model';

/** When: a local day or a moment, both as ms UTC, or a month as `2024-10`. Pages say them, files carry them as ISO 8601. */
export type TimeKind = 'day' | 'moment' | 'month';

export interface Column {
  key: string;
  label: string;
  /** what the numbers are of; null for text, `own` where each cell says it. Unit and digits follow from it. */
  quantity: Quantity | TimeKind | 'own' | null;
  /** where its numbers carry no interval: why they need none. Counts and times say it by themselves. */
  known?: Known;
  /** the lowest and the highest stand in bold */
  marked?: boolean;
}

export interface Table {
  /** file name stem of its CSV, unique on the page */
  id: string;
  caption: string;
  columns: readonly Column[];
  rows: readonly Readonly<Record<string, Cell>>[];
  total?: Readonly<Record<string, Cell>>;
  /** of its money, where that is not the page's */
  currency?: string;
  /** said in place of rows when there are none */
  empty?: string;
  /** true: folded under its figure or section; `on screen`: that, and not printed, for tables of every sensor */
  folded?: boolean | 'on screen';
  /** false: in sight on screen and not printed, as another table or figure of the page says the same of all bins */
  printed?: false;
}

/** A drawing's room in CSS pixels. */
export interface Size {
  width: number;
  narrow: boolean;
  /** prefix of ids inside the drawing, unique on the page */
  idPrefix: string;
}

export interface LegendItem {
  label: string;
  /** a CSS colour, or `hatch`, `line`, `dash`, `dot` in ink */
  swatch: string;
  /** ends of a step on a colour map: such items stand as one ramp with the ends under it */
  edges?: readonly [string, string];
}

export interface Figure {
  id: string;
  /** tells the finding */
  title: string;
  /** quantity and unit */
  subtitle: string;
  /** the finding and the range, for those who cannot see the figure */
  alt: string;
  legend: readonly LegendItem[];
  /** how many readings the figure leaves out, and why */
  notShown: string | null;
  /** as wide as the paper where others stand two beside each other */
  whole?: boolean;
  /** values to be read out, one for each box that the drawing marks by `readBox` */
  grids?: readonly ReadGrid[];
  /** where it has too many panels for one printed page: it in several, one under the other */
  parts?: readonly Figure[];
  /** SVG as text for each width; deterministic. @throws when the library warns */
  draw(size: Size): string;
}

export interface KeyNumber {
  label: string;
  quantity: Quantity;
  amount: Estimate | number | null;
  /** where it carries no interval and is no count: why it needs none */
  known?: Known;
  /** why it is missing, or what it stands on */
  note?: string;
}

export interface Section {
  id: string;
  title: string;
  lead: string;
  /** the page that tells the whole of it; a link where that page stands beside this one */
  see?: Readonly<{ file: string; title: string }>;
  /** in a printed document: a part of the chapter before it, no chapter of its own */
  within?: true;
  /** in a printed document: stands behind cautions and signature, for those who ask how */
  appendix?: true;
  /** in a printed document: begins on a new sheet */
  newSheet?: true;
  /** the rest of the section is folded under these words */
  folded?: string;
  /** false: what is folded is not printed; the lead should say so */
  printed?: false;
  /** the table that comes before the figure, in sight */
  table?: Table;
  figures?: readonly Figure[];
  /** tables after the figures */
  tables?: readonly Table[];
  /** on paper the figures and the tables after them stand two beside each other, as the blocks of single bins */
  paired?: true;
  /** definitions listed with terms */
  entries?: readonly Entry[];
  /** what stands under the lead, from top to bottom, its figures and tables by id; left out: table, figures, tables, entries, notes */
  flow?: readonly FlowItem[];
  notes?: readonly string[];
  /** what broke; the heading stands */
  failure?: string;
}

/** A piece of a section that says its own order: a paragraph, a note in small type, what broke, or one of its figures or tables. */
export type FlowItem =
  | { text: string }
  | { note: string }
  | { failure: string }
  | { figure: string }
  | { table: string };

/** What a section says under its title. */
export type SectionBody = Omit<Section, 'id' | 'title'>;

/** A term with what it means, for methods and findings. */
export interface Entry {
  id?: string;
  term: string;
  text: string;
  /** equations, one a line, set as they are */
  code?: readonly string[];
  details?: readonly string[];
  /** false: on screen alone */
  printed?: false;
}

export interface InputFile {
  path: string;
  sha256: string;
  bytes: number;
  /** null: no table of rows */
  rows: number | null;
  firstMs: number | null;
  lastMs: number | null;
}

/** Where a page comes from; given from outside, there is no clock in here. */
export interface MadeBy {
  seasonTitle: string;
  /** whom it was prepared for */
  farm: string | null;
  command: string;
  version: string;
  generatedAtMs: number;
  inputs: readonly InputFile[];
  changedDefaults: readonly string[];
}

/** The first sheet of a printed document. */
export interface Cover {
  /** whom it was made for, and by whom; null where nobody says */
  preparedFor: string | null;
  preparedBy: string | null;
  /** the date that it bears, as stated; null: it bears the day of its making, and says so */
  date: string | null;
  /** what the document is of, under its title */
  subtitle: string;
  /** what a reader finds in it, a sentence or two */
  about: string;
}

/** What a notebook answers. */
export interface PageBody {
  /** the page is one printable document: cover, contents, numbered chapters and figures, a line to sign */
  cover?: Cover;
  /** one sentence with a number and its interval, or why it cannot be told */
  answer: string;
  keyNumbers: readonly KeyNumber[];
  /** what the ranges of the key numbers are, where they are no 90 % intervals */
  ranges?: string;
  sections: readonly Section[];
  warnings: readonly string[];
  cautions: readonly string[];
  /** keys of the bibliography */
  sources: readonly string[];
}

export interface Page extends PageBody {
  id: string;
  /** `moisture.html` */
  file: string;
  title: string;
  question: string;
  units: Units;
  madeBy: MadeBy;
  /** what broke the page as a whole */
  failure?: string;
}
