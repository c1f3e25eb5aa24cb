import type { BinReview, MomentMean } from '../analysis/types.ts';
import { type Estimate, withheld } from '../base/estimate.ts';
import type { Cell, Table } from '../report/page.ts';
import type { Quantity } from '../report/quantities.ts';
import type { Units } from '../report/units.ts';
import { namedTable } from './estimate-rows.ts';
import { asGrain, grainAmount, perGrain } from './per-grain.ts';
import { fanHoursTotal } from './shared-fans.ts';
import { type KnownTotal, knownTotal } from './words.ts';

/** A mean at the start or end, with its interval where it has one. */
export function momentEstimate(of: MomentMean, why: string | null): Estimate {
  return of.value === null
    ? { value: null, interval: null, why: why ?? 'Not known.' }
    : { value: of.value, interval: of.interval ?? null, why: null };
}

/** What the trade asks of a bin first, each with its interval. One list, so that no page leaves one out. */
function asked(review: BinReview, units: Units) {
  const { fan, moisture, unitCosts } = review;
  const grain = units.system === 'us' ? 'bushel' : 'tonne';
  const ask = (key: string, label: string, quantity: Quantity, cell: Cell, marked = false) => ({
    key,
    label,
    quantity,
    cell,
    marked,
  });
  return [
    ask('grain', 'Grain', 'grain', grainAmount(review, units)),
    ask('in', 'Moisture in', 'moisture', momentEstimate(moisture.start, moisture.why)),
    ask('out', 'Moisture out', 'moisture', momentEstimate(moisture.end, moisture.why)),
    ask('points', 'Points removed', 'points', moisture.pointsRemoved),
    ask('hours', 'Fan hours', 'hours', fan.hours),
    ask('energy', 'Energy', 'energy', fan.energyKwh),
    ask('cost', 'Cost', 'money', fan.cost),
    ask('perGrain', `Cost per ${grain}`, 'money per grain', perGrain(fan.costPerBushel, review, units), true),
    ask(
      'perPoint',
      `Cost per ${grain}-point`,
      'money per grain point',
      perGrain(unitCosts.perBushelPoint, review, units),
      true,
    ),
    ask('loss', 'Over-drying, weight', 'grain', asGrain(moisture.overdryingLossBushels, review, units)),
    ask('lossMoney', 'Over-drying, money', 'money', moisture.overdryingLoss),
  ];
}

/** Bins under each other with some of what the trade asks first. */
function binRows(id: string, caption: string, keys: readonly string[], bins: readonly BinReview[], units: Units) {
  const rows = bins.map((review) => ({
    review,
    cells: keys.flatMap((key) => asked(review, units).filter((one) => one.key === key)),
  }));
  const table: Table = {
    id,
    caption,
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      ...(rows[0]?.cells ?? []).map(({ key, label, quantity, marked }) => ({ key, label, quantity, marked })),
    ],
    rows: rows.map(({ review, cells }) => ({
      bin: review.bin.name,
      ...Object.fromEntries(cells.map(({ key, cell }) => [key, cell])),
    })),
    empty: 'there is no bin in season.yaml.',
  };
  return table;
}

/** The sum of all bins; withheld where one of them is not known, as a table's total would be read as whole. */
const wholeTotal = (parts: readonly Estimate[]): Estimate => whole(knownTotal(parts));

function whole({ total, of }: KnownTotal): Estimate {
  return of === null || total.value === null ? total : withheld('Not known of every bin.');
}

/**
 * What the trade asks first. One bin: all of it under each other. Several: a row a bin with its fans and money, as the
 * whole with its intervals would be too wide; the grain's half is `grainTable`.
 */
export function tradeTable(bins: readonly BinReview[], units: Units): Table {
  if (bins.length === 1) {
    const [review] = bins;
    const rows = asked(review, units).map(({ label, quantity, cell }) => ({
      label,
      quantity,
      amount: cell as Estimate,
    }));
    return namedTable('bins', `${review.bin.name}: what the trade asks first`, rows, units);
  }
  const keys = ['grain', 'hours', 'energy', 'cost', 'perGrain', 'perPoint'];
  return {
    ...binRows('bins', 'What the fans did and cost', keys, bins, units),
    total: {
      bin: 'All bins',
      hours: whole(fanHoursTotal(bins)),
      energy: wholeTotal(bins.map((one) => one.fan.energyKwh)),
      cost: wholeTotal(bins.map((one) => one.fan.cost)),
    },
  };
}

/** The other half: moisture in and out, and what ending drier than the market's base gave away. */
export function grainTable(bins: readonly BinReview[], units: Units): Table {
  const keys = ['grain', 'in', 'out', 'points', 'loss', 'lossMoney'];
  return {
    ...binRows('grain', 'What the grain went through, and what over-drying gave away', keys, bins, units),
    total:
      bins.length < 2
        ? undefined
        : { bin: 'All bins', lossMoney: wholeTotal(bins.map((one) => one.moisture.overdryingLoss)) },
  };
}
