import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { BOXED_NUMBER_BYTES } from '../../../scripts/bench/bytes-per-call.ts';
import { STRATEGIES } from '../../../src/simulation/strategies/strategies.ts';
import { bytesOf } from '../../support/bytes-of.ts';

const SCRIPT = fileURLToPath(new URL('run-bytes.ts', import.meta.url));
/** Numbers that cross between functions which V8 does not inline, each in a box; a view made anew would be 216 bytes alone. */
const MOST_BOXES = 8;

// Memory, not time. That the measure sees an allocation is proven in tests/scripts/kernel-bytes.test.ts.
it('an hour of a run takes no heap but for a few numbers in boxes, whatever the strategy', () => {
  const bytes = bytesOf(SCRIPT);
  expect(Object.keys(bytes)).toEqual(STRATEGIES.map(({ id }) => id));
  for (const [id, taken] of Object.entries(bytes)) {
    expect(taken, id).toBeLessThanOrEqual(MOST_BOXES * BOXED_NUMBER_BYTES);
  }
}, 120_000);
