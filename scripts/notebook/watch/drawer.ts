import { type ChildProcess, fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { DrawMessage, DrawTask } from './draw-messages.ts';

const PROCESS = fileURLToPath(new URL('./draw-process.ts', import.meta.url));

/** What is told to whoever watches: all of a drawing process's words, and that one ended without a page. */
export type DrawerMessage = DrawMessage | { kind: 'ended'; why: string };

type NotebookTask = Omit<DrawTask, 'used'>;

/** A new process is made warm once nobody has saved for so long: it would take a core from the drawings. */
const QUIET_MS = 1000;
/** A drawing of an older text may take so much longer; then its process is given up. */
const PATIENCE_MS = 1000;

/**
 * Draws a notebook again and again. A process draws whatever is saved until a fresh one is warm, with kit and season loaded; that one
 * takes the next save, so that after a pause nothing of a notebook's earlier text stays.
 */
export class Drawer {
  readonly #task: NotebookTask;
  readonly #tell: (message: DrawerMessage) => void;
  /** what the last drawing used, for the next process to have ready */
  #used: DrawTask['used'] = { data: [], ways: [], frames: false };
  /** the process that draws, or has drawn and can draw again */
  #current: ChildProcess | null = null;
  #draws = false;
  /** the next one, on its way or warm */
  #spare: ChildProcess | null = null;
  #warm = false;
  #wanted = false;
  #ended = false;
  #quiet: NodeJS.Timeout | undefined;
  #patience: NodeJS.Timeout | undefined;

  constructor(task: NotebookTask, tell: (message: DrawerMessage) => void) {
    this.#task = task;
    this.#tell = tell;
    this.#prepare();
  }

  /** Draw as the files now stand; a drawing under way is of older ones. */
  draw(): void {
    this.#wanted = true;
    if (!this.#draws) this.#begin();
    else this.#patience ??= setTimeout(() => this.#loseCurrent(), PATIENCE_MS);
  }

  /** The season's files changed: what is warm is of older ones. */
  renew(): void {
    this.#wanted = true;
    this.#giveUp(this.#spare);
    this.#spare = null;
    this.#loseCurrent();
  }

  end(): void {
    this.#ended = true;
    clearTimeout(this.#quiet);
    clearTimeout(this.#patience);
    this.#giveUp(this.#spare);
    this.#giveUp(this.#current);
  }

  #begin(): void {
    if (!this.#wanted || this.#draws || this.#ended) return;
    if (this.#spare !== null && this.#warm) {
      this.#giveUp(this.#current);
      this.#current = this.#spare;
      this.#spare = null;
    }
    if (this.#current === null) {
      this.#prepare();
      return;
    }
    this.#wanted = false;
    this.#draws = true;
    this.#current.send('draw');
    this.#prepareWhenQuiet();
  }

  /** The drawing is done, or its process is gone. */
  #done(): void {
    clearTimeout(this.#patience);
    this.#patience = undefined;
    this.#draws = false;
    this.#prepareWhenQuiet();
    this.#begin();
  }

  #loseCurrent(): void {
    this.#giveUp(this.#current);
    this.#current = null;
    this.#done();
  }

  #giveUp(child: ChildProcess | null): void {
    if (child === null) return;
    child.removeAllListeners();
    child.on('error', () => {});
    child.kill('SIGKILL');
  }

  #prepareWhenQuiet(): void {
    clearTimeout(this.#quiet);
    this.#quiet = setTimeout(() => this.#prepare(), QUIET_MS);
  }

  #prepare(): void {
    if (this.#ended || this.#spare !== null) return;
    this.#warm = false;
    const child = fork(PROCESS, { serialization: 'advanced' });
    this.#spare = child;
    // A season that cannot be read is told by the process itself, which then ends.
    let told = false;
    child.on('message', (message: DrawMessage) => {
      told ||= message.kind === 'season';
      this.#tell(message);
      if (message.kind === 'ready') {
        this.#warm = true;
        this.#begin();
      } else if (message.kind === 'drawn' || message.kind === 'troubles') {
        if (message.kind === 'drawn') this.#used = message.used;
        this.#done();
      }
    });
    child.on('exit', (code, signal) => {
      const why = `The process that draws ended without a page (${signal ?? `status ${code}`}).`;
      if (this.#spare === child) {
        this.#spare = null;
        if (!told) this.#tell({ kind: 'ended', why });
      } else if (this.#current === child) {
        this.#current = null;
        if (this.#draws) this.#tell({ kind: 'ended', why });
        this.#done();
      }
    });
    child.on('error', (error) => this.#tell({ kind: 'ended', why: error.message }));
    child.send({ ...this.#task, used: this.#used } satisfies DrawTask);
  }
}
