import { type Estimate, estimate, withheld, Z90 } from '../../base/estimate.ts';
import { median } from '../../base/stats/quantile.ts';
import { tQuantile } from '../../base/stats/t-quantile.ts';
import type { FrontArrival } from '../types.ts';
import { ARRIVAL_WITHIN_H } from './front-limits.ts';

/** Sensors nearer to each other than this, m, are passed too soon after each other. */
const LEAST_APART_M = 0.5;
/** An arrival, sd in fan hours: nine of ten lie within six. */
const ARRIVAL_SD_H = ARRIVAL_WITHIN_H / Z90;
/** The median of slopes keeps this part of what a least-squares line gets out of clean points. */
const EFFICIENCY = 0.9;
/** Cables differ by this much where nothing else is known (sd of the logarithm), held as firmly as three differences. Working assumption. */
const CABLES_SD = 0.12;
const CABLES_DF = 3;
/** Where the interval's fast end is over four times the middle, nothing is known. */
const LEAST_PART = 0.25;

/** How fast a campaign's front went up, m per fan hour. */
export interface CampaignSpeed {
  /** mean over the cables; the interval holds that of the bin, as far as the cables stand for it */
  speedMH: Estimate;
  cables: readonly { cable: string; speedMH: number; sensors: number }[];
}

/**
 * Speed of a front from fan hours over height: in each cable the median of the slopes of all pairs of sensors (one arrival
 * told wrong does not move it), the cables by the mean of these hours a metre, weighed by how well each can tell.
 *
 * It says how fast this front went, for planning the next. The airflow is not told from it but from all changes of temperature
 * (`airflow/airflow-by-front.ts`): half-way arrivals alone lead astray where the air drifted while the front was under way.
 *
 * @source  median of slopes: theil-1950, sen-1968 (sources of the methods page)
 */
export function campaignSpeed(arrivals: readonly FrontArrival[], air: 'up' | 'down'): CampaignSpeed {
  const cables = [...new Set(arrivals.map((one) => one.cable))].flatMap((cable) => {
    const dated = arrivals
      .filter((one) => one.cable === cable && one.fanHours !== null && one.placed !== true)
      .map((one) => ({ m: air === 'up' ? one.heightM : -one.heightM, h: one.fanHours ?? 0 }));
    const slopes = dated.flatMap((a) =>
      dated.filter((b) => b.m - a.m >= LEAST_APART_M).map((b) => (b.h - a.h) / (b.m - a.m)),
    );
    if (slopes.length === 0) return [];
    const meanM = dated.reduce((sum, one) => sum + one.m, 0) / dated.length;
    const squares = dated.reduce((sum, one) => sum + (one.m - meanM) ** 2, 0);
    return [
      { cable, hoursM: median(slopes), variance: ARRIVAL_SD_H ** 2 / squares / EFFICIENCY, sensors: dated.length },
    ];
  });
  const none = (why: string): CampaignSpeed => ({ speedMH: withheld(why), cables: [] });
  if (cables.length === 0) return none('The front was dated at no two sensors of a cable half a metre apart.');
  const { hoursM, sd, df } = together(cables);
  const told = cables
    .filter((one) => one.hoursM > 0)
    .map((one) => ({ cable: one.cable, speedMH: 1 / one.hoursM, sensors: one.sensors }));
  const reach = tQuantile(0.95, df) * sd;
  if (!(hoursM - reach > LEAST_PART * hoursM))
    return {
      speedMH: withheld(
        'The front passed the sensors too soon after each other for arrivals good to 6 h to tell its speed.',
      ),
      cables: told,
    };
  return { speedMH: estimate(1 / hoursM, 1 / (hoursM + reach), 1 / (hoursM - reach)), cables: told };
}

/** The cables' hours a metre as one, with the standard error from arrivals and from cables that differ. */
function together(cables: readonly { hoursM: number; variance: number }[]): { hoursM: number; sd: number; df: number } {
  const rough = Math.max(1e-6, median(cables.map((one) => one.hoursM)));
  const between = (CABLES_SD * rough) ** 2;
  const weigh = (variance: number) => 1 / (variance + between);
  const all = cables.reduce((sum, one) => sum + weigh(one.variance), 0);
  const hoursM = cables.reduce((sum, one) => sum + weigh(one.variance) * one.hoursM, 0) / all;
  // What is seen of the cables' differences, against what arrivals and the assumption make of them.
  const excess = cables.reduce((sum, one) => sum + weigh(one.variance) * (one.hoursM - hoursM) ** 2, 0);
  const df = CABLES_DF + cables.length - 1;
  return { hoursM, sd: Math.sqrt((CABLES_DF + excess) / df / all), df };
}
