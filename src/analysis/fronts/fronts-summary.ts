import { fileDigits } from '../../base/file-digits.ts';
import { both, pair, plain } from '../summary-numbers.ts';
import type { BinFronts } from '../types.ts';
import { ARRIVAL_WITHIN_H } from './front-limits.ts';

/** Whole minutes: no log tells a front better. */
const minute = (ms: number | null) => (ms === null ? null : new Date(Math.round(ms / 60_000) * 60_000).toISOString());

/** Arrivals of temperature and of moisture at every sensor, and the campaigns that they belong to. */
export function frontsSummary(fronts: BinFronts) {
  const { front, why } = fronts.moisture ?? { front: null, why: fronts.why };
  const about = (hours: number | null) =>
    hours === null ? null : pair([Math.max(0, hours - ARRIVAL_WITHIN_H), hours + ARRIVAL_WITHIN_H]);
  const arrivals = fronts.campaigns.flatMap((campaign) =>
    campaign.arrivals.map((one) => ({
      ...placeOf(campaign.number, campaign.kind, one),
      fanHoursInterval: about(one.fanHours),
      why: one.why,
    })),
  );
  const ofMoisture = (front?.arrivals ?? []).map((one) => ({
    ...placeOf(front?.number ?? 0, front?.kind ?? 'drying', one),
    fanHoursInterval: pair(one.fanHoursInterval),
    why: one.why,
  }));
  const campaigns = fronts.campaigns.map(({ number, kind, span, fanHours, airC, grainC, speed }) => ({
    campaign: number,
    kind,
    from: minute(span.fromMs),
    to: minute(span.toMs),
    fanHours: plain(fanHours),
    airC: plain(airC),
    grainC: plain(grainC),
    ...both('speedMPerFanHour', speed?.speedMH ?? { value: null, interval: null, why: null }),
    why: speed?.speedMH.why ?? null,
  }));
  return {
    fronts: [...arrivals, ...ofMoisture],
    frontsWhy: fronts.why,
    frontCampaigns: campaigns,
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
