import type { Grid } from './grid/grid.ts';
import { gridCsv } from './grid/grid-csv.ts';
import { tableGrid } from './grid/table-grid.ts';
import { pagedBins } from './html/bin-pages.ts';
import { slug } from './html/markup.ts';
import type { Page } from './page.ts';

/** A page's table as a file for a spreadsheet. */
export interface TableFile {
  /** `moisture-north-36-shares`, without ending */
  name: string;
  csv: string;
  grid: Grid;
  /** where it stands */
  page: string;
  section: string;
  caption: string;
  /** `moisture.html#bin-north-36-shares` */
  address: string;
}

/** The tables of a page as files: the page's numbers at the page's digits, units in the header, intervals in columns of their own. */
export function pageTables(page: Page): TableFile[] {
  // A document stays one, whatever its bins.
  const { main, parts } = page.cover === undefined ? pagedBins(page) : { main: page, parts: [] };
  const fileOf = new Map(
    [main, ...parts].flatMap(({ sections, file }) => sections.map(({ id }) => [id, file] as const)),
  );
  return page.sections.flatMap((section) =>
    [...(section.table === undefined ? [] : [section.table]), ...(section.tables ?? [])]
      .filter((table) => table.rows.length > 0)
      .map((table) => {
        const grid = tableGrid(table, page.units);
        const id = `${slug(section.id)}-${slug(table.id)}`;
        return {
          name: `${page.id}-${id}`,
          csv: gridCsv(grid),
          grid,
          page: page.title,
          section: section.title,
          caption: table.caption,
          address: `${fileOf.get(section.id)}#${id}`,
        };
      }),
  );
}

/** The tables of all pages under names that differ: a second of one name gets a number, so that neither takes the other's place. */
export function namedApart(files: readonly TableFile[]): TableFile[] {
  const taken = new Set(files.map((file) => file.name));
  const seen = new Set<string>();
  return files.map((file) => {
    let name = file.name;
    for (let n = 2; seen.has(name); n++) name = taken.has(`${file.name}-${n}`) ? name : `${file.name}-${n}`;
    seen.add(name);
    return { ...file, name };
  });
}
