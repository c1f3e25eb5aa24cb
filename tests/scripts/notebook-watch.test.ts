import { mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { get } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { GOOD, run, started, writtenNotebook } from '../support/run-script.ts';
import { makeSeasonFolder, SMALL_SEASON } from '../support/season-folder.ts';

const work = mkdtempSync(join(tmpdir(), 'fanbook-watch-'));
const season = join(work, 'season');
const written = (name: string, body: string, head = '') => writtenNotebook(join(work, name), body, head);

beforeAll(() => makeSeasonFolder(season, { ...SMALL_SEASON, hours: 24 * 12 }));
afterAll(() => rmSync(work, { recursive: true, force: true }));

/** A step starts a process with the whole kit at most: seconds, more where other work fills the machine. */
const STEP_MS = 90_000;

describe('npm run notebook --watch', () => {
  interface State {
    line: string;
    troubles: { kind: string; file: string; line: number; excerpt: { line: number; text: string }[] }[];
  }

  /** The state told last. */
  function listen(url: string) {
    let last: State = { line: '', troubles: [] };
    const request = get(`${url}changes`, (response) => {
      response.setEncoding('utf8').on('data', (text: string) => {
        for (const event of text.split('\n\n')) if (event.startsWith('data: ')) last = JSON.parse(event.slice(6));
      });
    });
    request.on('error', () => {});
    return { last: () => last, end: () => request.destroy() };
  }

  async function until(holds: () => boolean | Promise<boolean>): Promise<void> {
    const fromMs = Date.now();
    while (!(await holds())) {
      if (Date.now() - fromMs > STEP_MS) throw new Error(`never came: ${holds}`);
      await new Promise((done) => setTimeout(done, 50));
    }
  }

  const ask = (port: string, path: string, headers: Record<string, string> = {}, method = 'GET') =>
    new Promise<{ status: number; text: string; policy: string }>((done, fail) => {
      const request = get({ host: '127.0.0.1', port, path, headers, method }, (response) => {
        let text = '';
        response.setEncoding('utf8').on('data', (part) => {
          text += part;
        });
        response.on('end', () =>
          done({ status: response.statusCode ?? 0, text, policy: String(response.headers['content-security-policy']) }),
        );
      });
      request.on('error', fail);
    });

  it('serves this machine alone, draws anew at a save, tells troubles with their lines, and ends clean', async () => {
    const path = written('watched.ts', GOOD);
    const child = started('notebook.ts', [path, season, '--watch', '--port', '0']);
    const ended = new Promise<number | null>((done) => child.on('close', done));
    const url = await new Promise<string>((done) => {
      child.stdout.on('data', (text) => {
        const found = /Open (http:\/\/127\.0\.0\.1:\d+\/)/.exec(String(text));
        if (found !== null) done(found[1]);
      });
    });
    const port = new URL(url).port;
    const { last, end } = listen(url);
    const page = async () => (await ask(port, '/own-page.html')).text;
    const save = (from: string | RegExp, to: string) =>
      writeFileSync(path, readFileSync(path, 'utf8').replace(from, to));
    await until(async () => (await page()).includes('1 bin.'));

    // DNS rebinding: a foreign name that points here is no reason to answer. And nothing but the page is served.
    const answers = await Promise.all([
      ask(port, '/', { host: `evil.example:${port}` }),
      ask(port, '/own-page.html', { host: 'evil.example' }),
      ask(port, '/changes', { host: '127.0.0.1.evil.example' }),
      ask(port, '/../../../../etc/passwd'),
      ask(port, '/season.yaml'),
      ask(port, '/watched.ts'),
      ask(port, '/', {}, 'POST'),
      ask(port, '/', { host: `localhost:${port}` }),
    ]);
    expect(answers.map(({ status }) => status)).toEqual([421, 421, 421, 404, 404, 404, 405, 200]);
    expect(answers[7].policy).toContain("default-src 'none'");

    save('bin.', 'bin, saved.');
    await until(async () => (await page()).includes('1 bin, saved.'));

    save("heading('Bins');", "heading('Bins';");
    // Told by its kind: a file that is read while it is being written is another trouble for a moment.
    await until(() => last().troubles[0]?.kind === 'NOTEBOOK_SYNTAX');
    expect(last().troubles[0]).toMatchObject({ file: path, line: 5 });
    expect(last().troubles[0].excerpt.find(({ line }) => line === 5)?.text).toContain("heading('Bins';");
    // The last page that could be drawn stays.
    expect(await page()).toContain('1 bin, saved.');

    save("heading('Bins';", 'heading((undefined as unknown as string).trim());');
    await until(() => last().troubles[0]?.kind === 'TypeError');
    expect(last().troubles[0]).toMatchObject({ file: path, line: 5 });

    // A file that it imports: its own line, however it breaks, until it is mended.
    const words = join(work, 'watched-words.ts');
    const wordsAre = (text: string) => writeFileSync(words, `export const word = 'mended';\n\n${text}\n`);
    wordsAre('export const bad = {;');
    written('watched.ts', `${GOOD}\nheading(word);`, "import { word } from './watched-words.ts';\n");
    await until(() => last().troubles[0]?.kind === 'NOTEBOOK_SYNTAX');
    expect(last().troubles[0]).toMatchObject({ file: words, line: 3 });
    wordsAre('throw new RangeError(word);');
    await until(() => last().troubles[0]?.kind === 'RangeError');
    expect(last().troubles[0]).toMatchObject({ file: words, line: 3 });
    // Gone, and back again.
    rmSync(words);
    await until(() => last().troubles[0]?.kind === 'NOTEBOOK_IMPORT');
    // Moved back from elsewhere, with the time of its text.
    const kept = join(work, 'kept-words.ts');
    writeFileSync(kept, "export const word = 'mended';\n");
    utimesSync(kept, 1e9, 1e9);
    renameSync(kept, words);
    await until(async () => (await page()).includes('>mended</h2>'));
    expect(last().troubles).toEqual([]);

    // A folder that goes with its files and comes back with others of their names; and it is watched as before.
    const [folder, away] = [join(work, 'words'), join(work, 'words-away')];
    const words2 = join(folder, 'far-words.ts');
    mkdirSync(folder);
    writeFileSync(words2, "export const word = 'far';\n");
    written('watched.ts', `${GOOD}\nheading(word);`, "import { word } from './words/far-words.ts';\n");
    await until(async () => (await page()).includes('>far</h2>'));
    renameSync(folder, away);
    await until(() => last().troubles[0]?.kind === 'NOTEBOOK_IMPORT');
    // Moved back as it was, each file with all its times.
    renameSync(away, folder);
    await until(() => last().troubles.length === 0);
    rmSync(folder, { recursive: true });
    await until(() => last().troubles[0]?.kind === 'NOTEBOOK_IMPORT');
    mkdirSync(folder);
    writeFileSync(words2, "export const word = 'nearer';\n");
    await until(async () => (await page()).includes('>nearer</h2>'));
    writeFileSync(words2, "export const word = 'here';\n");
    await until(async () => (await page()).includes('>here</h2>'));

    // Saves in a row: the last one's page comes, with nothing of what the one before did to what it was given.
    written('watched.ts', "(bins[0].review.bin as { name: string }).name = 'Spoilt';\nheading('Spoils');");
    await until(async () => (await page()).includes('>Spoils</h2>'));
    for (const time of ['Once', 'Twice', 'Thrice']) {
      written('watched.ts', `heading(\`${time}, \${bins[0].name}\`);`);
      await new Promise((done) => setTimeout(done, 100));
    }
    await until(async () => (await page()).includes('>Thrice, Bin 1</h2>'));

    // One that never ends is given up when it is saved anew.
    written('watched.ts', 'for (;;) {}');
    await until(() => last().line.includes('changed'));
    await new Promise((done) => setTimeout(done, 500));
    written('watched.ts', "heading('Ends');");
    await until(async () => (await page()).includes('>Ends</h2>'));

    const yaml = join(season, 'season.yaml');
    const whole = readFileSync(yaml, 'utf8');
    writeFileSync(yaml, whole.replace('diameter: 36 ft', 'diameter: 36'));
    await until(() => last().troubles[0]?.kind === 'SEASON_UNIT');
    expect(last().troubles[0]).toMatchObject({ kind: 'SEASON_UNIT', file: 'season.yaml' });
    writeFileSync(yaml, whole);

    const second = await run('notebook.ts', path, season, '--watch', '--port', port);
    expect(second).toMatchObject({
      status: 1,
      err: expect.stringContaining(`port ${port} cannot be used (EADDRINUSE)`),
    });

    end();
    child.kill('SIGINT');
    expect(await ended).toBe(0);
    // Seven processes start in turn, each with the whole kit: minutes where other work fills the machine.
  }, 900_000);
});
