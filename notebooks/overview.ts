import {
  brokenBins,
  CAUTION_SOURCES,
  capital,
  cautionsFor,
  costByBin,
  counted,
  cropOf,
  defineNotebook,
  knownTotal,
  methodsOf,
  overdryingTable,
  perGrain,
  section,
  sentence,
  totalKey,
  tradeTable,
} from '../src/notebook.ts';

export default defineNotebook(
  {
    id: 'overview',
    title: 'Overview',
    question: 'What did the fans do this season, and what did a point cost?',
  },
  ({ loaded, review, units }) => {
    const { bins } = review;
    const hours = knownTotal(bins.map((one) => one.fan.hours));
    const energy = knownTotal(bins.map((one) => one.fan.energyKwh));
    const cost = knownTotal(bins.map((one) => one.fan.cost));
    const pointCosts = bins.map((one) => ({
      name: one.bin.name,
      cost: perGrain(one.unitCosts.perBushelPoint, one, units),
    }));
    const priced = pointCosts
      .filter((one) => one.cost.value !== null)
      .sort((a, b) => (a.cost.value ?? 0) - (b.cost.value ?? 0));
    const cheapest = priced[0];
    const dearest = priced.at(-1);
    const fans = [
      hours.total.value === null
        ? 'Can’t tell how long the fans ran'
        : `Your fans ran ${units.say('hours', hours.total)}`,
      energy.total.value === null ? 'can’t tell their energy' : `used ${units.say('energy', energy.total)}`,
      cost.total.value === null ? 'can’t tell their cost' : `cost ${units.say('money', cost.total)}`,
    ];
    const known = hours.of ?? energy.of ?? cost.of;
    const points =
      cheapest === undefined
        ? 'what a point cost can’t be told of any bin, and the table says why'
        : `the cheapest point was in ${cheapest.name}, at ${units.say('money per grain point', cheapest.cost)}`;
    const advice = loaded.load.findings.filter((one) => one.advice !== null).length;
    return {
      answer: `${fans[0]}, ${fans[1]} and ${fans[2]}${known === null ? '' : ` (known of ${known})`}; ${points}.`,
      keyNumbers: [
        totalKey('Fan hours of all bins', 'hours', hours),
        totalKey('Energy', 'energy', energy),
        totalKey('Cost', 'money', cost),
      ],
      sections: [
        section('bins', 'Bin by bin', () => ({
          lead:
            dearest === undefined || cheapest === dearest
              ? `${capital(points)}.`
              : `A point came at ${units.say('money per grain point', cheapest.cost)} in ${cheapest.name} and ${units.say('money per grain point', dearest.cost)} in ${dearest.name}.`,
          table: tradeTable(bins, units),
          figures: [
            costByBin(
              {
                id: 'cost-per-point',
                title:
                  cheapest === undefined
                    ? 'No bin has a cost per point'
                    : `${cheapest.name} bought its points cheapest`,
                quantity: 'money per grain point',
                bins: pointCosts,
              },
              units,
            ),
          ],
          tables: [overdryingTable(bins, units)],
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
        ...(advice === 0
          ? []
          : [`${capital(counted(advice, 'finding'))} in the logs with something to do: see Data quality.`]),
      ],
      cautions: cautionsFor(bins.some((one) => one.bin.goal === 'condition')),
      sources: [...methodsOf('overview').flatMap((method) => method.sourceKeys), ...CAUTION_SOURCES],
    };
  },
);
