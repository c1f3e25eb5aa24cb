import type { CostRatio, FactorRatio } from '../analysis/compare/comparison.ts';
import { withheld } from '../base/estimate.ts';
import type { Cell, Table } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { foldedFor } from './compare-many.ts';
import { held, ratioShown } from './compare-ratio.ts';
import { scaled } from './compare-scale.ts';
import { type Compared, costQuantity, costShown, nameOf } from './compare-words.ts';
import { perGrain } from './per-grain.ts';

/** Each bin's cost as a product: price × charges × power × hours. */
export function factorTable(bins: readonly Compared[], units: Units): Table {
  const { measure } = bins[0].beside;
  const points = measure !== 'costPerBushel';
  const known = bins.filter((one) => one.beside.cost.value !== null);
  return {
    id: 'factors',
    caption: 'Each cost as a product: price × charges × power × hours',
    folded: foldedFor(bins),
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'price', label: 'Energy price', quantity: 'money per kWh' },
      { key: 'charges', label: 'All charges over energy’s', quantity: 'times' },
      { key: 'power', label: 'Power for the grain', quantity: 'power per grain' },
      {
        key: 'hours',
        label: points ? 'All fan hours for a point' : 'Fan hours',
        quantity: points ? 'hours per point' : 'hours',
      },
      {
        key: 'energy',
        label: 'Energy: power × hours',
        quantity: points ? 'energy per grain point' : 'energy per grain',
      },
      { key: 'cost', label: 'Cost', quantity: costQuantity(measure) },
    ],
    rows: known.map((one) => {
      const { review, beside } = one;
      const { factors } = beside;
      const none = withheld(beside.factorsWhy ?? 'Not known.');
      return {
        bin: review.bin.name,
        price: factors?.price ?? none,
        charges: factors?.charges ?? none,
        power: factors === null ? none : perGrain(scaled(factors.power, 1000), review, units),
        hours: factors?.hours ?? none,
        energy: factors === null ? none : perGrain(factors.energy, review, units),
        cost: costShown(one, units),
      };
    }),
    empty: 'no bin has a cost to part.',
  };
}

const RATIO_COLUMNS = [
  ['cost', 'Cost'],
  ['price', 'Energy price'],
  ['charges', 'Charges over energy’s'],
  ['power', 'Power for the grain'],
  ['hours', 'Fan hours'],
  ['energy', 'Energy: power × hours'],
] as const;

/** How many times the cheapest each bin cost, and each factor of it. */
export function ratioTable(bins: readonly Compared[], all: readonly Compared[], units: Units): Table {
  return {
    id: 'times',
    caption: 'How many times the other bin: cost = price × charges × power × hours',
    folded: foldedFor(bins),
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'against', label: 'Against', quantity: null },
      ...RATIO_COLUMNS.map(([key, label]) => ({ key, label, quantity: 'times' as const })),
    ],
    rows: held(bins).map((one) => {
      const ratio = ratioShown(one, all, units);
      const { factors, energy, times, againstId } = ratio;
      return {
        bin: one.review.bin.name,
        against: nameOf(all, againstId),
        cost: times,
        price: factors.price.times,
        charges: factors.charges.times,
        power: factors.power.times,
        hours: factors.hours.times,
        energy: energy.times,
      };
    }),
    empty: 'no bin has another to be held against.',
  };
}

/** What part of the difference each factor is; only where the costs can be told apart. */
export function shareTable(bins: readonly Compared[], all: readonly Compared[]): Table {
  const share = ({ share: of }: FactorRatio): Cell => of;
  return {
    id: 'shares',
    caption: 'Share of each factor in the difference (of its logarithm); below zero: it pulled the other way',
    folded: 'on screen',
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'against', label: 'Against', quantity: null },
      ...RATIO_COLUMNS.slice(1).map(([key, label]) => ({ key, label, quantity: 'share of difference' as const })),
    ],
    rows: held(bins).map(({ review, beside }) => {
      const { factors, energy, againstId } = beside.ratio as CostRatio;
      return {
        bin: review.bin.name,
        against: nameOf(all, againstId),
        price: share(factors.price),
        charges: share(factors.charges),
        power: share(factors.power),
        hours: share(factors.hours),
        energy: share(energy),
      };
    }),
    empty: 'no bin has another to be held against.',
  };
}
