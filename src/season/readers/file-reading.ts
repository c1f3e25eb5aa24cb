import type { Finding } from '../loaded.ts';
import type { FileSpec, Season } from '../season.ts';
import type { TableBuilder } from './table-builder.ts';
import type { Tally } from './tally.ts';

/** One file on its way into a table. */
export interface FileReading {
  season: Season;
  spec: FileSpec;
  /** from the season folder, with `/` */
  path: string;
  text: string;
  /** the table of what the file holds */
  table: TableBuilder;
  tally: Tally;
  /** added to by the reader */
  findings: Finding[];
}

/** Whether an instant lies outside the season's bounds; past weather has none. */
export function isOutside({ season, spec }: FileReading, fromMs: number, toMs = fromMs): boolean {
  if (spec.holds === 'weather' && spec.role === 'history') return false;
  const before = season.startsMs !== null && (toMs > fromMs ? toMs <= season.startsMs : toMs < season.startsMs);
  return before || (season.endsMs !== null && fromMs >= season.endsMs);
}
