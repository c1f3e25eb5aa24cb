import type { Table } from 'apache-arrow';
import type { TableName } from '../tables/columns.ts';
import type { Holds, Season } from './season.ts';

/** A cell or row that could not be read, as it stood. */
export interface Reject {
  file: string;
  /** counted from 1, the header line included */
  line: number;
  /** the header of the cell; null for a whole row */
  column: string | null;
  text: string;
  reason: string;
}

/** What one file held. cells = kept + missing + rejected + outside. */
export interface FileLoad {
  path: string;
  holds: Holds;
  role: 'season' | 'history';
  /** hex, of the bytes on disk */
  sha256: string;
  bytes: number;
  rows: number;
  cells: number;
  kept: number;
  missing: number;
  rejected: number;
  outside: number;
  /** span of the kept rows, UTC; null where none was kept */
  firstMs: number | null;
  lastMs: number | null;
  /** true: of an archive's typical year, its months from different years; left out else */
  typicalYear?: true;
}

/** Something a check found: a stuck sensor, a gap, a logger on another clock … */
export interface Finding {
  kind:
    | 'stuck'
    | 'spike'
    | 'headspace'
    | 'duplicate'
    | 'clock'
    | 'unit'
    | 'gap'
    | 'silent'
    | 'reject'
    | 'meter-reset'
    | 'contradicted';
  /** `B1 C5 sensor 3`, `fan F2`, `logs/plenum.csv` */
  where: string;
  binId: string | null;
  fromMs: number | null;
  toMs: number | null;
  /** cells that carry the flag because of this finding; for a gap the readings that are lacking */
  cells: number;
  /** a whole sentence with numbers, for the data-quality page; no time of day in it */
  text: string;
  /** what to do about it; null where nothing */
  advice: string | null;
}

export interface LoadReport {
  files: FileLoad[];
  rejects: Reject[];
  findings: Finding[];
  totals: {
    rows: number;
    cells: number;
    missing: number;
    rejected: number;
    outside: number;
    /** flagged cells by flag; a cell with two flags counts under both */
    flagged: { stuck: number; spike: number; headspace: number; duplicate: number; clock: number; unit: number };
  };
}

export type SeasonTables = Record<TableName, Table>;

/** The loaded season: what was stated, what was logged, and how the loading went. */
export interface LoadedSeason {
  season: Season;
  tables: SeasonTables;
  load: LoadReport;
}
