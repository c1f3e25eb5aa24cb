import type { Fan } from '../../bin/fan.ts';
import { energyCost } from '../../money/energy-cost.ts';
import { NO_RATES } from '../../money/rate-breaks.ts';
import type { Season } from '../../season/season.ts';
import type { FanSeason } from '../types.ts';
import { runningPowerW } from './fan-cost.ts';
import { HEATER_REL_SD, type HeatTaken, heaterInPowerW, heaterInputW, heaterSpans, heaterUse } from './heater-use.ts';

/**
 * What a fan's heater draws beside the fan's own meter or current, W: of an electric one that the tariff prices and the fan's own
 * power does not hold. 0 for all others.
 */
export function heaterBesideW(fan: Fan, season: FanSeason): number {
  const { heater, tariffId } = fan;
  if (heater === null || heater.fuel !== 'electric' || heater.pricePerJ !== null || tariffId === null) return 0;
  return heaterInPowerW(fan, season, runningPowerW(fan, season)) > 0 ? 0 : heaterInputW(heater);
}

/** Fans as the meter of their tariff sees them: with what their electric heaters draw beside their own. */
export function onTheMeter(
  { fans }: Pick<Season, 'fans'>,
  fanSeasons: readonly FanSeason[],
  taken: HeatTaken,
): readonly FanSeason[] {
  return fanSeasons.map((season) => {
    const fan = fans.find(({ id }) => id === season.fanId);
    const heaterW = fan === undefined ? 0 : heaterBesideW(fan, season);
    return heaterW > 0 ? withHeater(season, heaterW, taken) : season;
  });
}

function withHeater(season: FanSeason, heaterW: number, taken: HeatTaken): FanSeason {
  const heat = heaterSpans(season, heaterW, taken);
  const { kwh } = energyCost(heat, NO_RATES);
  const own = heaterUse(season).spans;
  const energyKwh = season.energyKwh + kwh;
  const sdKwh = Math.hypot(season.energyRelSd * season.energyKwh, HEATER_REL_SD * kwh);
  return {
    ...season,
    spans: { ...own, powerW: own.powerW.map((powerW, k) => (heat.powerW[k] > 0 ? powerW + heat.powerW[k] : powerW)) },
    energyKwh,
    energyRelSd: energyKwh > 0 ? sdKwh / energyKwh : season.energyRelSd,
  };
}

/** Fans whose heaters draw from their tariff beside them. */
export function heatedBeside({ fans }: Pick<Season, 'fans'>, fanSeasons: readonly FanSeason[]): FanSeason[] {
  return fanSeasons.filter((season) => {
    const fan = fans.find(({ id }) => id === season.fanId);
    return fan !== undefined && season.spans.state.length > 0 && heaterBesideW(fan, season) > 0;
  });
}

/** Whether some heater may have drawn less from a tariff than is told. */
export function heatInDoubt(season: Pick<Season, 'fans'>, fanSeasons: readonly FanSeason[]): boolean {
  return heatedBeside(season, fanSeasons).some((one) => heaterUse(one).untoldHours > 0);
}
