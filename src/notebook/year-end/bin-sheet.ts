import type { BinReview, SeasonReview } from '../../analysis/types.ts';
import type { Figure, SectionBody } from '../../report/page.ts';
import type { Units } from '../../report/units.ts';
import type { LoadedSeason } from '../../season/loaded.ts';
import { tradeTable } from '../bin-table.ts';
import { fanClockFigure } from '../fan-clock-figure.ts';
import { moistureFigures } from '../moisture-tables.ts';
import { sentence } from '../words.ts';
import { binBuilt, binSaid } from './bin-words.ts';
import type { Measure } from './measure.ts';
import { isClear } from './measure.ts';

/** From so many bins on a bin's sheet has its two figures of time and no more, for the document's weight. */
const MANY = 20;

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
  const mine = measures.filter((each) => each.bins.length === 1 && each.bins[0].bin.id === one.bin.id);
  return {
    lead: binSaid(one, units),
    table: tradeTable([one], units),
    paired: true,
    figures: one.failure !== null ? [] : figuresOf(one, loaded, units, bins.length >= MANY),
    notes: [
      binBuilt(one, watts, units),
      ...(one.fan.energyFromHow === undefined ? [] : [sentence(one.fan.energyFromHow)]),
      ...mine.filter(isClear).map((each) => each.seen),
    ],
  };
}

/** Moisture through time, temperature by height and time with the fan above it, and the fan's clock. */
function figuresOf(one: BinReview, loaded: LoadedSeason, units: Units, many: boolean): Figure[] {
  const wanted = ['over-time', 'temperature-section', ...(many ? [] : ['moisture-section'])];
  const figures = moistureFigures(one, loaded, units).filter(({ id }) => wanted.includes(id));
  const clock = many || one.fan.spans.startMs.length === 0 ? [] : [fanClockFigure(one, units)];
  return [...figures, ...clock];
}
