import type { CostFactor, CostRatio, FactorRatio } from '../analysis/compare/comparison.ts';
import { withheld } from '../base/estimate.ts';
import { cropOf } from '../grain/crops.ts';
import type { Cell, Column, Table } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { grainAmount, perGrain } from './bin-table.ts';
import { airflowShown, scaled } from './compare-scale.ts';
import { type Compared, costQuantity, costShown, GOAL_DONE, nameOf, placeText } from './compare-words.ts';
import { sentence } from './words.ts';

/** Bins of one goal, cheapest first, with their places. */
export function rankTable(bins: readonly Compared[], units: Units): Table {
  const { measure } = bins[0].beside;
  const grain = units.system === 'us' ? 'bushel' : 'tonne';
  const points = measure !== 'costPerBushel';
  const turn = measure === 'costPerBushelPointAdded' ? -1 : 1;
  return {
    id: 'places',
    caption: 'Places by cost; bins whose intervals overlap share them',
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'crop', label: 'Crop', quantity: null },
      { key: 'place', label: 'Place', quantity: null },
      { key: 'cost', label: points ? `Cost per ${grain}-point` : `Cost per ${grain}`, quantity: costQuantity(measure) },
      ...(points
        ? [{ key: 'points', label: turn === 1 ? 'Points removed' : 'Points added', quantity: 'points' } as Column]
        : []),
      { key: 'hours', label: 'Fan hours', quantity: 'hours' },
      { key: 'money', label: 'Cost', quantity: 'money' },
      { key: 'grain', label: 'Grain', quantity: 'grain' },
    ],
    rows: bins.map((one) => {
      const { review, beside } = one;
      return {
        bin: review.bin.name,
        crop: cropOf(review.bin.grain.crop).name,
        place: beside.rank === null ? 'not ranked' : `${placeText(beside.rank)} of ${beside.rank.of}`,
        cost: costShown(one, units),
        ...(points ? { points: scaled(review.moisture.pointsRemoved, turn) } : {}),
        hours: review.fan.hours,
        money: review.fan.cost,
        grain: grainAmount(review, units),
      };
    }),
  };
}

/** What stood beside the cost: airflow, moisture, the air at fill, how it was run. */
export function besideTable(bins: readonly Compared[], units: Units): Table {
  return {
    id: 'beside',
    caption: 'What stood beside the cost',
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'airflow', label: 'Airflow', quantity: 'airflow per grain' },
      { key: 'start', label: 'Moisture in', quantity: 'moisture' },
      { key: 'end', label: 'Moisture out', quantity: 'moisture' },
      { key: 'outdoor', label: 'Outdoor air at fill, measured', quantity: 'temperature' },
      { key: 'humidity', label: 'Its humidity, measured', quantity: 'share' },
      { key: 'settles', label: 'Grain would settle at', quantity: 'moisture' },
    ],
    rows: bins.map(({ review, beside }) => {
      const { conditions } = beside;
      const { air } = conditions;
      const orAir = (value: number | null): Cell => value ?? { value: null, why: air.why ?? 'Not known.' };
      return {
        bin: review.bin.name,
        airflow: airflowShown(conditions.airflowCfmPerBushel, units),
        start: conditions.startWb,
        end: conditions.endWb,
        outdoor: orAir(air.outdoorC),
        humidity: orAir(air.outdoorRh),
        settles: air.equilibriumWb,
      };
    }),
  };
}

/** How each bin was run, as season.yaml states it. */
export function runTable(bins: readonly Compared[]): Table {
  return {
    id: 'run',
    caption: 'How each was run, as season.yaml states it',
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'goal', label: 'Crop and goal', quantity: null },
      { key: 'run', label: 'How it was run', quantity: null },
      { key: 'rule', label: 'Nearest rule', quantity: null },
    ],
    rows: bins.map(({ review: { bin } }) => ({
      bin: bin.name,
      goal: `${cropOf(bin.grain.crop).name}, ${GOAL_DONE[bin.goal]}`,
      run: bin.managedAs ?? 'not stated',
      rule: bin.strategy ?? 'not stated',
    })),
    empty: 'there is no bin.',
  };
}

/** Each bin's cost as a product: price × charges × power × hours. */
export function factorTable(bins: readonly Compared[], units: Units): Table {
  const { measure } = bins[0].beside;
  const points = measure !== 'costPerBushel';
  const known = bins.filter((one) => one.beside.cost.value !== null);
  return {
    id: 'factors',
    caption: 'Each cost as a product: price × charges × power × hours',
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'price', label: 'Energy price', quantity: 'money per kWh' },
      { key: 'charges', label: 'All charges over energy’s', quantity: 'times' },
      { key: 'power', label: 'Power for the grain', quantity: 'power per grain' },
      {
        key: 'hours',
        label: points ? 'Fan hours for a point' : 'Fan hours',
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

/** Who is not ranked, at what cost, and why. */
export function refusedTable(bins: readonly Compared[], units: Units): Table {
  return {
    id: 'refused',
    caption: 'Not ranked, and why',
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'goal', label: 'Crop and goal', quantity: null },
      { key: 'cost', label: 'Cost', quantity: 'own' },
      { key: 'unit', label: 'Unit', quantity: null },
      { key: 'why', label: 'Why it has no place', quantity: null },
    ],
    rows: bins
      .filter(({ beside }) => beside.rank === null)
      .map((one) => {
        const { bin } = one.review;
        const quantity = costQuantity(one.beside.measure);
        const cost = costShown(one, units);
        return {
          bin: bin.name,
          goal: `${cropOf(bin.grain.crop).name}, ${GOAL_DONE[bin.goal]}`,
          cost: cost.value === null ? { value: null, why: 'See the last column.' } : { of: quantity, amount: cost },
          unit: units.unit(quantity),
          why: sentence(one.beside.why ?? 'Not known.'),
        };
      }),
    empty: 'every bin is ranked.',
  };
}

/** Bins that have another to be held against. */
export function held(bins: readonly Compared[]): Compared[] {
  return bins.filter(({ beside }) => beside.ratio !== null);
}

/** A ratio of numbers per bushel as one of numbers in the shown unit of grain: crops differ in the weight of a bushel. */
export function ratioShown({ review, beside }: Compared, all: readonly Compared[], units: Units): CostRatio {
  const ratio = beside.ratio as CostRatio;
  const other = all.find((one) => one.beside.binId === ratio.againstId)?.review;
  if (units.system === 'us' || other === undefined) return ratio;
  const scale = cropOf(other.bin.grain.crop).legalBushelKg / cropOf(review.bin.grain.crop).legalBushelKg;
  const turned = (of: FactorRatio): FactorRatio => ({ ...of, times: scaled(of.times, scale) });
  const factors: Record<CostFactor, FactorRatio> = { ...ratio.factors, power: turned(ratio.factors.power) };
  return { ...ratio, times: scaled(ratio.times, scale), energy: turned(ratio.energy), factors };
}
