import {
  againstTotal,
  type BinReview,
  billSection,
  brokenBins,
  CAUTION_SOURCES,
  cautionsFor,
  clockDoubts,
  costFigure,
  defineNotebook,
  demandOf,
  demandSection,
  dryingSection,
  dryingSources,
  fanClockFigure,
  fanHoursTotal,
  heaterRows,
  knownTotal,
  listed,
  methodsOf,
  monthSection,
  namedTable,
  perGrain,
  section,
  sentence,
  sharedHoursNotes,
  sourceSection,
  tariffTable,
  totalKey,
  tradeTable,
  type Units,
  unknownHoursKey,
  unknownHoursTotal,
  usefulSection,
} from '../src/notebook.ts';

export default defineNotebook(
  {
    id: 'fan-energy',
    title: 'Fans, energy and cost',
    question: 'How long did the fans run, and where did the money go?',
  },
  ({ loaded, review, units }) => {
    const { bins } = review;
    const hours = fanHoursTotal(bins);
    const unknown = unknownHoursTotal(bins);
    const cost = knownTotal(bins.map((one) => one.fan.cost));
    const energy = knownTotal(bins.map((one) => one.fan.energyKwh));
    const heat = knownTotal(bins.map((one) => one.fan.heatCost));
    const untold = hours.total.value === null ? null : (energy.total.why ?? cost.total.why);
    const shares = knownTotal(bins.map((one) => one.fan.demandCost));
    const demand = shares.of === null && shares.total.value !== null ? { ...shares, total: demandOf(review) } : shares;
    const grainCosts = bins.map((one) => ({ name: one.bin.name, cost: perGrain(one.fan.costPerBushel, one, units) }));
    return {
      answer:
        hours.total.value === null
          ? 'Can’t tell how long the fans ran, because no bin has a fan log that could be used.'
          : `The fans${hours.of === null ? '' : ` of ${hours.of}`} ran ${units.say('hours', hours.total)}${(unknown.value ?? 0) > 0.05 ? `, with another ${units.say('hours', unknown)} (counted) on which their logs are silent,` : ''} and used ${energy.total.value === null ? 'energy that can’t be told' : units.say('energy', energy.total)}${cost.total.value === null ? '; their cost can’t be told' : ` at ${units.say('money', cost.total)}`}${(demand.total.value ?? 0) > 0 ? `, ${units.say('money', demand.total)} of it for demand` : ''}${cost.total.value !== null && (heat.total.value ?? 0) > 0 ? `, ${units.say('money', heat.total)} of it for heat` : ''}.${untold === null ? '' : ` ${sentence(untold)}`}`,
      keyNumbers: [
        totalKey('Fan hours of all bins', 'hours', hours),
        unknownHoursKey(unknown, hours.of),
        totalKey('Energy', 'energy', energy),
        totalKey('Cost', 'money', cost),
        totalKey('Demand charge within it', 'money', demand),
        totalKey('Fan hours against the goal', 'hours', againstTotal(bins)),
      ],
      sections: [
        ...(bins.length === 1
          ? []
          : [
              section('bins', 'Bin by bin', () => ({
                lead: 'Cost is energy, demand, connected load and heat; fixed and minimum charges stay with the tariff.',
                table: tradeTable(bins, units),
                notes: sharedHoursNotes(bins),
                figures: costFigure('cost-per-grain', 'money per grain', 'cost least for its grain', grainCosts, units),
              })),
            ]),
        section('useful', 'What each fan hour could do', () => usefulSection(bins, units)),
        section('months', 'Month by month', () => monthSection(bins, units)),
        section('tariff', 'What the tariff charged', () => tariffTable(loaded, review, units)),
        section('demand', 'Had the fans taken turns', () => demandSection(review, units)),
        section('bills', 'Beside the bills', () => billSection(review, units)),
        section('drying', 'Energy for what drying did', () => dryingSection(bins, units)),
        section('sources-of-energy', 'Where the energy comes from, fan by fan', () => sourceSection(loaded, review)),
        ...bins.map((one) => section(`bin-${one.bin.id}`, one.bin.name, () => binSection(one, units, bins.length > 1))),
      ],
      warnings: [
        ...brokenBins(bins),
        ...clockDoubts(loaded.load.findings, bins),
        ...review.fans.flatMap(({ misfit }) => misfit ?? []),
        ...bins.flatMap((one) =>
          one.fan.why === null || one.failure !== null ? [] : [`${one.bin.name}: ${sentence(one.fan.why)}`],
        ),
      ],
      cautions: cautionsFor(),
      sources: [
        ...methodsOf('fan-energy').flatMap((method) => method.sourceKeys),
        ...dryingSources(bins),
        ...CAUTION_SOURCES,
      ],
    };
  },
);

/** One bin: the trade's table, how on was told from off, and the clock of its fans. */
function binSection(one: BinReview, units: Units, several: boolean) {
  const { fan } = one;
  const named = [
    { label: 'Hours not known', quantity: 'hours', amount: fan.unknownHours, why: fan.why, known: 'counted' },
    { label: 'Starts', quantity: 'count', amount: fan.starts, why: fan.why },
    { label: 'Energy cost', quantity: 'money', amount: fan.energyCost },
    { label: 'Demand cost', quantity: 'money', amount: fan.demandCost },
    { label: 'Connected load cost', quantity: 'money', amount: fan.connectedCost },
    { label: 'Heat cost', quantity: 'money', amount: fan.heatCost },
    ...heaterRows(fan),
    { label: 'Energy for the grain', quantity: 'energy per grain', amount: perGrain(fan.kwhPerBushel, one, units) },
  ] as const;
  const from = fan.energyFromHow ?? 'Where its energy comes from is not known.';
  return {
    lead:
      fan.hours.value === null
        ? `Can’t tell how long ${one.bin.name} ran: ${sentence(fan.hours.why ?? 'not known')}`
        : `${one.bin.name} ran ${units.say('hours', fan.hours)}${fan.cost.value === null ? '; what it cost can’t be told' : ` and cost ${units.say('money', fan.cost)}`}. ${from}`,
    // On paper the table of all bins says it.
    table: several ? { ...tradeTable([one], units), printed: false as const } : tradeTable([one], units),
    paired: true as const,
    figures: fan.spans.startMs.length === 0 ? [] : [fanClockFigure(one, units)],
    tables: [namedTable('numbers', `More of the fans of ${one.bin.name}: the parts of the cost`, named, units)],
    notes: [
      ...fan.fans.map(
        (each) => `Fan ${each.fanId}: ${sentence(each.how)}${each.misfit === undefined ? '' : ` ${each.misfit}`}`,
      ),
      ...(fan.fans.length > 1
        ? [`Fans ${listed(fan.fans.map((each) => each.fanId))} running together count one bin fan-hour.`]
        : []),
    ],
  };
}
