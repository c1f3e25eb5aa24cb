import { seasonFront } from '../../analysis/fronts/season-front.ts';
import type { BinReview, SeasonReview } from '../../analysis/types.ts';
import { listed } from '../../base/listed.ts';
import type { Cell, KeyNumber, SectionBody, Table } from '../../report/page.ts';
import type { Units } from '../../report/units.ts';
import type { LoadedSeason } from '../../season/loaded.ts';
import { sensorSeries } from '../../tables/sensors.ts';
import { allFindings } from '../all-findings.ts';
import { momentEstimate } from '../bin-table.ts';
import { dryingSaid } from '../cheapest.ts';
import { binsEndedWet, binsToSample } from '../condition-words.ts';
import { isToDo } from '../load-tables.ts';
import { grainAmount, perGrain } from '../per-grain.ts';
import { fanHoursTotal, sharedHoursNotes } from '../shared-fans.ts';
import { counted, fansSaid, type KnownTotal, knownTotal, sentence, totalKey } from '../words.ts';
import { gainSaid } from '../worth-section.ts';
import { grouped } from './grouped.ts';
import { largestFindings } from './largest-findings.ts';
import { type Measure, worthTelling } from './measure.ts';
import { valueTotals } from './value-section.ts';

/** Bins in the summary's table: it stays one sheet. */
const MOST_BINS = 8;
/** One note for all bins of other goals: a line for each would carry the summary over its sheet. */
const NOT_DRIED: Cell = {
  value: null,
  why: 'The fans were not run to dry the grain, so a cost per point removed has no meaning.',
};
/** Measures named under what to do. */
const FIRST_MEASURES = 3;

/** The first sentence of the report. */
export function yearEndAnswer({ bins }: SeasonReview, units: Units): string {
  const hours = fanHoursTotal(bins);
  const cost = knownTotal(bins.map((one) => one.fan.cost));
  const pointCosts = bins.map((one) => ({
    name: one.bin.name,
    cost: perGrain(one.unitCosts.perBushelPoint, one, units),
  }));
  return `${fansSaid(hours, cost, units).replace(/^Your fans/, 'The fans')}; ${dryingSaid(bins, pointCosts, units)}.`;
}

/** What came in, what it took, and what it was worth. */
export function yearEndKeys(loaded: LoadedSeason, { bins }: SeasonReview, units: Units): KeyNumber[] {
  const value = valueTotals(loaded, bins);
  return [
    totalKey('Grain stored', 'grain', knownTotal(bins.map((one) => grainAmount(one, units)))),
    totalKey('Energy of the fans', 'energy', knownTotal(bins.map((one) => one.fan.energyKwh))),
    totalKey('Cost of the fans', 'money', knownTotal(bins.map((one) => one.fan.cost))),
    {
      label: 'Gained or lost by moisture, less the fans',
      quantity: 'money',
      amount: value.net,
      note: value.of ?? undefined,
    },
  ];
}

export function summarySection(
  loaded: LoadedSeason,
  review: SeasonReview,
  measures: readonly Measure[],
  units: Units,
): SectionBody {
  const { bins } = review;
  const value = valueTotals(loaded, bins).net;
  const findings = largestFindings(loaded.season, review, measures, units);
  return {
    lead:
      value.value === null
        ? ''
        : `Sold as it came out instead of as it went in, and less the fans, the grain brought ${gainSaid(value, units)}.`,
    table: bins.length === 0 ? undefined : summaryTable(bins, units),
    notes: sharedHoursNotes(bins),
    entries: [
      {
        term:
          findings.length === 1
            ? 'The largest finding'
            : `The ${findings.length === 3 ? 'three ' : ''}largest findings`,
        text: findings.length === 0 ? 'No finding is sure: every interval reaches zero.' : '',
        details: findings,
      },
      { term: 'What to do', text: '', details: whatToDo(loaded, review, measures, units) },
    ],
  };
}

