import type { BinReview, SeasonReview } from '../../analysis/types.ts';
import type { Figure, SectionBody } from '../../report/page.ts';
import type { Units } from '../../report/units.ts';
import { aimsAtTemperature } from '../../season/goal.ts';
import type { LoadedSeason } from '../../season/loaded.ts';
import { tradeTable } from '../bin-table.ts';
import { alertSaid, conditionOf } from '../condition-words.ts';
import { fanClockFigure } from '../fan-clock-figure.ts';
import { moistureFigures } from '../moisture-tables.ts';
import { sentence } from '../words.ts';
import { binBuilt, binSaid } from './bin-words.ts';
import type { Measure } from './measure.ts';
import { isClear } from './measure.ts';

/** From so many bins on a bin has one figure beside its table, and no sheet of its own: the document stays readable and light. */
export const MANY_BINS = 13;
/** Measures told on a bin's sheet; all stand in the table of measures. */
const MOST_SEEN = 2;

/** One bin's sheet: first the table that the trade asks for, then what it looked like, then what to do. */
export function binSheet(
  one: BinReview,
  loaded: LoadedSeason,
  { bins }: SeasonReview,
  measures: readonly Measure[],
  units: Units,
): SectionBody {
  const fans = loaded.season.fans.filter(({ id }) => one.bin.fanIds.includes(id));
  const watts = fans.length === 0 ? null : fans.reduce((sum, { nameplateW }) => sum + nameplateW, 0);
  const mine = measures.filter(
    ({ kind, bins: of }) => kind !== 'fans-in-turns' && of.some(({ bin }) => bin.id === one.bin.id),
  );
  const many = bins.length >= MANY_BINS;
  const table = tradeTable([one], units);
  return {
    lead: binSaid(one, units),
    table: many ? undefined : table,
    paired: true,
    figures: one.failure !== null ? [] : figuresOf(one, loaded, units, many),
    tables: many ? [table] : [],
    notes: [
      `${binBuilt(one, watts, units)}${one.fan.energyFromHow === undefined ? '' : ` ${sentence(one.fan.energyFromHow)}`}`,
      ...conditionOf(one)
        .alerts.slice(0, MOST_SEEN)
        .map((alert) => alertSaid(one, alert, units)),
      ...mine
        .filter(isClear)
        .slice(0, MOST_SEEN)
        .map((each) => each.seen),
    ],
  };
}

/** Moisture through time and by height, temperature by height and time with the fan above it, and the fan's clock; of many bins what its goal asks for. */
function figuresOf(one: BinReview, loaded: LoadedSeason, units: Units, many: boolean): Figure[] {
  const first = aimsAtTemperature(one.bin.goal) ? 'temperature-section' : 'over-time';
  const wanted = many ? [first] : ['over-time', 'moisture-section', 'temperature-section'];
  const figures = moistureFigures(one, loaded, units).filter(({ id }) => wanted.includes(id));
  const clock = many || one.fan.spans.startMs.length === 0 ? [] : [fanClockFigure(one, units)];
  return [...figures, ...clock];
}
