import { runsOf } from '../analysis/what-if/what-if-summary.ts';
import type { StrategyOutcome } from '../analysis/what-if/what-if-types.ts';
import { waysToRun } from '../report/figures/ways-to-run.ts';
import type { Cell, Figure, Table } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { adviceFor, type Played, ruleSaid } from './strategy-words.ts';

const missing = (why: string | null): Cell => ({ value: null, why: why ?? 'Not known.' });

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
      { key: 'saving', label: 'Less than as run', quantity: 'money' },
      { key: 'reached', label: 'Reached', quantity: 'day' },
      { key: 'hindsight', label: 'Best in hindsight', quantity: 'money', known: 'by the model' },
    ],
    rows: bins.map(({ review, whatIf, pick, rivals, saving }) => {
      const none = missing(whatIf.why ?? 'No strategy reaches the target.');
      return {
        bin: review.bin.name,
        log: review.fan.cost,
        logged: whatIf.logged?.cost.value ?? missing(whatIf.why),
        pick: ruleSaid({ pick, rivals }) ?? (whatIf.why === null ? 'none reaches the target' : 'withheld'),
        cost: pick?.cost ?? none,
        saving,
        reached: pick?.reachedMs ?? none,
        hindsight:
          whatIf.hindsight?.cost.value ?? missing(whatIf.why ?? 'Every schedule tried uses up too much storage life.'),
      };
    }),
  };
}

const isApart = ({ id }: StrategyOutcome, { whatIf }: Played) =>
  id === whatIf.logged?.id || id === whatIf.hindsight?.id;

/** A bin's ways by cost; none where there are no runs. */
export function strategyFigure(one: Played, units: Units): Figure[] {
  const runs = runsOf(one.whatIf);
  if (runs.length === 0) return [];
  const reaching = one.whatIf.strategies.filter(({ outcome }) => outcome.reachedTarget).length;
  return [
    waysToRun(
      {
        id: `ways-${one.review.bin.id}`,
        title: `${one.review.bin.name}: ${reaching} of ${one.whatIf.strategies.length} strategies ${reaching === 1 ? 'reaches' : 'reach'} the target${one.pick === null ? '' : `, ${ruleSaid(one)?.toLowerCase()} for the least`}`,
        ways: runs.map((run) => ({
          name: run.title,
          cost: run.cost,
          reaches: run.outcome.reachedTarget,
          apart: isApart(run, one),
        })),
        notShown: null,
      },
      units,
    ),
  ];
}

/** Every run of a bin. */
export function runsTable(one: Played): Table {
  const model = 'by the model';
  return {
    id: `runs-${one.review.bin.id}`,
    caption: `${one.review.bin.name}: every way to run it`,
    folded: true,
    columns: [
      { key: 'way', label: 'Way', quantity: null },
      { key: 'hours', label: 'Fan hours', quantity: 'hours', known: model },
      { key: 'energy', label: 'Energy', quantity: 'energy', known: model },
      { key: 'cost', label: 'Cost', quantity: 'money', known: model },
      { key: 'end', label: 'Moisture at the end', quantity: 'moisture', known: model },
      { key: 'wettest', label: 'Wettest layer', quantity: 'moisture', known: model },
      { key: 'temp', label: 'Temperature at the end', quantity: 'temperature', known: model },
      { key: 'life', label: 'Storage life used', quantity: 'share', known: model },
      { key: 'reached', label: 'Target reached', quantity: 'day' },
      { key: 'runs', label: 'Reaches in', quantity: null },
      { key: 'near', label: 'Cheapest or within 5 % of it in', quantity: null },
    ],
    rows: runsOf(one.whatIf).map((run) => ({
      way: run.title,
      hours: run.outcome.fanHours,
      energy: run.outcome.energyKwh,
      cost: run.cost,
      end: run.outcome.endMoistureWb,
      wettest: run.outcome.wettestWb,
      temp: run.outcome.endTempC,
      life: Number.isNaN(run.outcome.lifeUsed)
        ? missing('No storage rule of this crop is known.')
        : run.outcome.lifeUsed,
      reached: run.reachedMs ?? missing('It does not reach the target.'),
      runs: `${run.reaching} of ${run.runs} runs`,
      near: nearSaid(one, run),
    })),
  };
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

/** What to do next fall, bin by bin. */
export function adviceEntries(bins: readonly Played[], units: Units) {
  return bins.map((one) => ({
    term: one.review.bin.name,
    text: adviceFor(one, units),
    details: one.whatIf.why === null ? [] : one.whatIf.model.wouldHelp,
  }));
}

/** The log and the search in hindsight are no rules to choose from. */
function nearSaid({ whatIf: { strategies, near } }: Played, run: StrategyOutcome): Cell {
  const k = strategies.findIndex(({ id }) => id === run.id);
  return k < 0 ? missing('It is no rule to choose for another season.') : `${near[k]} of ${run.runs} runs`;
}
