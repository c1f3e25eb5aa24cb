import { deserialize, serialize } from 'node:v8';
import { binNumbers } from '../../../src/notebook/form/bin-numbers.ts';
import { framesUsed } from '../../../src/notebook/form/frame.ts';
import { triedWays } from '../../../src/notebook/form/kept-runs.ts';
import { askedData, seasonData } from '../../../src/notebook/form/season-data.ts';
import { tryWays } from '../../../src/notebook/form/try-ways.ts';
import type { Units } from '../../../src/report/units.ts';
import { unitsOf } from '../../review/made-by.ts';
import { drawNotebook } from '../draw-notebook.ts';
import { importNotebook, notebookPath } from '../import-notebook.ts';
import { type OpenSeason, openSeason } from '../open-season.ts';
import { troublesOf } from '../troubles.ts';
import type { DrawMessage, DrawTask } from './draw-messages.ts';
import { warmUp } from './warm-up.ts';

// It loads kit and season and then draws at every word. The notebook's own files are read afresh each time, and so is the review, which a
// notebook may have changed.
const send = (message: DrawMessage) =>
  new Promise<void>((done) => {
    process.send?.(message, () => done());
  });

process.on('SIGINT', () => {});
process.once('disconnect', () => process.exit(0));
process.once('message', (task: DrawTask) => void work(task));

async function work(task: DrawTask): Promise<void> {
  const { seasonFolder, models } = task;
  let season: OpenSeason;
  try {
    season = await openSeason(seasonFolder, { models, say: (line) => void send({ kind: 'stage', line }) });
    const units = unitsOf(season.loaded);
    for (const { name, options } of task.used.data) seasonData(season.loaded, units, name, options);
    for (const { binId, ways } of task.used.ways) tryAgain(season, units, binId, ways);
    if (task.used.frames) await import('danfojs-node');
    await warmUp(season, seasonFolder);
  } catch (error) {
    await send({ kind: 'season', troubles: troublesOf(error, seasonFolder) });
    process.exit(0);
  }
  const review = serialize(season.review);
  process.on('message', () => void draw(task, { ...season, review: deserialize(review) }));
  await send({ kind: 'ready' });
}

function tryAgain({ loaded, review, beds }: OpenSeason, units: Units, binId: string, ways: readonly string[]): void {
  const bin = review.bins.find((one) => one.bin.id === binId);
  if (bin !== undefined) tryWays({ loaded, review, beds, units }, binNumbers(bin, units), ways);
}

async function draw({ notebook, seasonFolder, generatedAtMs }: DrawTask, season: OpenSeason): Promise<void> {
  try {
    const path = notebookPath(notebook);
    const found = await importNotebook(path, (files) => void send({ kind: 'files', files: [...files] }));
    const drawn = await drawNotebook(found, path, seasonFolder, season, generatedAtMs ?? Date.now());
    const { file, title, html, failures, errors } = drawn;
    const troubles = errors.flatMap((error) => troublesOf(error, seasonFolder));
    const told =
      troubles.length >= failures.length ? troubles : failures.flatMap((failure) => troublesOf(failure, seasonFolder));
    await send({
      kind: 'drawn',
      file,
      title,
      html,
      troubles: told,
      used: { data: askedData(season.loaded), ways: triedWays(season.loaded), frames: framesUsed() },
    });
  } catch (error) {
    await send({ kind: 'troubles', troubles: troublesOf(error, seasonFolder) });
  }
}
