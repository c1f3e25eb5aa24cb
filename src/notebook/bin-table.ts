import type { BinReview } from '../analysis/types.ts';
import type { Estimate } from '../base/estimate.ts';
import { cropOf } from '../grain/crops.ts';
import type { Cell, Column, Table } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { capital } from './words.ts';

/** The cell of a number that may be null with a reason of its block. */
export function orWhy(value: number | null, why: string | null): Cell {
  return value === null ? { value: null, why: why ?? 'Not known.' } : value;
}

/** A number per bushel in the shown unit of grain: per bushel, or per tonne (1000 kg over the crop's legal bushel). */
export function perGrain(of: Estimate, review: BinReview, units: Units): Estimate {
  if (units.system === 'us' || of.value === null) return of;
  const factor = 1000 / cropOf(review.bin.grain.crop).legalBushelKg;
  return {
    ...of,
    value: of.value * factor,
    interval: of.interval === null ? null : [of.interval[0] * factor, of.interval[1] * factor],
  };
}

/** Bushels in the shown unit of grain: bushels, or tonnes of the crop. */
export function asGrain(bushels: Estimate, review: BinReview, units: Units): Estimate {
  if (units.system === 'us' || bushels.value === null) return bushels;
  const factor = cropOf(review.bin.grain.crop).legalBushelKg / 1000;
  return {
    ...bushels,
    value: bushels.value * factor,
    interval: bushels.interval === null ? null : [bushels.interval[0] * factor, bushels.interval[1] * factor],
  };
}

/** How much grain lay in the bin, in the shown unit. */
export function grainAmount(review: BinReview, units: Units): Cell {
  const { bushels, why } = review.grain;
  if (bushels === null) return orWhy(null, why);
  return asGrain({ value: bushels, interval: null, why: null }, review, units);
}

/** Nine columns: the most that a page takes before a table is split. */
function columns(units: Units): readonly Column[] {
  const grain = units.system === 'us' ? 'bushel' : 'tonne';
  return [
    { key: 'bin', label: 'Bin', quantity: null },
    { key: 'grain', label: 'Grain', quantity: 'grain' },
    { key: 'in', label: 'Moisture in', quantity: 'moisture' },
    { key: 'out', label: 'Moisture out', quantity: 'moisture' },
    { key: 'hours', label: 'Fan hours', quantity: 'hours' },
    { key: 'energy', label: 'Energy', quantity: 'energy' },
    { key: 'cost', label: 'Cost', quantity: 'money' },
    { key: 'perGrain', label: `Cost per ${grain}`, quantity: 'money per grain', marked: true },
    { key: 'perPoint', label: `Cost per ${grain}-point`, quantity: 'money per grain point', marked: true },
  ];
}

/** Middle of an estimate as a cell: the trade's table stays readable, intervals stand in the bin's own table and figures. */
function middle(of: Estimate): Cell {
  return of.value === null ? { value: null, why: of.why ?? 'Not known.' } : of.value;
}

function row(review: BinReview, units: Units): Record<string, Cell> {
  const { fan, moisture, unitCosts } = review;
  return {
    bin: review.bin.name,
    grain: grainAmount(review, units),
    in: orWhy(moisture.start.value, moisture.why),
    out: orWhy(moisture.end.value, moisture.why),
    hours: middle(fan.hours),
    energy: middle(fan.energyKwh),
    cost: middle(fan.cost),
    perGrain: middle(perGrain(fan.costPerBushel, review, units)),
    perPoint: perGrain(unitCosts.perBushelPoint, review, units),
  };
}

/** The table that the trade asks for first, a row a bin. */
export function tradeTable(bins: readonly BinReview[], units: Units): Table {
  const asked = 'what the trade asks first';
  const caption = bins.length === 1 ? `${bins[0].bin.name}: ${asked}` : capital(asked);
  const cell = (key: string) => bins.map((review) => row(review, units)[key]);
  const total = (key: string): Cell => {
    const values = cell(key).map((one) => (typeof one === 'object' && one !== null ? one.value : one));
    if (values.some((value) => typeof value !== 'number')) return { value: null, why: 'Not known of every bin.' };
    return (values as number[]).reduce((a, b) => a + b, 0);
  };
  return {
    id: 'bins',
    caption,
    columns: columns(units),
    rows: bins.map((review) => row(review, units)),
    total:
      bins.length < 2
        ? undefined
        : { bin: 'All bins', hours: total('hours'), energy: total('energy'), cost: total('cost') },
    empty: 'there is no bin in season.yaml.',
  };
}

/** Over-drying beside it: what ending drier than the market's base gave away. */
export function overdryingTable(bins: readonly BinReview[], units: Units): Table {
  return {
    id: 'overdrying',
    caption: 'What over-drying gave away',
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'loss', label: 'Weight lost', quantity: 'grain' },
      { key: 'money', label: 'Money lost', quantity: 'money' },
    ],
    rows: bins.map((review) => ({
      bin: review.bin.name,
      loss: asGrain(review.moisture.overdryingLossBushels, review, units),
      money: review.moisture.overdryingLoss,
    })),
  };
}
