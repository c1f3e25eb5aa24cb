import type { SensitivityStep, StepOutcome } from '../analysis/strategies/sensitivity.ts';
import type { SweepSummary } from '../analysis/strategies/sweep-summary.ts';
import type { Swept } from '../analysis/strategies/swept.ts';
import { AIRFLOW_LAW, VARIED, type Varied } from '../analysis/strategies/variant.ts';
import type { BinReview } from '../analysis/types.ts';
import type { Cell, Entry, SectionBody, Table } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { MODEL, type SweptBin, surest, sweptBins, titleOf } from './swept-bins.ts';
import { daysSaid, LATE_DAYS, MORE_LOSS, type Moved, movedLead, movedSaid, stepSaid } from './swept-moved-words.ts';
import { ranged } from './swept-tables.ts';

const NO_YEAR = 'No year has one.';
const WHAT: Readonly<Record<Varied, string>> = {
  airflow: 'airflow',
  'fill-date': 'fill date',
  'start-moisture': 'start moisture',
};

/** What comes of another fan, fill date or start moisture, by the rule that each bin reaches its target with most surely. */
export function movedSection(
  varied: Varied,
  swept: Swept | undefined,
  reviews: readonly BinReview[],
  units: Units,
): SectionBody {
  if (swept === undefined || swept.summary === null)
    return {
      lead: `Can’t tell. ${swept?.why ?? 'Sweeps are read where a whole season is reviewed.'} ${command('all')}`,
    };
  const { summary } = swept;
  const moved = movedBins(varied, summary, reviews, units);
  const others = (Object.keys(VARIED) as Varied[]).filter(
    (one) => one !== varied && !summary.sensitivity.some((step) => step.varied === one),
  );
  if (moved.length === 0)
    return { lead: `Can’t tell: the sweep beside this season did not move the ${WHAT[varied]}. ${command(varied)}` };
  return {
    lead: movedLead(moved, units),
    entries: moved.map((one): Entry => ({ term: one.name, text: movedSaid(one, units) })),
    tables: [movedTable(varied, moved)],
    notes: [
      ...(varied === 'airflow' ? [`${AIRFLOW_LAW} What a fan costs to buy is not in these numbers.`] : []),
      'Told of the rule that brings each bin to its target in most years, the bin as it is or moved, and of these for the least. Costs are means over the same years, moved and as it is; Cost in other years tells of the middle one. What a step does to the grain is not in the cost: the days on which the target was reached, and the dry matter and storage time lost on the way, stand beside it.',
      `A step that comes to the target more than ${LATE_DAYS} days later in the middle of the years, or loses more than ${MORE_LOSS} times as much, is named as better only where no other is, with that first.`,
      ...(varied === 'start-moisture'
        ? [
            'Grain put in drier has to be dried first, in the field or by heat: what that costs is not in these numbers.',
          ]
        : []),
      ...(varied === 'airflow' ? others.map(command) : []),
    ],
  };
}

/** Whether a sweep moved it. */
export function isMoved(varied: Varied, swept: Swept | undefined): boolean {
  return swept?.summary?.sensitivity.some((step) => step.varied === varied) ?? false;
}

function command(varied: Varied | 'all'): string {
  const what = varied === 'all' ? 'fan, fill date or start moisture' : WHAT[varied];
  return `For another ${what}: npm run sweep -- my-season --no-hindsight --vary ${varied}, with the season’s folder, then the review again.`;
}

function movedBins(varied: Varied, summary: SweepSummary, reviews: readonly BinReview[], units: Units): Moved[] {
  return sweptBins(summary, reviews).flatMap((bin) => {
    const own = summary.sensitivity.filter(
      (step) => step.varied === varied && step.bin === bin.planned.id && step.years > 0,
    );
    const rule = ruleOf(bin, own);
    const told = bin.told.find(({ strategy }) => strategy === rule);
    if (told === undefined) return [];
    const steps = own.filter(({ strategy }) => strategy === rule).sort((a, b) => a.step - b.step);
    return steps.length === 0 ? [] : [{ name: bin.planned.name, rule: titleOf(told.strategy, units), steps }];
  });
}

/** The surest rule of the bin as it is; where none ever reaches, the one that does most often when moved, and of these for the least. */
function ruleOf(bin: SweptBin, steps: readonly SensitivityStep[]): string | undefined {
  const pick = surest(bin);
  if (pick !== null) return pick.one.strategy;
  const cost = ({ cost: { mean } }: SensitivityStep) => mean ?? Number.MAX_VALUE;
  return [...steps].sort((a, b) => b.reached - a.reached || cost(a) - cost(b))[0]?.strategy;
}

function movedTable(varied: Varied, moved: readonly Moved[]): Table {
  return {
    id: `moved-${varied}`,
    caption: `Another ${WHAT[varied]}: what each step comes to, means over the years`,
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'rule', label: 'Strategy', quantity: null },
      { key: 'step', label: 'Moved', quantity: null },
      { key: 'reached', label: 'Years at target', quantity: null },
      { key: 'when', label: 'Target reached by', quantity: null },
      { key: 'cost', label: 'Cost, mean', quantity: 'money', known: MODEL },
      { key: 'change', label: 'Over the bin as it is', quantity: 'money', known: MODEL },
      { key: 'loss', label: 'Dry matter lost', quantity: 'dry matter lost', known: MODEL },
      { key: 'life', label: 'Storage time used', quantity: 'share', known: MODEL },
      { key: 'end', label: 'Moisture at the end', quantity: 'moisture', known: MODEL },
    ],
    rows: moved.flatMap(({ name, rule, steps }) => {
      // Steps may lack years: the bin as it is stands over those of the step that has most.
      const { base } = [...steps].sort((a, b) => b.years - a.years)[0];
      const rowOf = (step: string, of: StepOutcome, change: Cell) => ({
        bin: name,
        rule,
        step,
        reached: `${of.reached} of ${of.years}`,
        when: daysSaid(of) ?? { value: null, why: 'It reaches the target in no year.' },
        cost: ranged(of.cost, NO_YEAR),
        change,
        loss: ranged(of.dryMatterLossPct, 'The crop’s storage rule tells of no dry matter.', 0.01),
        life: ranged(of.storageLifeUsed, 'No storage rule is known for the crop.'),
        end: ranged(of.endMoisturePct, NO_YEAR, 0.01),
      });
      return [
        rowOf('nothing, as it is', base, 0),
        ...steps.map((step) =>
          rowOf(
            stepSaid(step).replace(/^with /, ''),
            step,
            step.costChange ?? { value: null, why: 'A year has no cost.' },
          ),
        ),
      ];
    }),
  };
}
