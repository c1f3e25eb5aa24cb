import { basename } from 'node:path';
import type { NotebookInput } from '../../src/notebook.ts';
import { renderPages } from '../../src/report/html/pages.ts';
import { madeBy, unitsOf } from '../review/made-by.ts';
import type { AnyNotebook } from './import-notebook.ts';
import type { OpenSeason } from './open-season.ts';

export interface Drawn {
  /** `my-page.html` */
  file: string;
  title: string;
  html: string;
  /** parts that broke, each a line; empty when all is whole */
  failures: string[];
  /** the same as they were thrown, where they were */
  errors: unknown[];
}

/** A notebook's page of a season, as one file. */
export async function drawNotebook(
  notebook: AnyNotebook,
  path: string,
  seasonFolder: string,
  { loaded, review, beds }: OpenSeason,
  generatedAtMs: number,
): Promise<Drawn> {
  const errors: unknown[] = [];
  const input: NotebookInput = {
    loaded,
    review,
    beds,
    units: unitsOf(loaded),
    made: madeBy(loaded, `npm run notebook -- ${basename(path)} ${basename(seasonFolder)}`, generatedAtMs),
    onFailure: (error) => errors.push(error),
  };
  const page = await notebook.page(input);
  const [{ file, html, failures }] = renderPages([page]);
  return { file, title: page.title, html, failures, errors };
}
