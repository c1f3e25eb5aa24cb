import { SingleBar } from 'cli-progress';

/** A bar on standard error while jobs run; nothing where that is no terminal. */
export function progressBar(total: number): { done: (jobs: number) => void; stop: () => void } {
  const bar = new SingleBar({
    stream: process.stderr,
    format: 'Sweep    [{bar}] {value} of {total} runs, {eta_formatted} to go',
    clearOnComplete: true,
    hideCursor: true,
  });
  bar.start(total, 0);
  return { done: (jobs) => bar.increment(jobs), stop: () => bar.stop() };
}
