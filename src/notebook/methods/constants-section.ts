import type { Section } from '../../report/page.ts';
import { section } from '../../report/section.ts';
import type { Season } from '../../season/season.ts';
import { constantTables } from './constant-tables.ts';

/** The constants by crop, as the code holds them. */
export function constantsSection(season: Pick<Season, 'bins'>): Section {
  return section('constants', 'Constants', () => ({
    lead: 'As the code holds them; the season’s crops come first. “From memory” is recalled from the named work and not checked against it: what bears such constants out is the record. The tables are not printed: they stand on the page and in tables/*.csv.',
    tables: constantTables([...new Set(season.bins.map((bin) => bin.grain.crop))]),
  }));
}
