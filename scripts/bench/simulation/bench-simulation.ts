import { performance } from 'node:perf_hooks';
import { conduct } from '../../../src/simulation/bed/conduct.ts';
import type { Medium } from '../../../src/simulation/bed/medium.ts';
import { mediumOf } from '../../../src/simulation/bed/medium-of.ts';
import { passAir } from '../../../src/simulation/bed/pass-air.ts';
import { spoil } from '../../../src/simulation/bed/spoil.ts';
import { runSeason } from '../../../src/simulation/run/run-season.ts';
import { alwaysOn } from '../../../src/simulation/strategies/always-on.ts';
import { bytesPerCall } from '../bytes-per-call.ts';
import { nsPerCall } from '../ns-per-call.ts';
import { benchBed, benchRun, runBedSeason, SEASON } from './bed-season.ts';
import { type CLoop, runInC } from './c-loop.ts';

const ROUNDS = 60;
/** Time over that of the loop in C, at most. */
const MOST = { libm: 2, tables: 1.5 };
const AGREE = 1e-6;
/** Dry air of an hour, kg/m2: about 1 and 0.1 cfm/bu through 5.5 m of corn. */
const AIRS = [
  { name: '1 cfm/bu', kgM2: 330 },
  { name: '0.1 cfm/bu', kgM2: 33 },
];

/** Time of a layer in a step of the bed beside the same loop in C, and heap that a step takes. */
export function benchSimulation(): void {
  const say = (line: string) => process.stdout.write(`${line}\n`);
  say(`simulation: ns per layer and step, best of ${ROUNDS} rounds (Node ${process.versions.node}, ${process.arch})`);
  const corn = mediumOf('corn', 609);
  for (const { name, kgM2 } of AIRS) {
    const { ns, tempC, moistureDb } = timed(corn, kgM2);
    const inC = runInC(corn, kgM2, ROUNDS);
    if (inC === null) {
      say(`  corn, ${name}: ${ns.toFixed(0)} ns; no gcc here, so nothing to hold it against`);
      continue;
    }
    for (const way of ['libm', 'tables'] as const) {
      assertSame(`${name}, ${way}`, inC[way], tempC, moistureDb);
      const ratio = ns / inC[way].nsPerLayerStep;
      const verdict = ratio <= MOST[way] ? `within ${MOST[way]}` : `OVER ${MOST[way]}`;
      say(
        `  corn, ${name.padEnd(11)} ${ns.toFixed(0).padStart(4)} ns, C with ${way.padEnd(6)} ${inC[way].nsPerLayerStep.toFixed(0).padStart(4)} ns: ${ratio.toFixed(2)} times, ${verdict}; results agree`,
      );
    }
  }
  for (const crop of ['soybean', 'wheat'])
    say(`  ${crop}, 1 cfm/bu: ${timed(mediumOf(crop, 650), 330).ns.toFixed(0)} ns`);
  const { conductNs, spoilNs } = restTimed(corn);
  say(`  conduction: ${conductNs.toFixed(0)} ns; storage life: ${spoilNs.toFixed(0)} ns each time that it is summed`);
  say(
    `  a whole hour of a run (view, strategy, air, conduction, storage life, money): ${runTimed(corn).toFixed(0)} ns`,
  );
  say(`  heap: ${bytesOfStep(corn).toFixed(0)} B a step`);
}

/** Conduction and storage life of a layer, ns. */
function restTimed(medium: Medium): { conductNs: number; spoilNs: number } {
  const bed = benchBed(medium);
  runBedSeason(bed, 330);
  const around = { plenumC: 4, headspaceC: 5, wallC: 3 };
  const nsOf = (step: () => void) =>
    nsPerCall((calls) => {
      for (let i = 0; i < calls; i++) step();
      return bed.tempC[0];
    }) / SEASON.layers;
  return { conductNs: nsOf(() => conduct(bed, SEASON.seconds, around)), spoilNs: nsOf(() => spoil(bed, 1e-6)) };
}

/** A layer's hour in a whole run with the fan always on, ns. */
function runTimed(medium: Medium): number {
  const spec = benchRun(medium, 330);
  let best = Number.POSITIVE_INFINITY;
  for (let round = 0; round < ROUNDS; round++) {
    const start = performance.now();
    runSeason(spec, alwaysOn);
    best = Math.min(best, performance.now() - start);
  }
  return (best * 1e6) / (SEASON.hours * SEASON.layers);
}

function timed(medium: Medium, dryAirKgM2: number) {
  const bed = benchBed(medium);
  let best = Number.POSITIVE_INFINITY;
  for (let round = 0; round < ROUNDS; round++) {
    const start = performance.now();
    runBedSeason(bed, dryAirKgM2);
    best = Math.min(best, performance.now() - start);
  }
  return { ns: (best * 1e6) / (SEASON.hours * SEASON.layers), tempC: bed.tempC, moistureDb: bed.moistureDb };
}

function assertSame(what: string, { tempC, moistureDb }: CLoop, ownC: Float64Array, ownDb: Float64Array): void {
  const off = Math.max(
    ...tempC.map((one, i) => Math.abs(one - ownC[i]) / (1 + Math.abs(one))),
    ...moistureDb.map((one, i) => Math.abs(one - ownDb[i]) / one),
  );
  if (!(off < AGREE)) throw new Error(`${what}: the loops part by ${off}; ${AGREE} is let pass`);
}

/** Heap of one step of all layers, bytes. */
function bytesOfStep(medium: Medium): number {
  const bed = benchBed(medium);
  runBedSeason(bed, 330);
  return bytesPerCall((calls) => {
    for (let i = 0; i < calls; i++) passAir(bed, 330, SEASON.seconds, 12.5, 0.006);
    return bed.leaving[0];
  });
}
