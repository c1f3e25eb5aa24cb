import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';

/** Far fewer than fill the young generation, so that no collection falls into the count. */
const CALLS = 4000;
const ROUNDS = 25;

/** A number that leaves a function which the compiler did not inline is put into a box by V8: its own header and eight bytes. */
export const BOXED_NUMBER_BYTES = 16;

/**
 * Heap taken by one call once it is compiled, the least of 25 rounds: what a call must take shows in each of them, what the
 * compiler or another part of the process takes does not.
 *
 * @param loop  makes so many calls
 * @returns     bytes
 */
export function bytesPerCall(loop: (calls: number) => number): number {
  setFlagsFromString('--expose-gc');
  const collect = runInNewContext('gc') as () => void;
  let least = Number.POSITIVE_INFINITY;
  for (let round = 0; round < ROUNDS; round++) {
    loop(CALLS);
    collect();
    const before = process.memoryUsage().heapUsed;
    loop(CALLS);
    least = Math.min(least, (process.memoryUsage().heapUsed - before) / CALLS);
  }
  return Math.max(0, least);
}
