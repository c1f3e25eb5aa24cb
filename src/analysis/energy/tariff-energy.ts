import { energyCost } from '../../money/energy-cost.ts';
import type { Season } from '../../season/season.ts';
import type { FanSeason } from '../types.ts';

const NO_RATES = { startMs: new Float64Array(0), pricePerKwh: new Float64Array(0) };
const HOUR_MS = 3_600_000;

/** What the fans of a tariff used in a stretch of time, and how far their logs cover it. */
export interface TariffEnergy {
  energyKwh: number;
  /** time of the stretch, fan by fan, that no log tells, h: outside the logs or unknown within them */
  untoldHours: number;
}

/** Energy of a tariff's fans in [fromMs, toMs), ms UTC: their runs cut exactly at both ends. */
export function tariffEnergy(
  season: Season,
  fanSeasons: readonly FanSeason[],
  tariffId: string,
  fromMs: number,
  toMs: number,
): TariffEnergy {
  let energyKwh = 0;
  let untoldHours = 0;
  for (const fan of season.fans) {
    if (fan.tariffId !== tariffId) continue;
    const spans = fanSeasons.find((one) => one.fanId === fan.id)?.spans;
    let told = 0;
    spans?.startMs.forEach((startMs, k) => {
      // Unknown time has no power.
      if (Number.isNaN(spans.powerW[k])) return;
      told += Math.max(0, Math.min(spans.endMs[k], toMs) - Math.max(startMs, fromMs));
    });
    if (spans !== undefined) energyKwh += energyCost(spans, NO_RATES, fromMs, toMs).kwh;
    untoldHours += Math.max(0, toMs - fromMs - told) / HOUR_MS;
  }
  return { energyKwh, untoldHours };
}
