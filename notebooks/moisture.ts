import {
  agreementSection,
  brokenBins,
  CAUTION_SOURCES,
  cautionsFor,
  contradictedBins,
  counted,
  defineNotebook,
  errorsSection,
  grainTable,
  layersSection,
  methodsOf,
  moistureFigures,
  moistureSection,
  pointsLead,
  ratesSection,
  section,
  sentence,
  stagesSection,
  unloggedNotes,
  WATER_SOURCES,
  waterSection,
} from '../src/notebook.ts';

export default defineNotebook(
  {
    id: 'moisture',
    title: 'Moisture',
    question: 'How many points did the fans really take out, and how sure is that?',
  },
  ({ loaded, review, units }) => {
    const { bins } = review;
    const told = bins.filter((one) => one.moisture.pointsRemoved.value !== null);
    const stages = stagesSection(bins, units);
    const conditioned = bins.some((one) => one.bin.goal === 'condition');
    return {
      answer: pointsLead(bins, units),
      keyNumbers: bins.map((one) => ({
        label: `${one.bin.name}, points removed`,
        quantity: 'points',
        amount: one.moisture.pointsRemoved,
      })),
      sections: [
        ...(bins.length === 1
          ? []
          : [
              section('bins', 'Bin by bin', () => ({
                lead: `The points removed can be told of ${told.length === bins.length ? (bins.length === 2 ? 'both bins' : `all ${counted(bins.length, 'bin')}`) : `${told.length} of ${counted(bins.length, 'bin')}`}.`,
                table: grainTable(bins, units),
              })),
            ]),
        section('layers', 'Wet and dry layers', () => layersSection(bins, units)),
        section('agreement', 'Sensors, scale tickets and hand samples', () => agreementSection(bins, units)),
        section('errors', 'Which errors cancel, and which do not', () => errorsSection(bins, units)),
        ...(stages === null ? [] : [section('stages', 'Filled or emptied in steps', () => stages)]),
        section('rates', 'Fan hours against points', () => ratesSection(bins, units)),
        section('water', 'Water by independent ways', () => waterSection(bins, units)),
        ...bins.map((one) =>
          section(`bin-${one.bin.id}`, one.bin.name, () => ({
            ...moistureSection(one, units, bins.length > 1),
            paired: true,
            figures: moistureFigures(one, loaded, units),
          })),
        ),
      ],
      warnings: [
        ...brokenBins(bins),
        ...contradictedBins(bins, units),
        ...unloggedNotes(bins, 'moisture'),
        ...bins.flatMap((one) =>
          one.moisture.why === null || one.failure !== null ? [] : [`${one.bin.name}: ${sentence(one.moisture.why)}`],
        ),
      ],
      cautions: cautionsFor(conditioned),
      sources: [
        ...methodsOf('moisture').flatMap((method) => method.sourceKeys),
        ...CAUTION_SOURCES,
        ...(conditioned ? WATER_SOURCES : []),
      ],
    };
  },
);
