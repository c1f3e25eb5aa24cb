import type { LoadedSeason, SeasonTables } from '../../src/season/loaded.ts';
import { fromIpc, toIpcFile } from '../../src/tables/arrow.ts';
import { withSharedArrays } from './shared-arrays.ts';

/** A loaded season to be handed to threads: its tables as bytes that all of them read. */
export interface SeasonBytes extends Omit<LoadedSeason, 'tables'> {
  /** tells seasons of one process apart */
  serial: number;
  tables: Readonly<Record<string, Uint8Array>>;
}

let made = 0;

export function seasonBytes({ season, load, tables }: LoadedSeason): SeasonBytes {
  made += 1;
  const bytes = Object.entries(tables).map(([name, table]) => [name, toIpcFile(table)] as const);
  return { serial: made, season, load, tables: withSharedArrays(Object.fromEntries(bytes)) };
}

let held: { serial: number; loaded: LoadedSeason } | null = null;

/** The season of such bytes; a thread reads them once for all bins of a season. */
export function seasonOfBytes({ serial, season, load, tables }: SeasonBytes): LoadedSeason {
  if (held?.serial === serial) return held.loaded;
  const read = Object.entries(tables).map(([name, bytes]) => [name, fromIpc(bytes)]);
  held = { serial, loaded: { season, load, tables: Object.fromEntries(read) as SeasonTables } };
  return held.loaded;
}
