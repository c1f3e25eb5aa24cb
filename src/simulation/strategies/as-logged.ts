import { hasHeater, type RunSpec } from '../run/run-spec.ts';
import { scheduled } from './scheduled.ts';
import type { Strategy } from './strategy.ts';

export const AS_LOGGED = 'as-logged';

/**
 * The season as its log has it. Where nothing tells whether a heater burnt it is taken to burn whenever its fan runs, as where its
 * cost is told and where the bed is fitted.
 *
 * @param share  of each hour in which the fan ran, [hours of the run]
 */
export function asLogged(spec: RunSpec, share: Float64Array): Strategy {
  return scheduled(AS_LOGGED, 'As logged', share, hasHeater(spec) ? (spec.burnt ?? burntWith(share)) : undefined);
}

/** 1 in the hours in which the fan ran, [hours]. */
export function burntWith(share: Float64Array): Uint8Array {
  return Uint8Array.from(share, (part) => (part > 0 ? 1 : 0));
}
