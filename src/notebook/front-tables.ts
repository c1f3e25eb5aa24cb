import { RULE_OF_THUMB_HOURS } from '../analysis/fronts/rule-of-thumb.ts';
import type { BinReview, Campaign, FrontArrival } from '../analysis/types.ts';
import { frontArrivals } from '../report/figures/front-arrivals.ts';
import type { Cell, Figure, Table } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { counted, sentence } from './words.ts';

/** What a campaign's arrivals say: the last cable, how far behind, and the hours that ran on. */
export interface FrontFinding {
  reached: number;
  of: number;
  /** fan hours until the front had passed every sensor; null while it had not */
  throughHours: number | null;
  /** fan hours run after that */
  after: number | null;
  /** cable whose front came last (or never) at its highest shared height, and its fan hours behind the first */
  slowest: { cable: string; behindHours: number | null } | null;
  never: readonly FrontArrival[];
}

/** Mean fan hours that a cable is later than the others at the heights they share; null where they share none. */
function lag(cable: string, arrivals: readonly FrontArrival[]): number | null {
  const others = arrivals.filter((one) => one.cable !== cable && one.fanHours !== null);
  const gaps = arrivals
    .filter((one) => one.cable === cable && one.fanHours !== null)
    .flatMap((one) => {
      const near = others.filter((other) => Math.abs(other.heightM - one.heightM) < 0.5);
      if (near.length === 0) return [];
      return [(one.fanHours ?? 0) - Math.min(...near.map((other) => other.fanHours ?? 0))];
    });
  return gaps.length === 0 ? null : gaps.reduce((sum, gap) => sum + gap, 0) / gaps.length;
}

export function frontFinding(campaign: Campaign): FrontFinding {
  const arrivals = campaign.arrivals.filter((one) => one.unseen !== true);
  const reached = arrivals.filter((one) => one.fanHours !== null);
  const never = arrivals.filter((one) => one.fanHours === null);
  const through =
    never.length > 0 || reached.length === 0 ? null : Math.max(...reached.map((one) => one.fanHours ?? 0));
  const cables = [...new Set(arrivals.map((one) => one.cable))];
  const late = cables
    .map((cable) => ({
      cable,
      missed: never.filter((one) => one.cable === cable).length,
      behindHours: lag(cable, arrivals),
    }))
    .sort((a, b) => b.missed - a.missed || (b.behindHours ?? -1) - (a.behindHours ?? -1));
  return {
    reached: reached.length,
    of: arrivals.length,
    throughHours: through,
    after: through === null ? null : Math.max(0, campaign.fanHours - through),
    slowest: cables.length < 2 ? null : { cable: late[0].cable, behindHours: late[0].behindHours },
    never,
  };
}

/** What the fronts of a bin came to, in a sentence or two. */
export function frontLead(review: BinReview): string {
  const { bin, fronts } = review;
  const found = fronts.campaigns.map(frontFinding).filter((one) => one.of > 0);
  if (found.length === 0) {
    const why = fronts.why ?? 'no stretch of fan running was clearly cooler or warmer than the grain';
    return `Can’t tell of fronts in ${bin.name}: ${sentence(why)}`;
  }
  const through = found.filter((one) => one.throughHours !== null).length;
  const late = found.flatMap((one) => (one.slowest === null || one.reached === 0 ? [] : [one.slowest.cable]));
  const most = [...new Set(late)]
    .map((cable) => ({ cable, times: late.filter((one) => one === cable).length }))
    .sort((a, b) => b.times - a.times)[0];
  const slowest = most === undefined ? '' : ` Cable ${most.cable} was the slowest in ${most.times} of ${late.length}.`;
  return `${bin.name} had ${counted(found.length, 'campaign')}; the front was seen to go through everywhere in ${through}.${slowest}`;
}

