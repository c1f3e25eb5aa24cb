import { nsPerCall } from './ns-per-call.ts';
import { BARE, PHYSICS_KERNELS } from './physics-kernels.ts';

/** Time of a call of each physics kernel, and how many bare `Math.exp` calls of the same run that is. */
export function benchPhysics(): void {
  const bareNs = nsPerCall(BARE.loop);
  process.stdout.write(
    `physics: ns per call, ratio to a bare Math.exp (Node ${process.versions.node}, ${process.arch})\n`,
  );
  for (const { name, loop } of [BARE, ...PHYSICS_KERNELS]) {
    const ns = loop === BARE.loop ? bareNs : nsPerCall(loop);
    process.stdout.write(
      `  ${name.padEnd(44)} ${ns.toFixed(1).padStart(8)} ns ${(ns / bareNs).toFixed(1).padStart(7)}\n`,
    );
  }
}
