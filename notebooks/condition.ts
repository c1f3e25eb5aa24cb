import {
  agesSection,
  alertSaid,
  besideWeatherSection,
  brokenBins,
  CAUTION_SOURCES,
  cautionsFor,
  conditionAnswer,
  conditionOf,
  conditionSources,
  defineNotebook,
  guidanceSection,
  keptSection,
  methodsOf,
  section,
  warmingSection,
} from '../src/notebook.ts';

export default defineNotebook(
  {
    id: 'condition',
    title: 'Condition',
    question: 'Did the grain keep?',
  },
  ({ review, units }) => {
    const { bins } = review;
    return {
      answer: conditionAnswer(bins, units),
      keyNumbers: bins.map((one) => ({
        label: `${one.bin.name}, storage time used at the worst place`,
        quantity: 'storage time used',
        amount: conditionOf(one).age.worstLifeUsed,
      })),
      sections: [
        section('ages', 'Storage time', () => agesSection(bins, units)),
        section('warming', 'Warming by itself', () => warmingSection(bins, units)),
        section('weather', 'Beside the weather', () => besideWeatherSection(bins)),
        section('guidance', 'Beside published guidance', () => guidanceSection(bins)),
        ...bins.map((one) =>
          section(`bin-${one.bin.id}`, one.bin.name, () => ({ ...keptSection(one, units), paired: true })),
        ),
      ],
      warnings: [
        ...brokenBins(bins),
        ...bins.flatMap((one) => conditionOf(one).alerts.map((alert) => alertSaid(one, alert, units))),
      ],
      cautions: cautionsFor(),
      sources: [
        ...methodsOf('condition').flatMap((method) => method.sourceKeys),
        ...conditionSources(bins),
        ...CAUTION_SOURCES,
      ],
    };
  },
);
