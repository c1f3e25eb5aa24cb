import { performance } from 'node:perf_hooks';

const BATCHES = 15;
const WARM_UP_MS = 100;
const BATCH_MS = 20;

/**
 * Time of one call, the median of 15 batches after a warm-up; the loop and the reading of its inputs are in it.
 *
 * @param loop  makes so many calls and returns the sum of their results, so that none can be left out
 * @returns     ns
 * @throws      where a result was no finite number: then something else than the kernel was measured
 */
export function nsPerCall(loop: (calls: number) => number): number {
  const timed = (calls: number): number => {
    const start = performance.now();
    const sum = loop(calls);
    const ms = performance.now() - start;
    if (!Number.isFinite(sum))
      throw new Error(`the results add up to ${sum}; the inputs are outside the kernel's range`);
    return ms;
  };
  let calls = 1024;
  let spent = 0;
  let last = 0;
  while (spent < WARM_UP_MS || last < BATCH_MS) {
    last = timed(calls);
    spent += last;
    if (last < BATCH_MS) calls *= 2;
  }
  const times = Array.from({ length: BATCHES }, () => (timed(calls) * 1e6) / calls).sort((a, b) => a - b);
  return times[BATCHES >> 1];
}
