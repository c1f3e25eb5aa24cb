import { hasHeater, type RunSpec } from '../run/run-spec.ts';
import type { Strategy } from './strategy.ts';

/** A strategy that heats the air needs a bin with a heater. */
export function runsOn({ heater }: Strategy, spec: RunSpec): boolean {
  return heater === undefined || hasHeater(spec);
}
