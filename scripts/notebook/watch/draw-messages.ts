import type { DataOptions } from '../../../src/notebook/form/season-data.ts';
import type { TableName } from '../../../src/tables/columns.ts';
import type { Trouble } from '../troubles.ts';

/** What a drawing process is started with. */
export interface DrawTask {
  notebook: string;
  seasonFolder: string;
  models: boolean;
  generatedAtMs: number | null;
  /** made ready before the notebook is drawn */
  used: Used;
}

/** What a notebook asked for the last time. */
export interface Used {
  data: readonly { name: TableName; options: DataOptions }[];
  /** the kit's ways that it tried */
  ways: readonly { binId: string; ways: readonly string[] }[];
  /** data frames: their library takes a while to load */
  frames: boolean;
}

/** What a drawing process says of itself. */
export type DrawMessage =
  | { kind: 'stage'; line: string }
  /** warm: it waits for the word */
  | { kind: 'ready' }
  /** the season cannot be read */
  | { kind: 'season'; troubles: Trouble[] }
  | { kind: 'files'; files: string[] }
  | { kind: 'troubles'; troubles: Trouble[] }
  | {
      kind: 'drawn';
      file: string;
      title: string;
      html: string;
      troubles: Trouble[];
      used: Used;
    };
