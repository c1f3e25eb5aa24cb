import type { MoistureRates, RatePeriod } from '../analysis/rates/moisture-rates-types.ts';
import { restsOf } from '../analysis/rates/rests.ts';
import type { BinReview } from '../analysis/types.ts';
import { listed } from '../base/listed.ts';
import { monthText } from '../report/date-text.ts';
import { pointsByFanHours } from '../report/figures/points-by-fan-hours.ts';
import type { Cell, Figure, SectionBody, Table } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { known } from './words.ts';

const PERIODS: Readonly<Record<string, string>> = {
  season: 'Start to end',
  line: 'Line through all days',
};

/** How fast the fans changed the moisture: the figure of fan hours and points, and the rates by period. */
export function ratesSection(bins: readonly BinReview[], units: Units): SectionBody {
  const figure = pointsFigure(bins, units);
  return {
    lead: leadOf(bins, units),
    figures: figure === null ? [] : [figure],
    table: ratesTable(
      bins,
      'rates',
      'Points removed by fan hours over the season; below zero where the grain took water up',
      (one) => [one.season, one.line],
    ),
    tables: [{ ...ratesTable(bins, 'rates-by-month', 'The same by month', (one) => one.months), folded: 'on screen' }],
    notes: [
      'Start to end is the points removed over the fan hours between the two moistures. The line through all days and the months are robust lines: the middle of the slopes between all pairs of days, so that a few odd days do not turn them. Their intervals join the scatter of the days, which hang together, with drift and with the grain that no sensor sees.',
      'Fixed errors of the sensors and a bias that they share are the same on all days and cancel.',
      ...bins.flatMap((one) => (one.rates?.notes ?? []).map((note) => `${one.bin.name}: ${note}`)),
    ],
  };
}

function leadOf(bins: readonly BinReview[], units: Units): string {
  const told = bins
    .flatMap((one) => {
      const hours = known(one.rates?.season?.hoursPerPoint ?? { value: null, interval: null, why: '' });
      const up = (one.rates?.season?.perHundredFanHours.value ?? 0) < 0;
      return hours === null ? [] : [{ name: one.bin.name, hours, up }];
    })
    .sort((a, b) => a.hours.value - b.hours.value);
  if (told.length === 0) return 'Can’t tell of any bin how many fan hours a point took.';
  const took = (what: string, of: typeof told) =>
    of.length === 0
      ? []
      : [
          `A point of moisture ${what} took ${listed(of.map(({ name, hours }) => `${units.say('hours', hours)} in ${name}`))}.`,
        ];
  const removed = told.filter(({ up }) => !up);
  return [
    ...took('removed', removed),
    ...took(
      'added',
      told.filter(({ up }) => up),
    ),
  ].join(' ');
}

function pointsFigure(bins: readonly BinReview[], units: Units): Figure | null {
  const drawn = bins.filter((one) => (one.rates?.days.length ?? 0) > 1);
  if (drawn.length === 0) return null;
  const panels = drawn.map((one) => ({ name: one.bin.name, days: restsOf(one.rates?.days ?? []) }));
  return pointsByFanHours(
    {
      id: 'points',
      title: titleOf(drawn, units),
      panels,
      lacking: bins.filter((one) => !drawn.includes(one)).map((one) => one.bin.name),
    },
    units,
  );
}

/** The largest rate that is surely none of zero; it is the fastest only where no other bin's interval reaches its own. */
function titleOf(bins: readonly BinReview[], units: Units): string {
  const told = bins.flatMap((one) => {
    const rate = known(one.rates?.season?.perHundredFanHours ?? { value: null, interval: null, why: '' });
    if (rate === null || rate.interval === null) return [];
    const [low, high] = rate.interval;
    const [least, reach] = [Math.min(Math.abs(low), Math.abs(high)), Math.max(Math.abs(low), Math.abs(high))];
    return [{ name: one.bin.name, rate, size: Math.abs(rate.value), least, reach, sure: low > 0 || high < 0 }];
  });
  const [first] = told.filter(({ sure }) => sure).sort((a, b) => b.size - a.size);
  if (first === undefined) return 'Points removed by fan hours';
  const said = units.say('points per hundred hours', first.rate);
  const reached = told.some((one) => one !== first && one.reach >= first.least);
  return reached
    ? `${first.name} changed by ${said}; others may have been as fast`
    : `${first.name} changed fastest: ${said}`;
}

function ratesTable(
  bins: readonly BinReview[],
  id: string,
  caption: string,
  periods: (of: MoistureRates) => readonly (RatePeriod | null)[],
): Table {
  const row = (name: string, period: RatePeriod): Record<string, Cell> => ({
    bin: name,
    period: PERIODS[period.key] ?? monthText(period.key),
    hours: period.fanHours,
    days: period.key === 'season' ? '' : period.days,
    rate: period.perHundredFanHours,
    hoursPerPoint: period.hoursPerPoint,
    kwh: period.kwhPerPoint,
  });
  return {
    id,
    caption,
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'period', label: 'Period', quantity: null },
      { key: 'hours', label: 'Fan hours', quantity: 'hours', known: 'measured' },
      { key: 'days', label: 'Days read', quantity: 'count' },
      { key: 'rate', label: 'Points removed', quantity: 'points per hundred hours' },
      { key: 'hoursPerPoint', label: 'Fan hours a point', quantity: 'hours' },
      { key: 'kwh', label: 'Energy a point', quantity: 'energy' },
    ],
    rows: bins.flatMap((one) => {
      const told = one.rates == null ? [] : periods(one.rates).filter((period) => period !== null);
      if (one.rates == null || (told.length === 0 && one.fan.hours.value === null)) {
        const why = one.failure ?? one.fan.hours.why ?? 'No fan of this bin has a log.';
        const none: Cell = { value: null, why };
        return [
          {
            bin: one.bin.name,
            period: PERIODS.season,
            hours: none,
            days: '',
            rate: none,
            hoursPerPoint: none,
            kwh: none,
          },
        ];
      }
      return told.map((period) => row(one.bin.name, period));
    }),
    empty: 'no bin has both its fan hours and its moistures told.',
  };
}
