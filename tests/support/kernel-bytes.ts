// Run by tests/scripts/kernel-bytes.test.ts in a process of its own, where no test runner has rewritten the modules.
import { bytesPerCall } from '../../scripts/bench/bytes-per-call.ts';
import { PHYSICS_KERNELS } from '../../scripts/bench/physics-kernels.ts';

/** What must be seen: a kernel that makes one small array a call, kept so that the compiler cannot leave it out. */
const kept: number[][] = [];
function allocating(calls: number): number {
  for (let i = 0; i < calls; i++) kept[i & 7] = [i, i];
  return kept.length;
}

// Left out: the wet bulb, a solver behind a checked function, and the speed of waves, put together from some twenty calls of
// the others, of which V8 boxes more or fewer from run to run; the bench prints both.
const kernels = PHYSICS_KERNELS.filter(({ name }) => !/^(wetBulbC|bedWaveRatio)/.test(name));
const bytes = [{ name: 'allocating', loop: allocating }, ...kernels].map(({ name, loop }) => [
  name,
  bytesPerCall(loop),
]);
process.stdout.write(JSON.stringify(Object.fromEntries(bytes)));
