import type { DemandWays } from '../analysis/energy/demand-ways-types.ts';
import type { SeasonReview } from '../analysis/types.ts';
import type { Estimate } from '../base/estimate.ts';
import type { SectionBody, Table } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { knownTotal } from './words.ts';

/** What the demand charge would have been, had the fans started apart or taken turns. */
export function demandSection({ demandWays, failures }: SeasonReview, units: Units): SectionBody {
  if (demandWays === undefined) {
    const why = failures?.find((one) => one.startsWith('demand charges:')) ?? 'they could not be worked out';
    return { lead: `Can’t tell what other orders of running would have cost: ${why}.` };
  }
  if (demandWays.length === 0) {
    return { lead: 'No demand charge hangs on the order in which fans ran: no tariff with one has two fans that ran.' };
  }
  const asRun = totalOf(demandWays.map((one) => one.asRun.cost));
  const told = demandWays.filter(({ saving }) => saving.value !== null);
  const lacking = demandWays.find((one) => !told.includes(one));
  // Of months in which no fan ran in the rule's time every order is told, and says nothing.
  if (lacking !== undefined && !told.some((one) => one.asRun.peakKw > 0)) {
    return {
      lead: `${units.say('money', asRun)} of demand as the fans ran. Can’t tell what other orders of running would have cost.`,
      tables: [demandTable(demandWays)],
      notes: [lacking.saving.why ?? '', FANS_ALONE].filter((note) => note !== ''),
    };
  }
  const sumOf = (of: (one: DemandWays) => Estimate) => totalOf(told.map(of));
  const apart = told.reduce((sum, one) => sum + (one.asRun.cost.value ?? 0) - (one.startsApart.cost.value ?? 0), 0);
  const saving = sumOf((one) => one.saving);
  const least = sumOf((one) => one.leastCost);
  const turns = sumOf((one) => one.inTurns.cost);
  const counts = (saving.interval?.[0] ?? 0) > 0 && (saving.value ?? 0) >= 0.5;
  const within = lacking === undefined ? '' : ` in ${told.length} of ${demandWays.length} months of a rule`;
  const inPlaceOf =
    lacking === undefined
      ? ''
      : ` in place of ${units.say(
          'money',
          sumOf((one) => one.asRun.cost),
        )}`;
  return {
    lead: `${units.say('money', asRun)} of demand as the fans ran. ${
      counts
        ? `Had they taken turns${within}, the same hours within the same days would have cost ${units.say('money', turns)}${inPlaceOf}: ${units.say('money', saving)} less.`
        : `Taking turns within the day${within} would have changed nothing worth telling.`
    }`,
    tables: [demandTable(demandWays)],
    notes: [
      ...(lacking === undefined ? [] : [lacking.saving.why ?? '']),
      Math.abs(apart) < 0.5
        ? 'Starting the fans a quarter hour apart alone would have changed nothing: demand is the mean of a quarter hour, so what counts is how many fans run at once, not how they start.'
        : `Starting the fans a quarter hour apart alone makes ${units.say('money', Math.abs(apart))} ${apart > 0 ? 'less' : 'more'}: demand is the mean of a quarter hour, so what counts is how many fans run at once.`,
      ...(counts
        ? [
            `Turns need a controller that sees all fans of the meter, and more starts. A fan in turn meets the air of other hours of the day: what its hours do to the grain changes, and that is not in this number. No order of the same hours of each day could have brought it below ${units.say('money', least)}.`,
          ]
        : []),
      FANS_ALONE,
    ],
  };
}

const FANS_ALONE =
  'Of the fans alone: what else the meter feeds has a peak of its own, which turns of the fans do not lower. Powers are those of the logs, which tell starts and stops to a sample.';

/** The powers of one season are wrong together, as `knownTotal` takes them. */
const totalOf = (parts: readonly Estimate[]) => knownTotal(parts).total;

/** The same where every part is told: beside the cost of all months a sum over some would read as a saving. */
const wholeOf = (parts: readonly Estimate[]) => parts.find(({ value }) => value === null) ?? totalOf(parts);

function demandTable(ways: readonly DemandWays[]): Table {
  const several = ways.some((one) => one.rule > 0);
  return {
    id: 'demand-ways',
    caption: 'Demand cost by month for the same fan hours',
    columns: [
      { key: 'month', label: 'Month', quantity: 'month' },
      { key: 'tariff', label: 'Tariff', quantity: null },
      ...(several ? [{ key: 'rule', label: 'Rule', quantity: null } as const] : []),
      { key: 'asRun', label: 'Cost as run', quantity: 'money' },
      { key: 'apart', label: 'Starts apart', quantity: 'money' },
      { key: 'turns', label: 'In turns', quantity: 'money' },
      { key: 'saving', label: 'Saved by turns', quantity: 'money' },
      { key: 'peak', label: 'Peak as run', quantity: 'power' },
      { key: 'peakTurns', label: 'Peak in turns', quantity: 'power' },
    ],
    rows: ways.map((one) => ({
      month: one.month,
      tariff: one.tariffId,
      rule: String(one.rule + 1),
      peak: one.asRun.peak,
      peakTurns: one.inTurns.peak,
      asRun: one.asRun.cost,
      apart: one.startsApart.cost,
      turns: one.inTurns.cost,
      saving: one.saving,
    })),
    total: {
      month: 'All months',
      asRun: totalOf(ways.map((one) => one.asRun.cost)),
      apart: wholeOf(ways.map((one) => one.startsApart.cost)),
      turns: wholeOf(ways.map((one) => one.inTurns.cost)),
      saving: wholeOf(ways.map((one) => one.saving)),
    },
  };
}
