import { type ChildProcess, fork } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DOOR, GOOD, ROOT, run, writtenNotebook } from '../support/run-script.ts';
import { makeSeasonFolder, SMALL_SEASON } from '../support/season-folder.ts';
import type { NotebookDone, NotebookJob } from './notebook-jobs.ts';

const work = mkdtempSync(join(tmpdir(), 'fanbook-notebook-'));
const season = join(work, 'season');

const written = (name: string, body: string, head = '') => writtenNotebook(join(work, name), body, head);
const hashOf = (path: string) => createHash('sha256').update(readFileSync(path)).digest('hex');

let jobs: ChildProcess;
function draw(job: NotebookJob): Promise<NotebookDone> {
  return new Promise((done, fail) => {
    jobs.once('message', done);
    jobs.once('exit', (code) => fail(new Error(`the process that draws ended with ${code}`)));
    jobs.send(job);
  });
}

beforeAll(() => {
  makeSeasonFolder(season, { ...SMALL_SEASON, hours: 24 * 12 });
  const execArgv = ['--import', 'tsx'];
  jobs = fork(fileURLToPath(new URL('./notebook-jobs.ts', import.meta.url)), { cwd: ROOT, execArgv });
  jobs.setMaxListeners(50);
});
afterAll(() => {
  jobs.kill();
  rmSync(work, { recursive: true, force: true });
});

