import { type Estimate, withheld } from '../../base/estimate.ts';
import { fileDigits } from '../../base/file-digits.ts';
import type { Zone } from '../../base/zone.ts';
import type { SensorSeries } from '../../tables/sensors.ts';
import { both, pair, plain, reason } from '../summary-numbers.ts';
import type { BinReview } from '../types.ts';
import { endTemperature } from './end-temperature.ts';
import { ranOnCost } from './front-cost.ts';
import { aboutArrival, arrivalHours, frontFinding } from './front-finding.ts';
import { handbookCooling, thumbHours } from './planning-hours.ts';
import { seasonFront } from './season-front.ts';

/** Whole minutes: no log tells a front better. */
const minute = (ms: number | null) => (ms === null ? null : new Date(Math.round(ms / 60_000) * 60_000).toISOString());

const minutes = (span: readonly [number, number] | undefined): [string | null, string | null] | null =>
  span === undefined ? null : [minute(span[0]), minute(span[1])];

/** Said nowhere: another reason tells it. */
const NONE: Estimate = { value: null, interval: null, why: null };

/** Arrivals of temperature and of moisture at every sensor, and the campaigns that they belong to. */
export function frontsSummary(
  review: BinReview,
  series: readonly SensorSeries[],
  zone: Zone,
  latitudeDeg: number | null,
) {
  const { fronts } = review;
  const end = endTemperature(review.bin.id, series);
  const cooling = seasonFront(review, series);
  const { front, why } = fronts.moisture ?? { front: null, why: fronts.why };
  const arrivals = fronts.campaigns.flatMap((campaign) =>
    campaign.arrivals.map((one) => ({
      ...placeOf(campaign.number, campaign.kind, one),
      fanHoursInterval: pair(arrivalHours(one).interval),
      arrivedInterval: minutes(one.arrivedInterval),
      why: one.why,
    })),
  );
  const ofMoisture = (front?.arrivals ?? []).map((one) => ({
    ...placeOf(front?.number ?? 0, front?.kind ?? 'drying', one),
    fanHoursInterval: pair(one.fanHoursInterval),
    arrivedInterval: null,
    why: one.why,
  }));
  const campaigns = fronts.campaigns.map((one) => {
    const { number, kind, span, fanHours, airC, grainC, speed } = one;
    const { passed, followed, held, untold, throughHours, afterHours, slowest } = frontFinding(
      one,
      review.bin.air,
      end,
    );
    return {
      campaign: number,
      kind,
      from: minute(span.fromMs),
      to: minute(span.toMs),
      fanHours: plain(fanHours),
      airC: plain(airC),
      grainC: plain(grainC),
      ...both('speedMPerFanHour', speed?.speedMH ?? NONE),
      sensors: {
        passed: passed.length,
        followed: followed.length,
        notReached: held.map(({ cable, sensor }) => `${cable} ${sensor}`),
        untold: untold.length,
      },
      ...both('throughAfterFanHours', throughHours),
      ...both('ranOnFanHours', afterHours),
      slowestPlace: slowest === null ? null : `${slowest.arrival.cable} ${slowest.arrival.sensor}`,
      ...both('slowestBehindFanHours', slowest === null ? NONE : aboutArrival(slowest.behindHours)),
      why: reason(null, speed?.speedMH ?? NONE, throughHours, afterHours),
    };
  });
  const { main, verdict } = cooling;
  const { cfmPerBushel } = review.airflow;
  const ranOn = ranOnCost(cooling);
  const thumb = thumbHours(cfmPerBushel);
  const handbook =
    main === null
      ? withheld(cooling.why ?? 'No cooling front was followed.')
      : handbookCooling(cfmPerBushel, main.campaign.span.fromMs, zone, latitudeDeg);
  return {
    fronts: [...arrivals, ...ofMoisture],
    frontsWhy: fronts.why,
    frontCampaigns: campaigns,
    seasonCooling: {
      verdict,
      campaign: main?.campaign.number ?? null,
      ...both('ranOnCost', ranOn),
      ...both('ruleOfThumbHours', thumb),
      ...both('handbookHours', handbook),
      why: reason(cooling.why, ranOn, thumb, handbook),
    },
    moistureFront:
      front === null
        ? { campaign: null, kind: null, from: null, to: null, fanHours: null, aheadPct: null, behindPct: null, why }
        : {
            campaign: front.number,
            kind: front.kind,
            from: minute(front.span.fromMs),
            to: minute(front.span.toMs),
            fanHours: plain(front.fanHours),
            aheadPct: plain(front.aheadWb, 100),
            behindPct: plain(front.behindWb, 100),
            why: null,
          },
  };
}

function placeOf<Kind extends string>(
  campaign: number,
  kind: Kind,
  one: { cable: string; sensor: number; heightM: number; arrivedMs: number | null; fanHours: number | null },
) {
  return {
    campaign,
    kind,
    cable: one.cable,
    sensor: one.sensor,
    heightM: fileDigits(one.heightM),
    arrived: minute(one.arrivedMs),
    fanHours: plain(one.fanHours),
  };
}
