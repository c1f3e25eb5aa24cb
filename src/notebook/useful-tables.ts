import type { BinReview } from '../analysis/types.ts';
import type { HourGroup, UsefulHours } from '../analysis/useful/useful-hours-types.ts';
import type { Cell, Column, Table } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { dayBandText, outdoorText } from './useful-words.ts';

const NO_LOG = 'No fan of this bin has a log.';

/** Bins with their hours; those of which nothing is known carry their reason. */
export interface BinHours {
  review: BinReview;
  useful: UsefulHours | null;
}

const lacking = (why: string): Cell => ({ value: null, why });

/** Hours for and against each bin's goal, what those against cost, and the hours that the fan was off when it would have paid. */
export function usefulTable(bins: readonly BinHours[]): Table {
  return {
    id: 'useful',
    caption: 'Fan hours for and against the goal',
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'goal', label: 'Goal', quantity: null },
      { key: 'hours', label: 'Fan hours', quantity: 'hours' },
      { key: 'for', label: 'For the goal', quantity: 'hours' },
      { key: 'against', label: 'Against it', quantity: 'hours' },
      { key: 'share', label: 'Share against', quantity: 'share', marked: true },
      { key: 'cost', label: 'Energy cost against', quantity: 'money' },
      { key: 'off', label: 'Off, would have paid', quantity: 'hours' },
    ],
    rows: bins.map(({ review, useful }) => {
      const none = lacking(review.failure ?? review.fan.hours.why ?? NO_LOG);
      return {
        bin: review.bin.name,
        goal: review.bin.goal,
        hours: review.fan.hours,
        for: useful?.forGoal ?? none,
        against: useful?.against ?? none,
        share: useful?.againstShare ?? none,
        cost: useful?.againstCost ?? none,
        off: useful?.offWouldHavePaid ?? none,
      };
    }),
    empty: 'there is no bin in season.yaml.',
  };
}

/** Hours by what the air could do to the bulk of the grain. */
export function classTable(bins: readonly BinHours[]): Table {
  const told = withHours(bins);
  const classes = [
    ['dry', 'Dry'],
    ['rewet', 'Rewet'],
    ['cool', 'Cool'],
    ['warm', 'Warm'],
    ['little', 'Next to nothing'],
    ['unknown', 'Not known'],
    ...(told.some(({ useful }) => (useful.hours.empty.value ?? 0) > 0.05) ? [['empty', 'No grain in']] : []),
  ] as const;
  return {
    id: 'classes',
    caption: 'Fan hours by what their air could do to the grain',
    folded: true,
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      ...classes.map(([key, label]): Column => ({ key, label, quantity: 'hours' })),
    ],
    rows: told.map(({ review, useful }) => ({
      bin: review.bin.name,
      ...Object.fromEntries(classes.map(([key]) => [key, useful.hours[key as keyof typeof useful.hours]])),
    })),
    empty: 'no bin has a fan log.',
  };
}

/** What the air could do to the layer that it met first. */
export function entryTable(bins: readonly BinHours[]): Table {
  const none = lacking('No moisture sensor hangs where the air enters.');
  return {
    id: 'entry',
    caption: 'The layer where the air enters: fan hours that could dry and rewet it',
    folded: 'on screen',
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'height', label: 'Height', quantity: 'length', known: 'stated' },
      { key: 'dry', label: 'Dry', quantity: 'hours' },
      { key: 'rewet', label: 'Rewet', quantity: 'hours' },
      { key: 'over', label: 'Dry, though under its target', quantity: 'hours' },
    ],
    rows: withHours(bins).map(({ review, useful }) => ({
      bin: review.bin.name,
      height: useful.entryLayer?.heightM ?? none,
      dry: useful.entryLayer?.dry ?? none,
      rewet: useful.entryLayer?.rewet ?? none,
      over:
        useful.entryLayer === null
          ? none
          : (useful.entryLayer.overdried ?? lacking('The goal is not to dry, or no target moisture is stated.')),
    })),
    empty: 'no bin has a fan log.',
  };
}

/** Fan hours by month, by three hours of the day, and by outdoor air; a row a bin and part. */
export function groupTables(bins: readonly BinHours[], units: Units): Table[] {
  const of = (
    id: string,
    caption: string,
    part: Omit<Column, 'key'>,
    groups: (useful: UsefulHours) => readonly HourGroup[],
    text: (key: string) => string,
  ): Table => ({
    id,
    caption,
    folded: 'on screen',
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'part', ...part },
      { key: 'hours', label: 'Fan hours', quantity: 'hours' },
      { key: 'for', label: 'For the goal', quantity: 'hours' },
      { key: 'against', label: 'Against it', quantity: 'hours' },
      { key: 'unclassed', label: 'Not classed', quantity: 'hours', known: 'measured' },
    ],
    rows: withHours(bins).flatMap(({ review, useful }) =>
      groups(useful).map((group) => ({
        bin: review.bin.name,
        part: text(group.key),
        hours: group.hours,
        for: useful.why === null ? group.forGoal : lacking(useful.why),
        against: useful.why === null ? group.against : lacking(useful.why),
        unclassed: group.unclassed,
      })),
    ),
    empty: 'no bin has a fan log.',
  });
  return [
    of('hours-by-month', 'Fan hours by month', { label: 'Month', quantity: 'month' }, (one) => one.months, String),
    of(
      'hours-by-time',
      'Fan hours by hour of the day, local',
      { label: 'Hours', quantity: null },
      (one) => one.hoursOfDay,
      dayBandText,
    ),
    of(
      'hours-by-weather',
      'Fan hours by the outdoor air of the moment',
      { label: 'Outdoor air', quantity: null },
      (one) => one.outdoor,
      (key) => outdoorText(key, units),
    ),
  ];
}

export function withHours(bins: readonly BinHours[]): { review: BinReview; useful: UsefulHours }[] {
  return bins.flatMap(({ review, useful }) => (useful === null ? [] : [{ review, useful }]));
}