function summaryTable(all: readonly BinReview[], units: Units): Table {
  const cost = (one: BinReview) => one.fan.cost.value ?? one.fan.hours.value ?? 0;
  const bins = all.length <= MOST_BINS ? all : [...all].sort((a, b) => cost(b) - cost(a)).slice(0, MOST_BINS);
  const whole = ({ total, of }: KnownTotal) => (of === null ? total : { value: null, why: `Known of ${of}.` });
  return {
    id: 'summary',
    caption:
      bins.length < all.length
        ? `The ${bins.length} bins that cost most, of ${all.length}; the others stand under Bin by bin`
        : 'Grain, fans and money, bin by bin',
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'grain', label: 'Grain', quantity: 'grain' },
      { key: 'in', label: 'Moisture in', quantity: 'moisture' },
      { key: 'out', label: 'Moisture out', quantity: 'moisture' },
      { key: 'hours', label: 'Fan hours', quantity: 'hours' },
      { key: 'cost', label: 'Cost', quantity: 'money' },
      { key: 'perGrain', label: `Cost per ${units.system === 'us' ? 'bushel' : 'tonne'}`, quantity: 'money per grain' },
      {
        key: 'perPoint',
        label: `Cost per ${units.system === 'us' ? 'bushel' : 'tonne'}-point`,
        quantity: 'money per grain point',
      },
    ],
    rows: bins.map((one) => ({
      bin: one.bin.name,
      grain: grainAmount(one, units),
      in: momentEstimate(one.moisture.start, one.moisture.why),
      out: momentEstimate(one.moisture.end, one.moisture.why),
      hours: one.fan.hours,
      cost: one.fan.cost,
      perGrain: perGrain(one.fan.costPerBushel, one, units),
      perPoint: one.bin.goal === 'dry' ? perGrain(one.unitCosts.perBushelPoint, one, units) : NOT_DRIED,
    })),
    total:
      all.length < 2
        ? undefined
        : {
            bin: 'All bins',
            hours: whole(fanHoursTotal(all)),
            cost: whole(knownTotal(all.map((one) => one.fan.cost))),
          },
  };
}

/** The first measures, the sensors to mend, and bins whose cooling did not come through. */
function whatToDo(loaded: LoadedSeason, review: SeasonReview, measures: readonly Measure[], units: Units): string[] {
  const clear = grouped(worthTelling(measures, review.bins), (saving) => units.say('money', saving)).slice(
    0,
    FIRST_MEASURES,
  );
  const todo = allFindings(loaded, review).filter(isToDo).length;
  const series = sensorSeries(loaded.tables.readings);
  const held = review.bins.filter((one) => seasonFront(one, series).verdict === 'held').map(({ bin }) => bin.name);
  const sampled = binsToSample(review.bins);
  const wet = binsEndedWet(review.bins);
  const broken = review.bins.filter(({ failure }) => failure !== null).map(({ bin }) => bin.name);
  const out = [
    ...clear.map((one) => one.todo),
    ...(sampled.length === 0
      ? []
      : [
          `Have ${sampled.length > 4 ? counted(sampled.length, 'bin') : listed(sampled)} sampled for mould: storage time used up, or warming (see Condition).`,
        ]),
    ...(wet.length === 0
      ? []
      : [
          `Probe ${wet.length > 4 ? counted(wet.length, 'bin') : listed(wet)}: some grain ended too moist to be stored; dry, cool or move it before warm weather (see Condition).`,
        ]),
    ...(held.length === 0
      ? []
      : [
          `Probe ${held.length > 4 ? counted(held.length, 'bin') : listed(held)} before warm weather: the cooling front did not come through everywhere.`,
        ]),
    ...(todo === 0
      ? []
      : [
          `Mend what ${counted(todo, 'finding')} in the logs ask${todo === 1 ? 's' : ''} for, so that next year’s numbers are surer.`,
        ]),
    ...(broken.length === 0 ? [] : [`${listed(broken)} could not be worked out; see Warnings.`]),
  ];
  return out.length === 0 ? [sentence('Nothing that the numbers carry')] : out;
}