describe('a notebook', () => {
  it('is drawn from anywhere, with files of its own, and to the same bytes from the kept season', async () => {
    writeFileSync(join(work, 'words.ts'), "export const said: string = new URL('.', import.meta.url).pathname;\n");
    const path = written('own.ts', `${GOOD}\nheading(said);`, "import { said } from './words.ts';\n");
    const page = join(season, 'pages', 'own-page.html');
    expect(await draw({ notebook: path, season })).toMatchObject({ out: page, failures: [], problems: null });
    expect(readFileSync(page, 'utf8')).toContain('1 bin.');
    // A file of the notebook's own knows where it lies.
    expect(readFileSync(page, 'utf8')).toContain(`${work}/`);
    const bytes = hashOf(page);
    expect((await draw({ notebook: path, season })).stages.join()).toContain('as kept: no file changed since');
    expect(hashOf(page)).toBe(bytes);
    // Nothing of the translation stays, and only the kept season beside the logs.
    expect(readdirSync(season).sort()).toEqual(['.cache', 'logs', 'pages', 'season.yaml', 'weather']);
  });

  it('gets its season read anew where a log has changed', async () => {
    const path = written('own.ts', GOOD);
    const log = join(season, 'logs', 'fans.csv');
    writeFileSync(log, readFileSync(log, 'utf8').replace(/\n$/, '\n2024-10-16T06:00Z,F1,0.2\n'));
    const done = await draw({ notebook: path, season });
    expect(done.problems).toBe(null);
    expect(done.stages.join()).not.toContain('as kept');
    expect(readdirSync(join(season, '.cache')).filter((name) => /^[0-9a-f]{32}$/.test(name))).toHaveLength(1);
  });

  it('is read afresh each time, its own files too', async () => {
    const words = join(work, 'fresh.ts');
    const page = join(season, 'pages', 'own-page.html');
    const path = written('own.ts', `${GOOD}\nheading(word);`, "import { word } from './fresh.js';\n");
    for (const word of ['Once', 'Twice']) {
      writeFileSync(words, `export const word = '${word}';\n`);
      await draw({ notebook: path, season });
      expect(readFileSync(page, 'utf8')).toContain(`>${word}</h2>`);
    }
  });

  it('tells all problems of its own and of the season at once, with their places, and writes nothing', async () => {
    const broken = join(work, 'broken-season');
    makeSeasonFolder(broken, { ...SMALL_SEASON, hours: 24 * 12 });
    const yaml = join(broken, 'season.yaml');
    writeFileSync(yaml, readFileSync(yaml, 'utf8').replace('diameter: 36 ft', 'diameter: 36'));
    writeFileSync(join(work, 'torn.ts'), 'export const half = {;\n');
    const head =
      "import { half } from './torn.ts';\nimport { none } from './none.ts';\nimport 'no-such-package';\nvoid half; void none;\n";
    const { out, problems } = await draw({ notebook: written('bad.ts', GOOD, head), season: broken });
    expect(out).toBe(null);
    const lines = problems?.split('\n') ?? [];
    expect(lines).toHaveLength(4);
    expect(lines[0]).toMatch(/^NOTEBOOK_SYNTAX \S*torn\.ts:1:22 cannot be read as TypeScript: /);
    expect(lines[1]).toMatch(/^NOTEBOOK_IMPORT \S*bad\.ts:2:22 imports "\.\/none\.ts"; there is no such file\./);
    expect(lines[2]).toMatch(/^NOTEBOOK_IMPORT \S*bad\.ts:3:8 imports "no-such-package"; no package/);
    expect(lines[3]).toMatch(/^SEASON_UNIT season\.yaml:\d+:\d+ .*diameter/);
    expect(existsSync(join(broken, 'pages'))).toBe(false);
  });

  it('of the README is drawn whole', async () => {
    const [, text] = /```ts\n(import \{.*?)```/s.exec(readFileSync(join(ROOT, 'README.md'), 'utf8')) ?? [];
    const path = join(work, 'readme.ts');
    writeFileSync(path, text.replace("'../src/notebook.ts'", `'${DOOR}'`));
    expect(await draw({ notebook: path, season })).toMatchObject({ failures: [], problems: null });
  });

  it('that throws as it is read is bad input, with its line', async () => {
    const early = join(work, 'early.ts');
    const text =
      'interface Unused { a: number }\n\nconst none = undefined as unknown as { a: Unused };\nexport default none.a;\n';
    writeFileSync(early, text);
    const { problems } = await draw({ notebook: early, season });
    expect(problems).toMatch(/^NOTEBOOK_THROWS \S*early\.ts:4:\d+ throws as it is read: TypeError: /);
  });

  it('that throws on its page keeps what it wrote, says where, and what is missing', async () => {
    const late = written('late.ts', `${GOOD}\n\nconst none = [] as string[];\nheading(none[3].trim());`);
    const { failures, problems } = await draw({ notebook: late, season });
    expect(problems).toBe(null);
    expect(failures).toEqual([
      expect.stringMatching(/^TypeError \S*late\.ts:9:\d+ Cannot read properties of undefined/),
    ]);
    const html = readFileSync(join(season, 'pages', 'own-page.html'), 'utf8');
    expect(html).toContain('<h3>Hours</h3>');
    expect(html).toContain('TypeError, late.ts:9: Cannot read properties of undefined');
    expect(html).toContain('What was written before it stands; what comes after it is missing.');
    expect(html).not.toContain('The other parts of the page stand');
  });

  it('says in the place of a figure without a number that there is none, and goes on', async () => {
    const after = "figure({ title: 'All cooled', rows: [], x: 'day', y: 'temp_f' });\nheading('After');";
    const done = await draw({ notebook: written('empty.ts', `${GOOD}\n${after}`), season });
    expect(done).toMatchObject({ failures: [], problems: null });
    const html = readFileSync(join(season, 'pages', 'own-page.html'), 'utf8');
    expect(html).toContain('A figure is not drawn: temp_f has no number in no rows.');
    expect(html).not.toContain('All cooled');
    expect(html).toContain('>After</h2>');
  });

  it('is refused where it is none, or its page would go over a file that is not the kit’s', async () => {
    const plain = join(work, 'plain.ts');
    writeFileSync(plain, 'export const a = 1;\n');
    const precious = join(work, 'precious.html');
    writeFileSync(precious, 'mine');
    const problems = async (job: Omit<NotebookJob, 'season'>) => (await draw({ ...job, season })).problems;
    expect(await problems({ notebook: plain })).toMatch(/^NOTEBOOK_EXPORT \S*plain\.ts exports nothing by default/);
    expect(await problems({ notebook: join(work, 'not-there.ts') })).toMatch(/^NOTEBOOK_FILE .*there is no such file/);
    expect(await problems({ notebook: precious })).toMatch(/^NOTEBOOK_FILE .*is no notebook/);
    expect(await problems({ notebook: written('own.ts', GOOD), out: precious })).toMatch(
      /^OUT_FILE .*is no page that the kit wrote/,
    );
    expect(readFileSync(precious, 'utf8')).toBe('mine');
  });
});