/** The campaigns of a bin under each other. */
export function campaignTable(review: BinReview, units: Units): Table {
  // Hours of the rule hang on the airflow per bushel, which no block of the review carries yet.
  const noAirflow = `The rule of thumb (${RULE_OF_THUMB_HOURS} h over the cfm per bushel) needs the airflow, which is not worked out for this bin.`;
  const notThrough = 'The front was not seen to pass every sensor.';
  const oneCable = 'One cable has no other to be held against.';
  return {
    id: 'campaigns',
    caption: `Campaigns of ${review.bin.name}`,
    columns: [
      { key: 'campaign', label: 'Campaign', quantity: null },
      { key: 'from', label: 'From', quantity: null },
      { key: 'hours', label: 'Fan hours', quantity: 'hours' },
      { key: 'air', label: 'Air', quantity: 'temperature' },
      { key: 'grain', label: 'Grain before', quantity: 'temperature' },
      { key: 'passed', label: 'Sensors passed', quantity: null },
      { key: 'through', label: 'Through after', quantity: 'hours' },
      { key: 'behind', label: 'Slowest cable behind', quantity: 'hours' },
      { key: 'rule', label: 'Rule of thumb', quantity: 'hours' },
    ],
    rows: review.fronts.campaigns.map((campaign) => {
      const found = frontFinding(campaign);
      const behind: Cell =
        found.slowest === null
          ? { value: null, why: oneCable }
          : (found.slowest.behindHours ?? {
              value: null,
              why: 'The slowest cable shares no passed height with another.',
            });
      return {
        campaign: `${campaign.number} ${campaign.kind}`,
        from: units.date(campaign.span.fromMs),
        hours: campaign.fanHours,
        air: campaign.airC,
        grain: campaign.grainC,
        passed: `${found.reached} of ${found.of}`,
        through: found.throughHours ?? { value: null, why: notThrough },
        behind,
        rule: { value: null, why: noAirflow },
      };
    }),
    empty: 'none.',
  };
}

/** Every sensor's arrival in a campaign, with the reason where there is none. */
export function arrivalTable(campaign: Campaign, units: Units): Table {
  return {
    id: `arrivals-${campaign.number}`,
    caption: `Arrivals of campaign ${campaign.number}`,
    folded: true,
    columns: [
      { key: 'sensor', label: 'Cable and sensor', quantity: null },
      { key: 'height', label: 'Height', quantity: 'length' },
      { key: 'arrived', label: 'Arrived', quantity: null },
      { key: 'hours', label: 'Fan hours', quantity: 'hours' },
      { key: 'ahead', label: 'Ahead', quantity: 'temperature' },
      { key: 'behind', label: 'Behind', quantity: 'temperature' },
    ],
    rows: campaign.arrivals.map((one) => {
      const why = one.why ?? 'The front was not seen to arrive.';
      return {
        sensor: `${one.cable} ${one.sensor}`,
        height: one.heightM,
        arrived: one.arrivedMs === null ? { value: null, why } : units.dateTime(one.arrivedMs),
        hours: one.fanHours ?? { value: null, why },
        ahead: one.aheadC ?? { value: null, why },
        behind: one.behindC ?? { value: null, why },
      };
    }),
    empty: 'no sensor could be used.',
  };
}

export function arrivalFigure(campaign: Campaign, review: BinReview, units: Units): Figure {
  const found = frontFinding(campaign);
  const title =
    found.throughHours !== null
      ? `Campaign ${campaign.number}, ${campaign.kind}: through everywhere after ${units.say('hours', found.throughHours)} of ${units.say('hours', campaign.fanHours)}`
      : `Campaign ${campaign.number}, ${campaign.kind}: the front passed ${found.reached} of ${found.of} sensors`;
  return frontArrivals(
    {
      id: `campaign-${campaign.number}`,
      title,
      kind: campaign.kind,
      fanHours: campaign.fanHours,
      arrivals: campaign.arrivals,
      depthM: review.grain.depthM,
    },
    units,
  );
}
