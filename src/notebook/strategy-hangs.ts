import type { HangsOn } from '../analysis/what-if/hangs-on.ts';
import { runsOf } from '../analysis/what-if/what-if-summary.ts';
import { NO_PRICE } from '../analysis/what-if/what-if-types.ts';
import { listed } from '../base/listed.ts';
import type { Table } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import type { Outcome } from '../simulation/run/outcome.ts';
import { missingRule } from './no-rule.ts';
import type { Played } from './strategy-words.ts';
import { quoted } from './words.ts';

const PARTS = {
  'as fitted': 'as fitted',
  layers: 'layers',
  steps: 'steps',
  isotherm: 'isotherm',
  rate: 'drying rate',
} as const;
/** Under it the books of a run close, as fractions of what went through them. */
const CLOSES = 1e-9;
/** Below it two decimals of a point show nothing. */
const LEAST_TOLD_WB = 0.00005;
/** Of a cost, from where on a reader has to know that the bed's own cut moves it. Our choice. */
const MATTERS = 0.01;
/** Of a whole, beyond which a move is told as a number. */
const LEAST_TOLD_SHARE = 0.001;

/** What a bin's numbers hang on: the same runs with one part of the bed's physics changed and nothing fitted anew. */
export function hangsTable(one: Played): Table {
  const { whatIf, review, pick } = one;
  const known = 'by the model';
  const none = { value: null, why: missingRule(one) ?? NO_PRICE };
  return {
    id: `hangs-${review.bin.id}`,
    caption: `${review.bin.name}: what its numbers hang on`,
    folded: true,
    columns: [
      { key: 'part', label: 'Changed', quantity: null },
      { key: 'title', label: 'To', quantity: null },
      { key: 'logged', label: 'Moisture at the end, as logged', quantity: 'moisture', known },
      { key: 'temp', label: 'Temperature at the end, as logged', quantity: 'temperature', known },
      {
        key: 'hours',
        label: `Fan hours, ${pick === null ? 'no rule' : quoted(pick.title.toLowerCase())}`,
        quantity: 'hours',
        known,
      },
      { key: 'cost', label: 'Its cost', quantity: 'money', known },
      { key: 'reaches', label: 'Reaches the target', quantity: null },
    ],
    rows: whatIf.hangsOn.map(({ part, title, logged, pick: run }) => ({
      part: PARTS[part],
      title,
      logged: logged.endMoistureWb,
      temp: logged.endTempC,
      hours: run?.fanHours ?? none,
      cost: run === null || Number.isNaN(run.cost) ? none : run.cost,
      reaches: run === null ? '' : run.reachedTarget ? 'yes' : 'no',
    })),
  };
}

/** How far the choices move the end of the season as logged and what the rule taken would cost, and that the books close; a sentence or two each. */
export function hangsNotes({ whatIf, pick }: Played, units: Units): string[] {
  const [fitted, ...others] = whatIf.hangsOn;
  if (fitted === undefined) return [];
  const points = (wb: number) =>
    wb < LEAST_TOLD_WB
      ? `less than ${units.say('points, fine', 100 * 2 * LEAST_TOLD_WB)}`
      : units.say('points, fine', 100 * wb);
  const ends = movesOf(others, (runs) =>
    points(most(runs.map(({ logged }) => Math.abs(logged.endMoistureWb - fitted.logged.endMoistureWb)))),
  );
  return [
    `With nothing fitted anew the moisture at the end of the season as logged moves ${ends}.`,
    ...ruleNotes(fitted.pick, others, pick?.title ?? null, units),
    booksSaid([...runsOf(whatIf).map(({ outcome }) => outcome), ...others.map(({ logged }) => logged)]),
  ];
}

/** What the rule taken comes to with the bed changed, and what that means for its cost. */
function ruleNotes(of: Outcome | null, others: readonly HangsOn[], title: string | null, units: Units): string[] {
  if (of === null || title === null) return [];
  const runs = others.flatMap(({ part, title: to, pick }) => (pick === null ? [] : [{ part, to, pick }]));
  const moved = (key: 'fanHours' | 'cost', some: typeof runs) =>
    most(some.map(({ pick }) => Math.abs(pick[key] - of[key])));
  const share = (key: 'fanHours' | 'cost', some: typeof runs) => shareSaid(moved(key, some), of[key], units);
  const priced = of.cost > 0;
  const moves = movesOf(runs, (some) =>
    priced ? `${share('fanHours', some)} and ${share('cost', some)}` : share('fanHours', some),
  );
  const missed = runs.filter(({ pick }) => !pick.reachedTarget).map(({ to }) => to);
  const cut = runs.filter(({ part }) => part === 'layers' || part === 'steps');
  return [
    `Of the rule “${title.toLowerCase()}” ${priced ? 'fan hours and cost' : 'fan hours'} move ${moves}.${missed.length === 0 ? '' : ` It misses its target with ${listed(missed)}.`}`,
    ...(priced && cut.length > 0
      ? [
          `How finely the bed is cut is a choice, not a finding, and moves the cost of that rule by ${units.say('money', moved('cost', cut))} (${share('cost', cut)})${moved('cost', cut) > MATTERS * of.cost ? ': no cost by this model is surer than that, and rules whose costs lie closer together are as good as equal' : ', which is little'}.`,
        ]
      : []),
  ];
}

function shareSaid(moved: number, whole: number, units: Units): string {
  return moved < LEAST_TOLD_SHARE * whole
    ? `less than ${units.say('share', LEAST_TOLD_SHARE)}`
    : units.say('share', moved / whole);
}

const WITH = {
  layers: 'half as deep layers',
  steps: 'half as long steps',
  isotherm: 'another published isotherm of the crop at the most',
  rate: 'another drying rate at the most',
} as const;

/** `by … with half as deep layers; by … with …`: what each part that was changed moves. */
function movesOf<T extends Pick<HangsOn, 'part'>>(runs: readonly T[], said: (some: T[]) => string): string {
  const parts = (Object.keys(WITH) as (keyof typeof WITH)[]).flatMap((part) => {
    const some = runs.filter((one) => one.part === part);
    return some.length === 0 ? [] : [`by ${said(some)} with ${WITH[part]}`];
  });
  return parts.join('; ');
}

const most = (moves: readonly number[]) => Math.max(0, ...moves);

function booksSaid(outcomes: readonly Outcome[]): string {
  const open = Math.max(...outcomes.flatMap(({ imbalance }) => [Math.abs(imbalance.water), Math.abs(imbalance.heat)]));
  return open < CLOSES
    ? 'Water and heat of every run balance: of what came and went less than a billionth is unaccounted for.'
    : `Water and heat do not balance in every run: up to ${open.toExponential(1)} of what came and went is unaccounted for, which is a fault of the kit.`;
}
