import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { quantile } from '../../src/base/stats/quantile.ts';
import { KIT } from '../notebook/kit-folder.ts';
import { watchNotebook } from '../notebook/watch/watch-notebook.ts';

const SAVES = 20;
const APART_MS = 300;

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
    const alone = await saved(notebook, season, null);
    const inARow = await saved(notebook, season, APART_MS);
    const once = timed(['--import', 'tsx', join(KIT, 'scripts', 'notebook.ts'), notebook, season]);
    const bare = timed(['-e', '0']);
    const ms = (value: number) => `${Math.round(value)} ms`;
    const of = (redraws: readonly number[]) =>
      `p50 ${ms(quantile(redraws, 0.5))}, p90 ${ms(quantile(redraws, 0.9))} (${(quantile(redraws, 0.5) / once).toFixed(3)} of a command anew)`;
    process.stdout.write(
      `notebook  from save to page, ${SAVES} saves: each after a pause ${of(alone)}; ${APART_MS} ms apart ${of(inARow)}; the command anew from the kept season ${ms(once)}; a bare start of Node ${ms(bare)}\n`,
    );
  } finally {
    rmSync(work, { recursive: true, force: true });
  }
}

/** Time from each save to a page with it, ms. @param apartMs  between saves; null: each when the next process is warm */
async function saved(notebook: string, seasonFolder: string, apartMs: number | null): Promise<number[]> {
  const text = readFileSync(notebook, 'utf8');
  const savedMs: number[] = [];
  const redraws: number[] = [];
  let warm = 0;
  let drawn = false;
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
    onDrawn: (_, html) => {
      drawn = true;
      const shown = Number(/Save (\d+)\./.exec(html)?.[1] ?? 0);
      while (redraws.length < shown) redraws.push(performance.now() - savedMs[redraws.length]);
    },
  });
  const until = async (holds: () => boolean) => {
    while (!holds()) await new Promise((done) => setTimeout(done, 10));
  };
  // The first page waits for the season.
  await until(() => drawn && warm === 2);
  for (let save = 1; save <= SAVES; save++) {
    savedMs.push(performance.now());
    writeFileSync(notebook, text.replace('Save 0.', `Save ${save}.`));
    if (apartMs !== null) await new Promise((done) => setTimeout(done, apartMs));
    else await until(() => redraws.length === save && warm === save + 2);
  }
  await until(() => redraws.length === SAVES);
  await watching.end();
  writeFileSync(notebook, text);
  return redraws;
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
  text\`Save 0.\`;
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
