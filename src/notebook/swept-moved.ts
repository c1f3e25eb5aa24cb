import type { SensitivityStep } from '../analysis/strategies/sensitivity.ts';
import type { SweepSummary } from '../analysis/strategies/sweep-summary.ts';
import type { Swept } from '../analysis/strategies/swept.ts';
import { AIRFLOW_LAW, VARIED, type Varied } from '../analysis/strategies/variant.ts';
import type { BinReview } from '../analysis/types.ts';
import type { Cell, Entry, SectionBody, Table } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { MODEL, type SweptBin, small, surest, sweptBins, titleOf } from './swept-bins.ts';
import { capital, counted } from './words.ts';

/** A rule of a bin with one thing moved, and as the bin is. */
interface Moved {
  name: string;
  rule: string;
  base: { years: number; reached: number };
  /** by step */
  steps: readonly SensitivityStep[];
}

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
    return { lead: `Can’t tell: no sweep stands here. ${command('all')}` };
  const { summary } = swept;
  const moved = movedBins(varied, summary, reviews, units);
  const others = (Object.keys(VARIED) as Varied[]).filter(
    (one) => one !== varied && !summary.sensitivity.some((step) => step.varied === one),
  );
  if (moved.length === 0)
    return { lead: `Can’t tell: the sweep beside this season did not move the ${WHAT[varied]}. ${command(varied)}` };
  return {
    lead: leadOf(moved, units),
    entries: moved.map((one): Entry => ({ term: one.name, text: movedSaid(one, units) })),
    tables: [movedTable(varied, moved)],
    notes: [
      ...(varied === 'airflow' ? [`${AIRFLOW_LAW} What a fan costs to buy is not in these numbers.`] : []),
      'Told of the rule that brings each bin to its target in most years, the bin as it is or moved, and of these for the least. Costs are means over the same years, moved and as it is. A step that comes to the target later leaves the grain warm or wet for longer; what that does to the grain is not in the cost.',
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
    const { years, reached } = told.reached[0];
    return steps.length === 0
      ? []
      : [{ name: bin.planned.name, rule: titleOf(told.strategy, units), base: { years, reached }, steps }];
  });
}

/** The surest rule of the bin as it is; where none ever reaches, the one that does most often when moved, and of these for the least. */
function ruleOf(bin: SweptBin, steps: readonly SensitivityStep[]): string | undefined {
  const pick = surest(bin);
  if (pick !== null) return pick.one.strategy;
  const cost = ({ cost: { mean } }: SensitivityStep) => mean ?? Number.MAX_VALUE;
  return [...steps].sort((a, b) => b.reached - a.reached || cost(a) - cost(b))[0]?.strategy;
}

/** `with twice the air`, `filled 14 days earlier`, `put in 2 points drier`. */
function stepSaid({ varied, step }: SensitivityStep): string {
  if (varied === 'airflow') return AIRS.get(step) ?? `with ${step} times the air`;
  const by = Math.abs(step);
  if (varied === 'fill-date') return `filled ${counted(by, 'day')} ${step < 0 ? 'earlier' : 'later'}`;
  return `put in ${counted(by, 'point')} ${step < 0 ? 'drier' : 'wetter'}`;
}

const AIRS: ReadonlyMap<number, string> = new Map([
  [0.5, 'with half the air'],
  [0.75, 'with three quarters of the air'],
  [1.25, 'with a quarter more air'],
  [1.5, 'with half as much air again'],
  [2, 'with twice the air'],
]);

/** Share of its years in which a step reaches the target. */
const share = ({ reached, years }: { reached: number; years: number }) => (years === 0 ? 0 : reached / years);

/** A change of less than this part of the cost is none. Our choice. */
const TELLING = 0.02;

const changeOf = ({ costChange, cost: { mean } }: SensitivityStep) =>
  Math.abs(Number(costChange)) < TELLING * Math.abs(mean ?? 0) ? 0 : Number(costChange);

