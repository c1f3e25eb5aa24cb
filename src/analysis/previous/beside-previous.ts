import { type Estimate, withheld } from '../../base/estimate.ts';
import { differenceOf } from '../../base/stats/joined.ts';
import type { BinNumbers, SeasonNumbers } from './previous-shape.ts';

const BESIDE_KINDS = ['hours', 'energyKwh', 'cost', 'points', 'costPerPoint', 'perBushelPoint'] as const;
export type BesideKind = (typeof BESIDE_KINDS)[number];

/** One number of one bin in two seasons. */
export interface Beside {
  kind: BesideKind;
  before: Estimate;
  now: Estimate;
  /** now less before, the seasons' errors taken as independent */
  change: Estimate;
  /** whether the change is more than its interval; null where there is none */
  clear: boolean | null;
}

/** One bin in two seasons. */
export interface BinBeside {
  id: string;
  rows: readonly Beside[];
  /** why the two seasons of the bin are not alike, whole sentences */
  unlike: readonly string[];
}

export interface SeasonsBeside {
  before: string;
  now: string;
  bins: readonly BinBeside[];
  /** bins of this season that the other lacks, and the other way round */
  onlyNow: readonly string[];
  onlyBefore: readonly string[];
}

/** Two seasons of the same bins, told apart by their ids. */
export function besidePrevious(now: SeasonNumbers, before: SeasonNumbers): SeasonsBeside {
  const sameMoney = before.currency === null || before.currency === now.currency;
  const pairs = now.bins.flatMap((one) => {
    const other = before.bins.find(({ id }) => id === one.id);
    return other === undefined ? [] : [{ one, other }];
  });
  return {
    before: before.title,
    now: now.title,
    bins: pairs.map(({ one, other }) => ({
      id: one.id,
      rows: BESIDE_KINDS.map((kind) => besideOf(kind, one, other, sameMoney)),
      unlike: unlikeOf(one, other),
    })),
    onlyNow: now.bins.filter(({ id }) => !pairs.some(({ one }) => one.id === id)).map(({ id }) => id),
    onlyBefore: before.bins.filter(({ id }) => !pairs.some(({ other }) => other.id === id)).map(({ id }) => id),
  };
}

const MONEY: readonly BesideKind[] = ['cost', 'costPerPoint', 'perBushelPoint'];

function besideOf(kind: BesideKind, now: BinNumbers, then: BinNumbers, sameMoney: boolean): Beside {
  const other = !sameMoney && MONEY.includes(kind);
  const before = other ? withheld('The season before is in another currency.') : then[kind];
  const change = differenceOf(now[kind], before);
  const clear =
    change.value === null || change.interval === null ? null : change.interval[0] > 0 || change.interval[1] < 0;
  return { kind, before, now: now[kind], change, clear };
}

function unlikeOf(now: BinNumbers, before: BinNumbers): string[] {
  return [
    ...(now.crop === before.crop ? [] : [`It held ${before.crop} then and ${now.crop} now.`]),
    ...(now.goal === before.goal ? [] : [`Its fans were run to ${before.goal} then and to ${now.goal} now.`]),
  ];
}
