import { reachedDay } from '../analysis/strategies/reached-day.ts';
import type { Estimate } from '../base/estimate.ts';
import type { Cell, Table } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { HELD, isHeld, missingRule, noRule, reachingSaid } from './no-rule.ts';
import { dearerAlone, heldAgainst } from './strategy-saving.ts';
import { adviceFor, type Played, ruleSaid } from './strategy-words.ts';

const missing = (why: string | null): Cell => ({ value: null, why: why ?? 'Not known.' });

/** The value of a column without intervals. */
const plain = ({ value, why }: Estimate): Cell => value ?? missing(why);

/** Every bin: as run by log and by model, what the kit would run, the best in hindsight. */
export function strategyTable(bins: readonly Played[]): Table {
  return {
    id: 'bins',
    caption: 'As run, by the rule that the kit would take, and in hindsight',
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'log', label: 'Cost as run, by log', quantity: 'money' },
      { key: 'logged', label: 'As run', quantity: 'money', known: 'by the model' },
      { key: 'pick', label: 'Rule', quantity: null },
      { key: 'cost', label: 'Its cost', quantity: 'money' },
      ...(bins.some(dearerAlone)
        ? [{ key: 'against', label: 'Held against', quantity: 'money', known: 'by the model' } as const]
        : []),
      { key: 'saving', label: 'Less than as run', quantity: 'money' },
      { key: 'reached', label: 'Reached', quantity: 'day' },
      { key: 'hindsight', label: 'Best in hindsight', quantity: 'money', known: 'by the model' },
    ],
    rows: bins.map((one) => {
      const { review, whatIf, pick, saving } = one;
      const none = missing(missingRule(one));
      return {
        bin: review.bin.name,
        log: review.fan.cost,
        logged: whatIf.logged === null ? missing(whatIf.why) : plain(whatIf.logged.cost),
        pick: ruleSaid(one) ?? noneSaid(one),
        cost: pick?.cost ?? none,
        against: heldAgainst(one),
        saving,
        reached: pick === null || pick.reachedMs === null ? none : reachedDay(pick.reachedMs),
        hindsight: hindsightCell(one),
      };
    }),
  };
}

/** In place of a rule. */
function noneSaid(one: Played): string {
  switch (noRule(one)?.kind) {
    case 'held':
      return 'none: to be held';
    case 'unpriced':
      return `${reachingSaid(one.whatIf)}, the cheapest not known`;
    case 'none reaches':
      return 'none reaches the target';
    default:
      return 'withheld';
  }
}

function hindsightCell(one: Played): Cell {
  const { hindsight, why } = one.whatIf;
  if (why !== null) return missing(why);
  if (isHeld(one)) return missing(HELD);
  if (hindsight === null) {
    // A search without prices spends nothing and finds nothing.
    const none = noRule(one);
    return missing(none?.kind === 'unpriced' ? none.why : 'Every schedule tried uses up too much storage time.');
  }
  return hindsight.outcome.reachedTarget ? plain(hindsight.cost) : missing('No schedule tried reaches the target.');
}

/** How near each bin's bed comes to what it has not seen, beside leaving the last reading as it is. */
export function skillTable(bins: readonly Played[]): Table {
  return {
    id: 'models',
    caption: 'The models, judged on the part of the log that they had not seen',
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'trusted', label: 'Model', quantity: null },
      { key: 'temp', label: 'Temperature off by', quantity: 'temperature difference', known: 'measured' },
      { key: 'still', label: 'If nothing had changed', quantity: 'temperature difference', known: 'measured' },
      { key: 'points', label: 'Moisture off by', quantity: 'points', known: 'measured' },
      { key: 'stillPoints', label: 'If nothing had changed', quantity: 'points', known: 'measured' },
      { key: 'trained', label: 'Fan hours fitted to', quantity: 'hours', known: 'measured' },
      { key: 'judged', label: 'Fan hours judged on', quantity: 'hours', known: 'measured' },
    ],
    rows: bins.map(({ review, whatIf: { model } }) => {
      const { trained, unseen, why } = model;
      const or = (value: number | undefined): Cell =>
        value === undefined || Number.isNaN(value) ? missing(why) : value;
      return {
        bin: review.bin.name,
        trusted: model.trusted ? 'trusted' : 'not trusted',
        temp: or(unseen?.misfit.temperatureK),
        still: or(unseen?.persistence.temperatureK),
        points: or(unseen?.misfit.moisturePoints),
        stillPoints: or(unseen?.persistence.moisturePoints),
        trained: or(trained?.fanHours),
        judged: or(unseen?.fanHours),
      };
    }),
  };
}

/** What to do next season, bin by bin. */
export function adviceEntries(bins: readonly Played[], units: Units) {
  return bins.map((one) => ({
    term: one.review.bin.name,
    text: adviceFor(one, units),
    details: one.whatIf.why === null ? [] : one.whatIf.model.wouldHelp,
  }));
}
