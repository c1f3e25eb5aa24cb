import { HEATER_OFF } from '../energy/heater-use.ts';
import { FAN_OFF, FAN_ON } from '../types.ts';
import type { BinLog } from './bin-log.ts';
import { fanShares } from './fan-shares.ts';

/** Hours in which the bin's heater burned by the warming of its plenum's air, 1, else 0, [hours]; null where nothing tells them. Untold hours count, as in the cost. */
export function burntHours({ review, startMs, count, fan }: BinLog): Uint8Array | null {
  const heater = review.fan.fans.find((one) => one.heater !== undefined)?.heater;
  if (heater === undefined) return null;
  const state = heater.burned.map((of) => (of === HEATER_OFF ? FAN_OFF : FAN_ON));
  const burnt = fanShares({ ...heater.spans, state }, startMs, count).on;
  return Uint8Array.from(burnt, (part, hour) => (part > fan.on[hour] / 2 ? 1 : 0));
}
