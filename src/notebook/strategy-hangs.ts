import type { HangsOn } from '../analysis/what-if/hangs-on.ts';
import { runsOf } from '../analysis/what-if/what-if-summary.ts';
import type { Table } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import type { Outcome } from '../simulation/run/outcome.ts';
import type { Played } from './strategy-words.ts';

const PARTS = { 'as fitted': 'as fitted', layers: 'layers', isotherm: 'isotherm', rate: 'drying rate' } as const;
/** Under it the books of a run close, as fractions of what went through them. */
const CLOSES = 1e-9;
/** Below it two decimals of a point show nothing. */
const LEAST_TOLD_WB = 0.00005;

/** What a bin's numbers hang on: the same runs with one part of the bed's physics changed and nothing fitted anew. */
export function hangsTable(one: Played): Table {
  const { whatIf, review, pick } = one;
  const known = 'by the model';
  return {
    id: `hangs-${review.bin.id}`,
    caption: `${review.bin.name}: what its numbers hang on`,
    folded: true,
    columns: [
      { key: 'part', label: 'Changed', quantity: null },
      { key: 'title', label: 'To', quantity: null },
      { key: 'logged', label: 'Moisture at the end, as logged', quantity: 'moisture', known },
      { key: 'temp', label: 'Temperature at the end, as logged', quantity: 'temperature', known },
      { key: 'hours', label: `Fan hours, ${pick?.title.toLowerCase() ?? 'no rule'}`, quantity: 'hours', known },
      { key: 'cost', label: 'Its cost', quantity: 'money', known },
      { key: 'reaches', label: 'Reaches the target', quantity: null },
    ],
    rows: whatIf.hangsOn.map(({ part, title, logged, pick: run }) => ({
      part: PARTS[part],
      title,
      logged: logged.endMoistureWb,
      temp: logged.endTempC,
      hours: run?.fanHours ?? { value: null, why: 'No rule reaches the target.' },
      cost: run === null || Number.isNaN(run.cost) ? { value: null, why: 'No rule, or no price.' } : run.cost,
      reaches: run === null ? '' : run.reachedTarget ? 'yes' : 'no',
    })),
  };
}

/** How far the choices move the end of the season as logged, and that the books close; a sentence each. */
export function hangsNotes({ whatIf }: Played, units: Units): string[] {
  const [fitted, ...others] = whatIf.hangsOn;
  if (fitted === undefined) return [];
  const spread = (part: HangsOn['part']) => {
    const off = others.filter((one) => one.part === part).map((one) => offBy(one.logged, fitted.logged));
    return Math.max(0, ...off);
  };
  const points = (wb: number) =>
    wb < LEAST_TOLD_WB
      ? `less than ${units.say('points, fine', 100 * 2 * LEAST_TOLD_WB)}`
      : units.say('points, fine', 100 * wb);
  return [
    `Half as deep layers move the moisture at the end of the season as logged by ${points(spread('layers'))}, another published isotherm of the crop by ${points(spread('isotherm'))} at the most, another drying rate by ${points(spread('rate'))} at the most, with nothing fitted anew.`,
    booksSaid([...runsOf(whatIf).map(({ outcome }) => outcome), ...others.map(({ logged }) => logged)]),
  ];
}

const offBy = (one: Outcome, other: Outcome) => Math.abs(one.endMoistureWb - other.endMoistureWb);

function booksSaid(outcomes: readonly Outcome[]): string {
  const open = Math.max(...outcomes.flatMap(({ imbalance }) => [Math.abs(imbalance.water), Math.abs(imbalance.heat)]));
  return open < CLOSES
    ? 'Water and heat of every run balance: of what came and went less than a billionth is unaccounted for.'
    : `Water and heat do not balance in every run: up to ${open.toExponential(1)} of what came and went is unaccounted for, which is a fault of the kit.`;
}
