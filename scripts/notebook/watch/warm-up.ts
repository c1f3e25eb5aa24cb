import { transform } from 'esbuild';
import { notebook } from '../../../src/notebook.ts';
import { drawNotebook } from '../draw-notebook.ts';
import type { OpenSeason } from '../open-season.ts';

const DAY_MS = 86_400_000;

/** Small pieces of every kind: what they use is compiled when a notebook comes. */
const pieces = notebook({ title: 'Warm-up', question: '' }, ({ bins, answer, heading, text, table, figure }) => {
  const rows = Array.from({ length: 40 }, (_, i) => ({
    day: new Date(i * DAY_MS),
    word: `w${i % 5}`,
    by: `b${i % 2}`,
    temp_f: i,
  }));
  answer`${bins.length} bins.`;
  heading('Pieces');
  text`${rows.length} rows.`;
  table(rows);
  figure({ title: 'Lines', rows, x: 'day', y: 'temp_f', by: 'by' });
  figure({ title: 'Dots', rows, x: 'temp_f', y: 'temp_f' });
  figure({ title: 'Bars', rows: rows.slice(0, 5), x: 'word', y: 'temp_f' });
});

/** Use once what a drawing uses, so that the drawing itself does not wait for it. */
export async function warmUp(season: OpenSeason, seasonFolder: string): Promise<void> {
  await transform('const one: number = 1;', { loader: 'ts' });
  for (let i = 0; i < 3; i++) await drawNotebook(pieces, 'warm-up.ts', seasonFolder, season, 0);
}
