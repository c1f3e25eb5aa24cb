import { MOST_RATE } from '../analysis/model/fit-parameters.ts';
import type { BinModel } from '../analysis/model/model-types.ts';
import type { Cell, Table } from '../report/page.ts';
import type { Played } from './strategy-words.ts';

type Factor = 'enteringK' | 'rateFactor' | 'heatFactor' | 'wallFactor' | 'respirationFactor';

/** A rate whose range is wider than so many times is hardly told. Our choice; published ones lie apart by a factor of two. */
const WIDE = 4;

/** What each trusted bed was fitted to be, and how sure the log makes it. */
export function fittedTable(bins: readonly Played[]): Table {
  return {
    id: 'fitted',
    caption: 'What was fitted, and how far the log tells it',
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'flow', label: 'Airflow at full depth', quantity: 'airflow' },
      { key: 'bias', label: 'Moisture sensors read too much by', quantity: 'points, fine' },
      { key: 'entering', label: 'Entering air warmer than told by', quantity: 'temperature difference' },
      { key: 'rate', label: 'Drying rate over the published', quantity: 'times' },
      { key: 'sure', label: 'Does the log tell the rate', quantity: null },
      { key: 'heat', label: 'Specific heat over the published', quantity: 'times' },
      { key: 'wall', label: 'Heat through the wall, times the usual', quantity: 'times' },
      { key: 'breath', label: 'Breathing, times the rule’s', quantity: 'times' },
    ],
    rows: bins.map(({ review, whatIf: { model } }) => {
      const why = model.trusted && model.fitted !== null ? null : model.why;
      const or = (cell: Cell): Cell => (why === null ? cell : { value: null, why });
      return {
        bin: review.bin.name,
        flow: or(model.flowM3S),
        bias: or(model.moistureBiasPoints),
        entering: or(ranged(model, 'enteringK')),
        rate: or(ranged(model, 'rateFactor')),
        sure: why === null ? rateSaid(model) : '',
        heat: or(ranged(model, 'heatFactor')),
        wall: or(ranged(model, 'wallFactor')),
        breath: or(ranged(model, 'respirationFactor')),
      };
    }),
  };
}

/** What the table's ranges are, and what a rate far above the published one means. */
export function fittedNotes(bins: readonly Played[]): string[] {
  const drawn = Math.max(0, ...bins.map(({ whatIf }) => whatIf.model.mayBes.length));
  if (drawn === 0) return [];
  return [
    `Airflow and the sensors’ bias carry their 90 % intervals. Ranges of the other values are the lowest and highest of the fit and of ${drawn} bins that go with the log as well, each with all its values moved together by the slopes at the fit. Entering air is told by the plenum’s log, else by outdoor air warmed by the power of fans and heaters, drawn down by outdoor air.`,
    'A layer of the bed that dries some times as fast as published is in balance with the air that leaves it, and faster changes nothing: such a rate is not told by any log, or only that it is at least so fast. A large factor says “in balance” and is no finding about the grain, and its range is too short on the upper side.',
  ];
}

/** The fit's own value, and the lowest and highest of it and of the bins that go with the log. */
function ranged({ fitted, mayBes }: BinModel, of: Factor): Cell {
  if (fitted === null) return null;
  const values = [fitted[of], ...mayBes.map((one) => one.fitted[of])];
  return { value: fitted[of], interval: [Math.min(...values), Math.max(...values)], why: null };
}

function rateSaid({ fitted, mayBes }: BinModel): string {
  const rates = [fitted, ...mayBes.map((one) => one.fitted)].flatMap((one) => (one === null ? [] : [one.rateFactor]));
  const [low, high] = [Math.min(...rates), Math.max(...rates)];
  // A hair below: the bound is reached by a step that is cut short.
  if (high > 0.99 * MOST_RATE) return 'at least so fast';
  return high / low > WIDE ? 'hardly' : 'yes';
}
