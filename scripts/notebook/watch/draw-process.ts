import { framesUsed } from '../../../src/notebook/form/frame.ts';
import { askedData, seasonData } from '../../../src/notebook/form/season-data.ts';
import { unitsOf } from '../../review/made-by.ts';
import { drawNotebook } from '../draw-notebook.ts';
import { importNotebook, notebookPath } from '../import-notebook.ts';
import { type OpenSeason, openSeason } from '../open-season.ts';
import { troublesOf } from '../troubles.ts';
import type { DrawMessage, DrawTask } from './draw-messages.ts';
import { warmUp } from './warm-up.ts';

// A process for one drawing: it loads kit and season, waits, draws once and ends, so that nothing of a notebook's earlier text stays.
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
    for (const { name, options } of task.asked) seasonData(season.loaded, units, name, options);
    if (task.frames) await import('danfojs-node');
    await warmUp(season, seasonFolder);
  } catch (error) {
    await send({ kind: 'season', troubles: troublesOf(error, seasonFolder) });
    process.exit(0);
  }
  const word = new Promise((said) => process.once('message', said));
  await send({ kind: 'ready' });
  await word;
  await draw(task, season);
  process.exit(0);
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
      asked: askedData(season.loaded),
      frames: framesUsed(),
    });
  } catch (error) {
    await send({ kind: 'troubles', troubles: troublesOf(error, seasonFolder) });
  }
}
