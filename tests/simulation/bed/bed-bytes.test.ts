import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { bytesOf } from '../../support/bytes-of.ts';

const SCRIPT = fileURLToPath(new URL('bed-bytes.ts', import.meta.url));

// Memory, not time. That the measure sees an allocation is proven in tests/scripts/kernel-bytes.test.ts.
it('a step of a bed takes no heap: not through 20 layers of air, nor of conduction, nor to keep and to take back a state', () => {
  const bytes = bytesOf(SCRIPT);
  expect(Object.keys(bytes)).toHaveLength(9);
  // A number boxed in every layer would be 240 bytes and more; 16 is one box for the whole call.
  for (const [name, taken] of Object.entries(bytes)) expect(taken, name).toBeLessThanOrEqual(17);
}, 60_000);
