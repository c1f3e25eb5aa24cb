import { performance } from 'node:perf_hooks';
import { Worker } from 'node:worker_threads';

/** A loop that needs a processor and nothing else: no memory, no code to load. Warmed up before it says that it is ready. */
const LOOP = `
const { parentPort, workerData } = require('node:worker_threads');
const loop = (n) => { let x = 0.5; for (let i = 0; i < n; i++) x = 3.9 * x * (1 - x); return x; };
loop(1e6);
parentPort.once('message', () => parentPort.postMessage(loop(workerData)));
parentPort.postMessage('ready');
`;
const STEPS = 1.2e9;

/** Seconds that so many threads take for one amount of work, shared evenly: what the machine itself gives at that moment. */
export async function bareLoop(threads: number): Promise<number> {
  const workers = Array.from(
    { length: threads },
    () => new Worker(LOOP, { eval: true, execArgv: [], workerData: STEPS / threads }),
  );
  const said = () => Promise.all(workers.map((one) => new Promise((resolve) => one.once('message', resolve))));
  await said();
  const start = performance.now();
  const done = said();
  for (const one of workers) one.postMessage('go');
  await done;
  const seconds = (performance.now() - start) / 1000;
  await Promise.all(workers.map((one) => one.terminate()));
  return seconds;
}
