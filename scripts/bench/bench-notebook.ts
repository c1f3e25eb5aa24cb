import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { median } from '../../src/base/stats/quantile.ts';
import { KIT } from '../notebook/kit-folder.ts';
import { watchNotebook } from '../notebook/watch/watch-notebook.ts';

const SAVES = 7;

/** A page of the sample's 217,000 readings: what takes a saved notebook to its page, beside a start of the command and of bare Node. */
export async function benchNotebook(): Promise<void> {
  const work = mkdtempSync(join(tmpdir(), 'fanbook-bench-'));
  const season = join(work, 'season');
  cpSync(join(KIT, 'data-samples', 'sorrel-fork'), season, {
    recursive: true,
    filter: (path) => !/\/(review|sweep|pages|year-end|\.cache)$/.test(path),
  });
  const notebook = join(work, 'page.ts');
  writeFileSync(notebook, NOTEBOOK.replace('DOOR', join(KIT, 'src', 'notebook.ts')));
  try {
    const redraws = await saved(notebook, season);
    const once = timed(['--import', 'tsx', join(KIT, 'scripts', 'notebook.ts'), notebook, season]);
    const bare = timed(['-e', '0']);
    const redraw = median(redraws);
    const ms = (value: number) => `${Math.round(value)} ms`;
    process.stdout.write(
      `notebook  from save to page ${ms(redraw)} (${redraws.map(Math.round).join(', ')}); the command anew from the kept season ${ms(once)}, ratio ${(redraw / once).toFixed(3)}; a bare start of Node ${ms(bare)}, ratio ${(redraw / bare).toFixed(1)}\n`,
    );
  } finally {
    rmSync(work, { recursive: true, force: true });
  }
}

/** Time from each save to its page, with the next process made warm between. */
async function saved(notebook: string, seasonFolder: string): Promise<number[]> {
  const redraws: number[] = [];
  let warm = 0;
  let drawn = 0;
  const watching = await watchNotebook({
    notebook,
    seasonFolder,
    models: false,
    port: 0,
    generatedAtMs: 0,
    say: () => {},
    onWarm: () => {
      warm += 1;
    },
    onDrawn: (took) => {
      drawn += 1;
      redraws.push(took);
    },
  });
  const until = async (holds: () => boolean) => {
    while (!holds()) await new Promise((done) => setTimeout(done, 20));
  };
  for (let save = 1; save <= SAVES; save++) {
    // One process draws, the next is warm.
    await until(() => drawn === save && warm === save + 1);
    writeFileSync(notebook, `${readFileSync(notebook, 'utf8')}// ${save}\n`);
  }
  await until(() => drawn === SAVES + 1);
  await watching.end();
  // The first page waited for the season.
  return redraws.slice(1);
}

function timed(args: readonly string[]): number {
  const from = performance.now();
  const { status, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8', cwd: KIT });
  if (status !== 0) throw new Error(stderr);
  return performance.now() - from;
}

const NOTEBOOK = `import { notebook, op } from 'DOOR';

export default notebook({ title: 'Bench', question: 'How warm was it?' }, ({ bins, data, answer, heading, text, table, figure }) => {
  answer\`\${bins.length} bins.\`;
  heading('By day');
  const readings = data('readings');
  text\`\${readings.numRows()} readings.\`;
  const days = readings.groupby('day', 'bin_name').rollup({ temp_f: (d) => op.mean(d.temp_f) });
  figure({ title: 'All bins', rows: days, x: 'day', y: 'temp_f', by: 'bin_name' });
  heading('Bins');
  table(bins, { columns: { name: 'Bin', fanHours: 'Fan hours', points: 'Points', cost: 'Cost' } });
  figure({ title: 'Hours', rows: bins, x: 'name', y: 'fanHours' });
});
`;
