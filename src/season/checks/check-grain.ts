import type { Finding } from '../loaded.ts';
import { checkGrainLimits, checkGrainSpikes } from './check-grain-spikes.ts';
import { checkGrainStuck } from './check-grain-stuck.ts';
import { checkGrainUnits } from './check-grain-units.ts';
import { checkHeadspace } from './check-headspace.ts';
import type { BinCheck } from './checked.ts';

/** All checks on one bin's cables, in the order in which one must not hide the next. */
export function checkGrain(check: BinCheck): Finding[] {
  return [
    ...checkGrainUnits(check),
    ...checkGrainLimits(check),
    ...checkHeadspace(check),
    ...checkGrainSpikes(check),
    ...checkGrainStuck(check),
  ];
}
