import type { BinReview } from '../analysis/types.ts';
import { type Estimate, turned } from '../base/estimate.ts';
import { linesOverTime } from '../report/figures/lines-over-time.ts';
import type { Figure } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { conditionOf, localDay, placeSaid } from './condition-words.ts';
import { fanDays } from './fan-days.ts';
import { known } from './words.ts';

/** A bin's storage time used so far, and its grain beside the outdoor air; those that can be drawn. */
export function conditionFigures(one: BinReview, units: Units): Figure[] {
  return [usedFigure(one, units), warmthFigure(one, units)].filter((figure) => figure !== null);
}

function usedFigure(one: BinReview, units: Units): Figure | null {
  const { age } = conditionOf(one);
  const mean = known(age.lifeUsed);
  const worst = known(age.worstLifeUsed);
  if (mean === null || worst === null || age.worst === null || age.days.length < 2) return null;
  const ends = ({ interval }: typeof mean) => (interval === null ? undefined : { low: interval[0], high: interval[1] });
  return linesOverTime(
    {
      id: 'used',
      title: `${one.bin.name} used ${units.say('storage time used', worst)} of its storage time at the worst place`,
      subtitle: 'Storage time used so far, %, by day',
      alt: `The storage time used rose to ${units.say('storage time used', mean)} in the mean of the grain and to ${units.say('storage time used', worst)} at ${placeSaid(age.worst, units)}.`,
      quantity: 'storage time used',
      dayMs: age.days.map((day) => day.dayMs),
      lines: [
        { label: 'mean of the grain', style: 'line', values: age.days.map((day) => day.mean), end: ends(mean) },
        { label: 'place that used most', style: 'dash', values: age.days.map((day) => day.worst), end: ends(worst) },
      ],
      level: { label: 'all of it', value: 1 },
      fromZero: true,
      fanDays: fanDays(one.fan.spans, units.zone),
    },
    units,
  );
}

function warmthFigure(one: BinReview, units: Units): Figure | null {
  const { grainDays, coldest, coldestMs, outdoors } = conditionOf(one);
  const told = grainDays.filter((day) => day.meanC !== null);
  if (told.length < 2) return null;
  const first = told[0].meanC;
  const last = told[told.length - 1].meanC;
  const cold = known(coldest);
  const title = warmthTitle(one, outdoors.mostK, [first, last], units);
  return linesOverTime(
    {
      id: 'warmth',
      title,
      subtitle: `Temperature, ${units.unit('temperature')}, by day`,
      alt: `The mean grain went from ${units.say('temperature', first)} to ${units.say('temperature', last)}${
        cold === null || coldestMs === null
          ? ''
          : `, coldest in the week from ${localDay(units, coldestMs)} at ${units.say('temperature', cold)}`
      }.`,
      quantity: 'temperature',
      dayMs: grainDays.map((day) => day.dayMs),
      lines: [
        { label: 'mean of the grain', style: 'line', values: grainDays.map((day) => day.meanC) },
        {
          label: 'outdoor air, mean of the 30 days before',
          style: 'dash',
          values: grainDays.map((day) => day.outdoorC),
        },
      ],
      band: {
        label: 'coldest to warmest place',
        low: grainDays.map((day) => day.coldestC),
        high: grainDays.map((day) => day.warmestC),
      },
      fanDays: fanDays(one.fan.spans, units.zone),
    },
    units,
  );
}

function warmthTitle({ bin }: BinReview, mostK: Estimate, ends: (number | null)[], units: Units): string {
  const { value } = mostK;
  if (value === null) {
    const [first, last] = ends.map((tempC) => units.say('temperature', tempC));
    return `Mean grain of ${bin.name} went from ${first} to ${last}, measured`;
  }
  const apart = units.say('temperature difference', value < 0 ? turned(mostK) : mostK);
  return value < 0
    ? `The grain of ${bin.name} was always colder than the month’s outdoor air, by ${apart} and more`
    : `${bin.name} was at most ${apart} warmer than the month’s outdoor air`;
}
