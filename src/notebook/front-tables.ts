import { arrivalHours, type FrontFinding } from '../analysis/fronts/front-finding.ts';
import type { SeasonFront } from '../analysis/fronts/season-front.ts';
import type { Cell, Column, Table } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { reachedSaid, slowestSaid } from './front-words.ts';

const ONE_CABLE = 'One cable has no other to be held against.';
const NONE_BEHIND =
  'No sensor came behind the other cables at its height, or they share no height that the front passed.';

/** The columns that the bins' main campaigns and a bin's campaigns share. */
function columns(first: string): readonly Column[] {
  return [
    { key: 'name', label: first, quantity: null },
    { key: 'from', label: 'Began', quantity: 'day' },
    { key: 'hours', label: 'Fan hours', quantity: 'hours', known: 'measured' },
    { key: 'air', label: 'Air', quantity: 'temperature', known: 'measured' },
    { key: 'grain', label: 'Grain before', quantity: 'temperature', known: 'measured' },
    { key: 'reached', label: 'Sensors passed', quantity: null },
    { key: 'through', label: 'Through after', quantity: 'hours' },
    { key: 'after', label: 'Ran on', quantity: 'hours' },
    { key: 'slowest', label: 'Slowest for its height', quantity: null },
  ];
}

function rowOf(name: string, found: FrontFinding, cables: number, units: Units): Record<string, Cell> {
  const { campaign } = found;
  return {
    name,
    from: campaign.span.fromMs,
    hours: campaign.fanHours,
    air: campaign.airC,
    grain: campaign.grainC,
    reached: reachedSaid(found, units),
    through: found.throughHours,
    after: found.afterHours,
    slowest: slowestSaid(found, units) ?? { value: null, why: cables < 2 ? ONE_CABLE : NONE_BEHIND },
  };
}

/** The main cooling campaign of each bin, a row a bin. */
export function seasonFrontTable(fronts: readonly SeasonFront[], units: Units): Table {
  return {
    id: 'bins',
    caption: 'The coldest front of each bin',
    columns: columns('Bin'),
    rows: fronts.map((one) => {
      const { bin } = one.review;
      if (one.main !== null) return rowOf(bin.name, one.main, bin.cables.length, units);
      const none = { value: null, why: one.why ?? 'Not known.' };
      return {
        name: bin.name,
        ...Object.fromEntries(
          columns('')
            .slice(1)
            .map((column) => [column.key, none]),
        ),
      };
    }),
    empty: 'there is no bin in season.yaml.',
  };
}

/** All campaigns of a bin under each other. */
export function campaignTable(front: SeasonFront, units: Units): Table {
  const { bin } = front.review;
  const all = [...front.cooling, ...front.warming].sort((a, b) => a.campaign.number - b.campaign.number);
  return {
    id: 'campaigns',
    caption: `All campaigns of ${bin.name}`,
    columns: columns('Campaign'),
    rows: all.map((found) => {
      const { number, kind } = found.campaign;
      return rowOf(`${number} ${kind}`, found, bin.cables.length, units);
    }),
    empty: 'none.',
  };
}

/** Every sensor's arrival in every campaign of a bin, with the reason where there is none. */
export function arrivalTable(front: SeasonFront): Table {
  const { campaigns } = front.review.fronts;
  const placed = campaigns.some(({ arrivals }) => arrivals.some((one) => one.arrivedInterval !== undefined));
  const ends: readonly Column[] = [
    { key: 'earliest', label: 'In a hole from', quantity: 'moment' },
    { key: 'latest', label: 'to', quantity: 'moment' },
  ];
  return {
    id: 'arrivals',
    caption: `Arrivals at every sensor of ${front.review.bin.name}`,
    folded: 'on screen',
    columns: [
      { key: 'campaign', label: 'Campaign', quantity: null },
      { key: 'sensor', label: 'Cable and sensor', quantity: null },
      { key: 'height', label: 'Height', quantity: 'length', known: 'stated' },
      { key: 'arrived', label: 'Arrived', quantity: 'moment' },
      ...(placed ? ends : []),
      { key: 'hours', label: 'Fan hours', quantity: 'hours' },
      { key: 'ahead', label: 'Ahead', quantity: 'temperature', known: 'measured' },
      { key: 'behind', label: 'Behind', quantity: 'temperature', known: 'measured' },
    ],
    rows: campaigns.flatMap((campaign) =>
      campaign.arrivals.map((one) => {
        const hours = arrivalHours(one);
        const none = { value: null, why: one.why ?? 'The front was not seen to arrive.' };
        return {
          campaign: `${campaign.number} ${campaign.kind}`,
          sensor: `${one.cable} ${one.sensor}`,
          height: one.heightM,
          arrived: one.arrivedMs ?? none,
          ...(placed ? { earliest: one.arrivedInterval?.[0] ?? null, latest: one.arrivedInterval?.[1] ?? null } : {}),
          hours,
          ahead: one.aheadC ?? none,
          behind: one.behindC ?? none,
        };
      }),
    ),
    empty: 'no sensor could be used.',
  };
}

/** What warmed the bins, a row a bin that was warmed. */
export function warmingTable(fronts: readonly SeasonFront[]): Table {
  return {
    id: 'warming',
    caption: 'Warming campaigns',
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'campaigns', label: 'Campaigns', quantity: 'count' },
      { key: 'hours', label: 'Fan hours', quantity: 'hours', known: 'measured' },
      { key: 'warmest', label: 'Warmest air', quantity: 'temperature', known: 'measured' },
      { key: 'last', label: 'Last began', quantity: 'day' },
      { key: 'through', label: 'Went through everywhere in', quantity: null },
    ],
    rows: fronts
      .filter((one) => one.warming.length > 0)
      .map(({ review, warming }) => ({
        bin: review.bin.name,
        campaigns: warming.length,
        hours: warming.reduce((sum, one) => sum + one.campaign.fanHours, 0),
        warmest: Math.max(...warming.map((one) => one.campaign.airC)),
        last: Math.max(...warming.map((one) => one.campaign.span.fromMs)),
        through: `${warming.filter((one) => one.through).length} of ${warming.length}`,
      })),
    empty: 'none.',
  };
}
