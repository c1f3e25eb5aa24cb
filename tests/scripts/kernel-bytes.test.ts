import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { BOXED_NUMBER_BYTES } from '../../scripts/bench/bytes-per-call.ts';
import { bytesOf } from '../support/bytes-of.ts';

const SCRIPT = fileURLToPath(new URL('../support/kernel-bytes.ts', import.meta.url));
// Rounding of the heap's own count.
const HAIR_BYTES = 1;

describe('physics kernels', () => {
  // Memory, not time: the least of many rounds, so that a busy machine does not move it.
  it('take no heap beyond the box that V8 puts around a number that leaves a function it did not inline', () => {
    const bytes = bytesOf(SCRIPT);
    // The measure sees one array of two numbers: header, length, elements.
    expect(bytes.allocating).toBeGreaterThan(BOXED_NUMBER_BYTES + HAIR_BYTES);
    const names = Object.keys(bytes).filter((name) => name !== 'allocating');
    expect(names).toHaveLength(13);
    for (const name of names) expect(bytes[name], name).toBeLessThanOrEqual(BOXED_NUMBER_BYTES + HAIR_BYTES);
  }, 60_000);
});
