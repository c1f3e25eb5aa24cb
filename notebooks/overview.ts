import {
  brokenBins,
  CAUTION_SOURCES,
  capital,
  cautionsFor,
  costByBin,
  counted,
  defineNotebook,
  methodsOf,
  overdryingTable,
  perGrain,
  section,
  sentence,
  sumKnown,
  totalEstimate,
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
    const hours = sumKnown(bins.map((one) => one.fan.hours));
    const energy = totalEstimate(bins.map((one) => one.fan.energyKwh));
    const cost = totalEstimate(bins.map((one) => one.fan.cost));
    const priced = bins
      .map((one) => ({ one, cost: perGrain(one.unitCosts.perBushelPoint, one, units) }))
      .filter(({ cost: of }) => of.value !== null)
      .sort((a, b) => (a.cost.value ?? 0) - (b.cost.value ?? 0));
    const cheapest = priced[0];
    const dearest = priced.at(-1);
    const of = hours.lacking === 0 ? '' : ` (${counted(hours.known, 'bin')} of ${bins.length} known)`;
    const ran =
      hours.known === 0
        ? 'Can’t tell how long the fans ran, because no bin has a fan log that could be used'
        : `Your fans ran ${units.say('hours', hours.sum)}${of}, used ${units.say('energy', energy)} and cost ${units.say('money', cost)}`;
    const points =
      cheapest === undefined || dearest === undefined
        ? 'what a point cost can’t be told of any bin; the table says why'
        : `the cheapest point was in ${cheapest.one.bin.name}, at ${units.say('money per grain point', cheapest.cost)}`;
    const lead =
      priced.length < 2 || cheapest === undefined || dearest === undefined
        ? `${capital(points)}.`
        : `${dearest.one.bin.name} paid ${units.say('money per grain point', dearest.cost)}, ${cheapest.one.bin.name} ${units.say('money per grain point', cheapest.cost)}.`;
    return {
      answer: `${ran}; ${points}.`,
      keyNumbers: [
        { label: 'Fan hours of all bins', quantity: 'hours', amount: hours.known === 0 ? null : hours.sum },
        { label: 'Energy', quantity: 'energy', amount: energy },
        { label: 'Cost', quantity: 'money', amount: cost },
      ],
      sections: [
        section('bins', 'Bin by bin', () => ({
          lead,
          table: tradeTable(bins, units),
          figures: [
            costByBin(
              {
                id: 'cost-per-point',
                title:
                  cheapest === undefined
                    ? 'No bin has a cost per point'
                    : `${cheapest.one.bin.name} bought its points cheapest`,
                quantity: 'money per grain point',
                bins: bins.map((one) => ({
                  name: one.bin.name,
                  cost: perGrain(one.unitCosts.perBushelPoint, one, units),
                })),
              },
              units,
            ),
          ],
          tables: [overdryingTable(bins, units)],
        })),
        section('how-run', 'How each bin was run', () => ({
          lead: `${capital(counted(bins.length, 'bin'))}, as season.yaml states them.`,
          entries: bins.map((one) => ({
            term: one.bin.name,
            text: `${capital(one.bin.grain.crop)}, goal: ${one.bin.goal}. ${sentence(capital(one.bin.managedAs ?? 'how it was run is not stated'))}`,
          })),
        })),
      ],
      warnings: [
        ...brokenBins(bins),
        ...loaded.load.findings.flatMap((one) => (one.advice === null ? [] : [one.text])).slice(0, 8),
      ],
      cautions: cautionsFor(bins.some((one) => one.bin.goal === 'condition')),
      sources: [...methodsOf('overview').flatMap((method) => method.sourceKeys), ...CAUTION_SOURCES],
    };
  },
);
