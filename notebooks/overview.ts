import {
  airflowLead,
  airflowTable,
  allFindings,
  binsEndedWet,
  binsToSample,
  brokenBins,
  byCost,
  CAUTION_SOURCES,
  capital,
  cautionsFor,
  contradictedBins,
  costFigure,
  counted,
  cropOf,
  defineNotebook,
  dryingSaid,
  fanHoursTotal,
  fansSaid,
  givenAwayLead,
  grainFrom,
  grainTable,
  isToDo,
  knownTotal,
  listed,
  methodsOf,
  perGrain,
  section,
  sentence,
  sharedHoursNotes,
  totalKey,
  tradeTable,
  worthSection,
} from '../src/notebook.ts';

export default defineNotebook(
  {
    id: 'overview',
    title: 'Overview',
    question: 'What did the fans do this season, and what did a point cost?',
  },
  ({ loaded, review, units }) => {
    const { bins } = review;
    const hours = fanHoursTotal(bins);
    const energy = knownTotal(bins.map((one) => one.fan.energyKwh));
    const cost = knownTotal(bins.map((one) => one.fan.cost));
    const givenAway = knownTotal(bins.map((one) => one.moisture.overdryingLoss));
    const pointCosts = bins.map((one) => ({
      name: one.bin.name,
      cost: perGrain(one.unitCosts.perBushelPoint, one, units),
    }));
    const priced = byCost(pointCosts).length;
    const sampled = binsToSample(bins);
    const wet = binsEndedWet(bins);
    const several = bins.length !== 1;
    const todo = allFindings(loaded, review).filter(isToDo).length;
    return {
      answer: `${fansSaid(hours, cost, units)}; ${dryingSaid(bins, pointCosts, units)}.`,
      keyNumbers: [
        totalKey('Fan hours of all bins', 'hours', hours),
        totalKey('Energy', 'energy', energy),
        totalKey('Cost of the fans', 'money', cost),
        totalKey('Lost to over-drying', 'money', givenAway),
      ],
      sections: [
        section('bins', 'Fans and cost, bin by bin', () => ({
          lead:
            bins.length === 1
              ? 'What went in and came out, what the fans did for it, and what that cost.'
              : priced === 0
                ? 'No bin has a cost per point; the notes of the table say why.'
                : `A point has a price in ${priced} of ${counted(bins.length, 'bin')}: where the fans were run to dry, and the points are known.`,
          table: tradeTable(bins, units),
          notes: sharedHoursNotes(bins),
          figures: costFigure(
            'cost-per-point',
            'money per grain point',
            'bought its points cheapest',
            pointCosts,
            units,
          ),
        })),
        section('grain', 'Grain, bin by bin', () => ({
          lead: givenAwayLead(bins, units, loaded.season),
          // One bin's table above tells its grain already.
          table: several ? grainTable(bins, units) : undefined,
          notes: grainFrom(bins),
        })),
        section('worth', 'What the change of moisture was worth', () => worthSection(loaded, bins, units)),
        section('airflow', 'Airflow, bin by bin', () => ({
          lead: airflowLead(bins, units),
          table: airflowTable(bins, units),
        })),
        section('how-run', 'How each bin was run', () => ({
          lead: `${capital(counted(bins.length, 'bin'))}, as season.yaml states them.`,
          entries: bins.map(({ bin }) => ({
            term: bin.name,
            text: `${cropOf(bin.grain.crop).name}, goal: ${bin.goal}. ${sentence(capital(bin.managedAs ?? 'how it was run is not stated'))}`,
          })),
        })),
      ],
      warnings: [
        ...brokenBins(bins),
        ...contradictedBins(bins, units),
        ...(sampled.length === 0
          ? []
          : [`Have the grain of ${counted(sampled.length, 'bin')} sampled (${listed(sampled)}): see Condition.`]),
        ...(wet.length === 0
          ? []
          : [
              `Some grain of ${counted(wet.length, 'bin')} ended too moist to be stored (${listed(wet)}): see Condition.`,
            ]),
        ...(todo === 0
          ? []
          : [`${capital(counted(todo, 'finding'))} in the logs with something to do: see Data quality.`]),
      ],
      cautions: cautionsFor(bins.some((one) => one.bin.goal === 'condition')),
      sources: [...methodsOf('overview').flatMap((method) => method.sourceKeys), ...CAUTION_SOURCES],
    };
  },
);
