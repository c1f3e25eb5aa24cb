import { bytesPerCall } from './bytes-per-call.ts';
import { nsPerCall } from './ns-per-call.ts';
import { BARE, PHYSICS_KERNELS } from './physics-kernels.ts';

/**
 * Time of a call of each physics kernel, how many bare `Math.exp` calls of the same run that is, and heap that a call takes:
 * 0, or 16 bytes for each number that V8 boxes on the way out of a function that it did not inline. An object or a closure
 * would show as more.
 */
export function benchPhysics(): void {
  const bareNs = nsPerCall(BARE.loop);
  process.stdout.write(
    `physics: ns per call, ratio to a bare Math.exp, bytes of heap per call (Node ${process.versions.node}, ${process.arch})\n`,
  );
  for (const { name, loop } of [BARE, ...PHYSICS_KERNELS]) {
    const ns = loop === BARE.loop ? bareNs : nsPerCall(loop);
    const parts = [`${ns.toFixed(1)} ns`, (ns / bareNs).toFixed(1), `${bytesPerCall(loop).toFixed(0)} B`];
    process.stdout.write(`  ${name.padEnd(44)} ${parts.map((part) => part.padStart(11)).join('')}\n`);
  }
}
