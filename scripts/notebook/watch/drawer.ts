import { type ChildProcess, fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { DrawMessage, DrawTask } from './draw-messages.ts';

const PROCESS = fileURLToPath(new URL('./draw-process.ts', import.meta.url));

/** What is told to whoever watches: all of a drawing process's words, and that one ended without a page. */
export type DrawerMessage = DrawMessage | { kind: 'ended'; why: string };

type NotebookTask = Omit<DrawTask, 'asked' | 'frames'>;

/**
 * Draws a notebook again and again, each time in a process of its own. The next process is made warm while nobody waits: kit and
 * season are loaded before the word comes.
 */
export class Drawer {
  readonly #task: NotebookTask;
  readonly #tell: (message: DrawerMessage) => void;
  /** what the last drawing used, for the next to have ready */
  #used: Pick<DrawTask, 'asked' | 'frames'> = { asked: [], frames: false };
  #spare: ChildProcess | null = null;
  #drawing: ChildProcess | null = null;
  #warm = false;
  #wanted = false;
  #ended = false;

  constructor(task: NotebookTask, tell: (message: DrawerMessage) => void) {
    this.#task = task;
    this.#tell = tell;
    this.#prepare();
  }

  /** Draw as the files now stand; a drawing under way is of older ones and is given up. */
  draw(): void {
    if (this.#drawing !== null) this.#giveUp(this.#drawing);
    this.#drawing = null;
    this.#wanted = true;
    if (this.#spare === null) this.#prepare();
    this.#begin();
  }

  /** The season's files or the kit changed: what is warm is of older ones. */
  renew(): void {
    if (this.#spare !== null) this.#giveUp(this.#spare);
    this.#spare = null;
    this.draw();
  }

  end(): void {
    this.#ended = true;
    for (const child of [this.#spare, this.#drawing]) if (child !== null) this.#giveUp(child);
  }

  #begin(): void {
    if (!this.#wanted || !this.#warm || this.#spare === null) return;
    this.#wanted = false;
    this.#warm = false;
    this.#drawing = this.#spare;
    this.#spare = null;
    this.#drawing.send('draw');
  }

  #giveUp(child: ChildProcess): void {
    child.removeAllListeners();
    child.on('error', () => {});
    child.kill('SIGKILL');
  }

  #prepare(): void {
    if (this.#ended) return;
    this.#warm = false;
    const child = fork(PROCESS, { serialization: 'advanced' });
    this.#spare = child;
    let told = false;
    child.on('message', (message: DrawMessage) => {
      if (message.kind === 'ready') {
        this.#warm = true;
        this.#begin();
        this.#tell(message);
      } else {
        told ||= message.kind === 'drawn' || message.kind === 'troubles' || message.kind === 'season';
        if (message.kind === 'drawn') this.#used = { asked: message.asked, frames: message.frames };
        this.#tell(message);
      }
    });
    child.on('exit', (code, signal) => {
      const wasSpare = this.#spare === child;
      if (wasSpare) this.#spare = null;
      if (this.#drawing === child) this.#drawing = null;
      if (!told)
        this.#tell({
          kind: 'ended',
          why: `The process that draws ended without a page (${signal ?? `status ${code}`}).`,
        });
      // After a drawing the next one is made ready; a season that cannot be read waits for a change.
      if (!wasSpare && this.#spare === null) this.#prepare();
    });
    child.on('error', (error) => this.#tell({ kind: 'ended', why: error.message }));
    child.send({ ...this.#task, ...this.#used } satisfies DrawTask);
  }
}
