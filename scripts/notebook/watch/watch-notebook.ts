import { statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { watch } from 'chokidar';
import { InputError } from '../../../src/base/errors.ts';
import { readSeason } from '../../../src/season/read-season.ts';
import { notebookPath, pathSaid } from '../import-notebook.ts';
import { troubleSaid } from '../troubles.ts';
import { Drawer, type DrawerMessage } from './drawer.ts';
import { type Served, serve, type WatchState } from './serve.ts';

export interface WatchOptions {
  notebook: string;
  seasonFolder: string;
  models: boolean;
  /** null: the usual one, or any other where that is taken */
  port: number | null;
  /** null: the clock's */
  generatedAtMs: number | null;
  say(line: string): void;
  /** told when the next drawing can begin at once, and after each page with the time from its save */
  onWarm?(): void;
  onDrawn?(ms: number, html: string): void;
}

export interface Watching {
  url: string;
  end(): Promise<void>;
}

const USUAL_PORT = 7411;
/** A save that comes as several changes is one. */
const SETTLE_MS = 25;
/** By how much the time of a save may be behind: file systems keep it in ticks. */
const CLOCK_MS = 20;
/** How often to look at the files themselves: of one that goes and comes with its folder nothing else tells, and now and then a save is not told. */
const LOOK_MS = 500;

/**
 * Serve a notebook's page and draw it anew whenever one of its files or of the season's changes. The kit itself is taken as it was when the
 * command began.
 *
 * @throws InputError where the notebook is not there or the port is taken
 */
export async function watchNotebook(options: WatchOptions): Promise<Watching> {
  const { seasonFolder, models, generatedAtMs, say } = options;
  const notebook = notebookPath(options.notebook);
  const served = await serveOn(options.port);
  const url = `http://127.0.0.1:${served.port}/`;
  let state: WatchState = { version: 0, file: null, title: '', line: 'The season is being read.', troubles: [] };
  let begunMs = performance.now();
  const show = (next: Partial<WatchState>, html?: string) => {
    state = { ...state, ...next };
    served.show(state, html);
  };

  /** by path, as it was when last told; null: it is gone */
  const stamps = new Map<string, string | null>();
  // A file is read before it is watched: one that was saved in between is told as it is first seen.
  const watcher = watch([], { ignoreInitial: false, alwaysStat: true });
  let readFromMs = Date.now();
  const look = (paths: readonly string[]) => {
    const fresh = paths.filter((path) => !stamps.has(path));
    for (const path of fresh) stamps.set(path, stampOf(path));
    if (fresh.length > 0) watcher.add([...fresh]);
  };

  const told = (message: DrawerMessage) => {
    if (message.kind === 'stage') {
      say(message.line);
      // Later ones tell of the process that is made warm, which nobody waits for.
      if (state.version === 0) show({ line: message.line.replace(/ {2,}/, ': ') });
    }
    if (message.kind === 'ready') options.onWarm?.();
    else if (message.kind === 'files') look(message.files);
    else if (message.kind === 'drawn') {
      const { file, title, html, troubles } = message;
      // The first page has waited for the season.
      const took = state.version === 0 ? '' : ` in ${Math.round(performance.now() - begunMs)} ms`;
      const line = `${pathSaid(notebook)}, drawn${took}`;
      show({ version: state.version + 1, file, title, line, troubles }, html);
      say(`Draw     ${line.replace(/^.*, drawn/, 'drawn')}`);
      for (const trouble of troubles) say(troubleSaid(trouble));
      options.onDrawn?.(performance.now() - begunMs, html);
    } else if (message.kind === 'troubles' || message.kind === 'season') {
      const { troubles } = message;
      const before = state.version === 0 ? '' : '; below is the last page that could be drawn';
      show({
        line: `${message.kind === 'season' ? 'The season' : pathSaid(notebook)} has ${troubles.length === 1 ? 'a problem' : `${troubles.length} problems`}${before}`,
        troubles,
      });
      for (const trouble of troubles) say(troubleSaid(trouble));
    } else if (message.kind === 'ended') {
      show({ line: message.why, troubles: [] });
      say(message.why);
    }
  };

  look([notebook, ...(await seasonFiles(seasonFolder))]);
  const drawer = new Drawer({ notebook, seasonFolder, models, generatedAtMs }, told);
  drawer.draw();

  let waiting: NodeJS.Timeout | null = null;
  let renews = false;
  const changed = (path: string) => {
    stamps.set(path, stampOf(path));
    const atMs = performance.now();
    renews ||= isSeasons(path, seasonFolder) && path !== notebook;
    if (waiting !== null) clearTimeout(waiting);
    else begunMs = atMs;
    waiting = setTimeout(() => {
      waiting = null;
      show({ line: `${pathSaid(path)} changed` });
      readFromMs = Date.now();
      if (renews) drawer.renew();
      else drawer.draw();
      renews = false;
      void seasonFiles(seasonFolder).then(look);
    }, SETTLE_MS);
  };
  watcher.on('all', (what, path, stats) => {
    // Not by the time of its text: a file that is moved here keeps that.
    if (what === 'add' && stamps.get(path) !== null && stats !== undefined && stats.ctimeMs < readFromMs - CLOCK_MS)
      return;
    // Of a file that is gone it forgets its return.
    if (what === 'unlink') watcher.add(path);
    changed(path);
  });
  const looks = setInterval(() => {
    for (const [path, before] of stamps) {
      const now = stampOf(path);
      if (now === before) continue;
      if (before === null) {
        watcher.unwatch(path);
        watcher.add(path);
      }
      changed(path);
    }
  }, LOOK_MS);
  return {
    url,
    async end() {
      if (waiting !== null) clearTimeout(waiting);
      clearInterval(looks);
      drawer.end();
      await Promise.all([watcher.close(), served.close()]);
    },
  };
}

/** What any save changes; null where the file is gone. */
function stampOf(path: string): string | null {
  const stats = statSync(path, { throwIfNoEntry: false });
  return stats === undefined ? null : `${stats.ctimeMs} ${stats.size} ${stats.ino}`;
}

function isSeasons(path: string, seasonFolder: string): boolean {
  return path.startsWith(`${resolve(seasonFolder)}/`);
}

/** season.yaml and what it names; season.yaml alone where it cannot be read. */
async function seasonFiles(seasonFolder: string): Promise<string[]> {
  const folder = resolve(seasonFolder);
  try {
    const { files } = await readSeason(folder);
    return ['season.yaml', ...files.flatMap(({ paths }) => paths)].map((path) => join(folder, path));
  } catch {
    return [join(folder, 'season.yaml')];
  }
}

async function serveOn(port: number | null): Promise<Served> {
  try {
    return await serve(port ?? USUAL_PORT);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (port === null && code === 'EADDRINUSE') return serve(0);
    const message = `port ${port ?? USUAL_PORT} cannot be used (${code}). Give another one with --port, or leave it out.`;
    throw new InputError([{ code: 'PORT', message }]);
  }
}
