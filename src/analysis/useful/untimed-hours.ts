import { untimedStretches } from '../fan/untimed-stretches.ts';
import type { FanSeason } from '../types.ts';
import type { MoistAir } from './entering-moist-air.ts';

/**
 * Pieces within stretches of which a meter read once a day, or more seldom, tells how long a fan ran but not when: no air can be
 * put to them.
 *
 * @returns  [pieces], 1 where the moment is not known
 */
export function untimedHours(midMs: Float64Array, fans: readonly Pick<FanSeason, 'spread'>[]): Uint8Array {
  const stretches = untimedStretches(fans);
  return Uint8Array.from(midMs, (ms) => (stretches.some(({ fromMs, toMs }) => ms >= fromMs && ms < toMs) ? 1 : 0));
}

/** The air, not known in such pieces. */
export function timedAir<T extends MoistAir>(air: T, untimed: Uint8Array): T {
  const told = (values: Float64Array) => values.map((value, i) => (untimed[i] === 1 ? Number.NaN : value));
  return { ...air, tempC: told(air.tempC), ratio: told(air.ratio), rh: told(air.rh) };
}