/** The step that reaches in most years, and of these for the least: null where none does better than the bin as it is. */
function better({ base, steps }: Moved): SensitivityStep | null {
  const ranked = steps
    .filter(({ costChange }) => costChange !== null)
    .filter((one) => share(one) > share(base) || (share(one) === share(base) && share(one) > 0 && changeOf(one) < 0))
    .sort((a, b) => share(b) - share(a) || Number(a.costChange) - Number(b.costChange));
  return ranked[0] ?? null;
}

/** The step that misses most often against the bin as it is, and of these the dearest; null where none is worse. */
function worse({ base, steps }: Moved): SensitivityStep | null {
  const ranked = steps
    .filter(({ costChange }) => costChange !== null)
    .filter((one) => share(one) < share(base) || (share(one) === share(base) && changeOf(one) > 0))
    .sort((a, b) => share(a) - share(b) || Number(b.costChange) - Number(a.costChange));
  return ranked[0] ?? null;
}

function outcomeSaid(one: SensitivityStep, base: Moved['base'], units: Units): string {
  const change = changeOf(one);
  const often =
    share(one) === share(base)
      ? `as often (${one.reached} of ${counted(one.years, 'year')})`
      : `in ${one.reached} of ${counted(one.years, 'year')} in place of ${base.reached} of ${base.years}`;
  if (change === 0) return `${often}, for about as much`;
  return `${often}, for ${units.say('money', Math.abs(change))} a season ${change < 0 ? 'less' : 'more'}`;
}

function leadOf(moved: readonly Moved[], units: Units): string {
  const found = moved.flatMap((one) => {
    const step = better(one);
    return step === null ? [] : [{ one, step, gain: share(step) - share(one.base) }];
  });
  found.sort((a, b) => b.gain - a.gain || Number(a.step.costChange) - Number(b.step.costChange));
  const [first] = found;
  if (first === undefined) return 'Nothing that was moved brings a bin to its target more often, or as often for less.';
  const { one, step } = first;
  return `${capital(stepSaid(step))}, ${one.name} would come to its target ${outcomeSaid(step, one.base, units)}, by ${small(one.rule)}.`;
}

function movedSaid(one: Moved, units: Units): string {
  const [up, down] = [better(one), worse(one)];
  const said = (step: SensitivityStep) =>
    `${capital(stepSaid(step))}: at the target ${outcomeSaid(step, one.base, units)}.`;
  if (up === null && down === null) return `By ${small(one.rule)} nothing differs much.`;
  return [
    `By ${small(one.rule)}.`,
    ...(up === null ? ['No step does better than the bin as it is.'] : [said(up)]),
    ...(down === null ? [] : [said(down)]),
  ].join(' ');
}

function movedTable(varied: Varied, moved: readonly Moved[]): Table {
  return {
    id: `moved-${varied}`,
    caption: `Another ${WHAT[varied]}: what each step comes to, means over the years`,
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'rule', label: 'Strategy', quantity: null },
      { key: 'step', label: 'Moved', quantity: null },
      { key: 'years', label: 'Years', quantity: 'count' },
      { key: 'reached', label: 'Years at target', quantity: 'count' },
      { key: 'cost', label: 'Cost', quantity: 'money', known: MODEL },
      { key: 'change', label: 'Over the bin as it is', quantity: 'money', known: MODEL },
      { key: 'end', label: 'Moisture at the end', quantity: 'moisture', known: MODEL },
    ],
    rows: moved.flatMap(({ name, rule, steps }) =>
      steps.map((step) => ({
        bin: name,
        rule,
        step: stepSaid(step).replace(/^with /, ''),
        years: step.years,
        reached: step.reached,
        cost: ranged(step.cost, 1),
        change: step.costChange ?? { value: null, why: 'A year has no cost.' },
        end: ranged(step.endMoisturePct, 0.01),
      })),
    ),
  };
}

/** Mean over the years, from the least to the most. */
function ranged({ mean, least, most }: SensitivityStep['cost'], scale: number): Cell {
  if (mean === null) return { value: null, why: 'No year has one.' };
  return {
    value: scale * mean,
    interval: least === null || most === null ? null : [scale * least, scale * most],
    why: null,
  };
}