describe('npm run notebook', () => {
  it('ends with the status of what became of the page', async () => {
    const own = written('own.ts', GOOD);
    const [whole, partly, input, usage, both] = await Promise.all([
      run('notebook.ts', own, season, '--out', join(work, 'a', 'page.html')),
      run('notebook.ts', written('late.ts', `${GOOD}\nheading((undefined as unknown as string).trim());`), season),
      run('notebook.ts', join(work, 'not-there.ts'), season),
      run('notebook.ts', own, season, '--watch', '--port', '80000'),
      run('notebook.ts', own, season, '--watch', '--out', 'x.html'),
    ]);
    expect(whole).toMatchObject({ status: 0, out: `Open ${join(work, 'a', 'page.html')}\n` });
    expect(partly).toMatchObject({
      status: 3,
      err: expect.stringMatching(/One part could not be made.*\n {2}TypeError \S*late\.ts:7:/s),
    });
    expect(input).toMatchObject({ status: 1, err: expect.stringContaining('One problem; nothing was written.') });
    expect(usage.status).toBe(2);
    expect(both.status).toBe(2);
  });
});

describe('npm run review --page', () => {
  it('makes one’s own notebooks pages of the review, their tables among the others, each under its own name', async () => {
    const own = written('own.ts', GOOD);
    const out = join(work, 'review');
    const [whole, twice] = await Promise.all([
      run('review.ts', season, '--no-model', '--fresh', '--out', out, '--page', own),
      run('review.ts', season, '--no-model', '--fresh', '--out', join(work, 'none'), '--page', own, '--page', own),
    ]);
    expect(whole.status, whole.err).toBe(0);
    expect(readFileSync(join(out, 'own-page.html'), 'utf8')).toContain('1 bin.');
    expect(readFileSync(join(out, 'index.html'), 'utf8')).toContain('<a href="own-page.html">Own page</a>');
    expect(readdirSync(join(out, 'tables'))).toContain('own-page-bins-hours-the-numbers.csv');
    expect(twice).toMatchObject({ status: 1, err: expect.stringContaining('NOTEBOOK_ID') });
    expect(existsSync(join(work, 'none'))).toBe(false);
  });
});

describe('npm run new-notebook', () => {
  it('writes a notebook that runs as it is, never over another', async () => {
    const made = await run('new-notebook.ts', join(work, 'pages', 'my-first-page'));
    const path = join(work, 'pages', 'my-first-page.ts');
    expect(made).toMatchObject({ status: 0, out: expect.stringContaining(`wrote ${path}`) });
    const text = readFileSync(path, 'utf8');
    const again = await run('new-notebook.ts', join(work, 'pages', 'my-first-page'));
    expect(again).toMatchObject({ status: 1, err: expect.stringContaining('is there already') });
    expect(readFileSync(path, 'utf8')).toBe(text);
    expect(await run('new-notebook.ts', 'My Page')).toMatchObject({
      status: 1,
      err: expect.stringContaining('NOTEBOOK_NAME'),
    });
    expect(await draw({ notebook: path, season })).toMatchObject({ failures: [], problems: null });
    expect(readFileSync(join(season, 'pages', 'my-first-page.html'), 'utf8')).toMatch(/Bin 1 ran [\d,.]+/);
  });
});
