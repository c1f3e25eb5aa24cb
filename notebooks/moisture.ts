import {
  agreementSection,
  brokenBins,
  CAUTION_SOURCES,
  cautionsFor,
  changeSaid,
  contradictedBins,
  counted,
  defineNotebook,
  errorsSection,
  grainTable,
  known,
  layersSection,
  listed,
  methodsOf,
  moistureFigures,
  moistureSection,
  ratesSection,
  section,
  sentence,
  stagesSection,
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
    const told = bins
      .flatMap((one) => {
        const points = known(one.moisture.pointsRemoved);
        return points === null ? [] : [{ one, points }];
      })
      .sort((a, b) => b.points.value - a.points.value);
    const most = told[0];
    const least = told.at(-1);
    const untold = bins.filter((one) => one.moisture.pointsRemoved.value === null).map((one) => one.bin.name);
    const rest = untold.length === 0 ? '' : ` It can’t be told of ${listed(untold)}.`;
    const stages = stagesSection(bins, units);
    const conditioned = bins.some((one) => one.bin.goal === 'condition');
    return {
      answer:
        most === undefined || least === undefined
          ? 'Can’t tell how many points came out of any bin; each bin’s section says why.'
          : told.length === 1
            ? `${most.one.bin.name} ${changeSaid(most.points, units)}.${rest}`
            : `${most.one.bin.name} ${changeSaid(most.points, units)}, the most; ${least.one.bin.name} ${changeSaid(least.points, units)}${least.points.value < 0 ? '' : ', the least'}.${rest}`,
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
                lead: `The points removed could be told of ${told.length} of ${counted(bins.length, 'bin')}.`,
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
