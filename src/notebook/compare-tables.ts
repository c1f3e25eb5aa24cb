import { cropOf } from '../grain/crops.ts';
import type { Cell, Column, Table } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { foldedFor } from './compare-many.ts';
import { airflowShown, scaled } from './compare-scale.ts';
import { type Compared, costQuantity, costShown, GOAL_DONE, placeText } from './compare-words.ts';
import { grainAmount } from './per-grain.ts';
import { sentence } from './words.ts';

/** Bins of one goal, cheapest first, with their places. */
export function rankTable(bins: readonly Compared[], units: Units): Table {
  const { measure } = bins[0].beside;
  const grain = units.system === 'us' ? 'bushel' : 'tonne';
  const points = measure !== 'costPerBushel';
  const turn = measure === 'costPerBushelPointAdded' ? -1 : 1;
  return {
    id: 'places',
    caption: 'Places by cost, with points, hours and money',
    folded: 'on screen',
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
    caption: 'Airflow, moisture and the air at fill',
    folded: foldedFor(bins),
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'airflow', label: 'Airflow', quantity: 'airflow per grain' },
      { key: 'start', label: 'Moisture in', quantity: 'moisture' },
      { key: 'end', label: 'Moisture out', quantity: 'moisture' },
      { key: 'outdoor', label: 'Outdoor air at fill', quantity: 'temperature', known: 'measured' },
      { key: 'humidity', label: 'Its humidity', quantity: 'share', known: 'measured' },
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
    folded: foldedFor(bins),
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'goal', label: 'Crop and goal', quantity: null },
      { key: 'run', label: 'How it was run', quantity: null },
    ],
    rows: bins.map(({ review: { bin } }) => ({
      bin: bin.name,
      goal: `${cropOf(bin.grain.crop).name}, ${GOAL_DONE[bin.goal]}`,
      run: bin.managedAs ?? (bin.strategy === null ? 'not stated' : `by the rule ${bin.strategy}`),
    })),
    empty: 'there is no bin.',
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
