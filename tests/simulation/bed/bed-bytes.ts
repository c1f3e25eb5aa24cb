// Run by bed-bytes.test.ts in a process of its own, where no test runner has rewritten the modules.
import { bytesPerCall } from '../../../scripts/bench/bytes-per-call.ts';
import { benchBed, runBedSeason } from '../../../scripts/bench/simulation/bed-season.ts';
import { conduct } from '../../../src/simulation/bed/conduct.ts';
import { keepState, newState, restoreState } from '../../../src/simulation/bed/keep-state.ts';
import { mediumOf } from '../../../src/simulation/bed/medium-of.ts';
import { passAir } from '../../../src/simulation/bed/pass-air.ts';

const SURROUNDINGS = { plenumC: 4, headspaceC: 7, wallC: 2 };
const bytes: Record<string, number> = {};
for (const crop of ['corn', 'soybean', 'durum']) {
  const bed = benchBed(mediumOf(crop, 609));
  const state = newState(bed);
  // Warm: the compiler has seen every branch.
  for (let i = 0; i < 3; i++) runBedSeason(bed, 330);
  const loops: Record<string, () => void> = {
    passAir: () => passAir(bed, 330, 3600, 12.5, 0.006),
    conduct: () => conduct(bed, 3600, SURROUNDINGS),
    'keepState and restoreState': () => {
      keepState(bed, state);
      restoreState(bed, state);
    },
  };
  for (const [name, step] of Object.entries(loops)) {
    bytes[`${name}, ${crop}`] = bytesPerCall((calls) => {
      for (let i = 0; i < calls; i++) step();
      return bed.tempC[0];
    });
  }
}
process.stdout.write(JSON.stringify(bytes));
