import {
  adviceSection,
  agreementSection,
  besideSection,
  binSheet,
  brokenBins,
  CAUTION_SOURCES,
  capital,
  cautionsFor,
  contradictedBins,
  costFigure,
  defineNotebook,
  dryingSaid,
  energySections,
  farmSection,
  givenAwayLead,
  grainFrom,
  grainTable,
  MANY_BINS,
  measuresOf,
  mendSection,
  methodSection,
  modelSection,
  perGrain,
  qualitySection,
  reportSources,
  type Section,
  section,
  summarySection,
  tradeTable,
  valueSection,
  WATER_SOURCES,
  yearEndAnswer,
  yearEndCover,
  yearEndKeys,
} from '../src/notebook.ts';

export default defineNotebook(
  {
    id: 'year-end',
    title: 'Year-end report',
    question: 'What did the season’s fans do, cost and bring, and what next?',
  },
  (input) => {
    const { loaded, review, units } = input;
    const { bins } = review;
    const measures = measuresOf(loaded, review, units);
    const models = modelSection(review, units);
    const conditioned = bins.some((one) => one.bin.goal === 'condition');
    const pointCosts = bins.map((one) => ({
      name: one.bin.name,
      cost: perGrain(one.unitCosts.perBushelPoint, one, units),
    }));
    const within = (of: Section): Section => ({ ...of, within: true });
    const behind = (of: Section): Section => ({ ...of, appendix: true });
    const asIs = (of: Section): Section => of;
    const onNewSheet = (of: Section): Section => ({ ...of, newSheet: true });
    return {
      cover: yearEndCover(input),
      answer: yearEndAnswer(review, units),
      keyNumbers: yearEndKeys(loaded, review, units),
      sections: [
        onNewSheet(section('summary', 'Summary', () => summarySection(loaded, review, measures, units))),
        onNewSheet(section('farm', 'The farm and its bins', () => farmSection(loaded, bins, units))),
        // A farm of a bin or two leaves room for it under the bins.
        (bins.length > 2 ? onNewSheet : asIs)(section('quality', 'Data quality', () => qualitySection(loaded, units))),
        onNewSheet(
          section('grain', 'Grain in and out', () => ({
            lead: givenAwayLead(bins, units, loaded.season),
            table: grainTable(bins, units),
            notes: grainFrom(bins),
          })),
        ),
        within(
          section('agreement', 'Sensors, scale tickets and hand samples', () => {
            const { lead, table, notes = [] } = agreementSection(bins, units);
            return { lead, table, notes: notes.slice(0, 4) };
          }),
        ),
        within(section('value', 'What the change of moisture was worth', () => valueSection(loaded, bins, units))),
        onNewSheet(
          section('bins', 'Bin by bin', () => ({
            lead: `${capital(dryingSaid(bins, pointCosts, units))}. A dash has its reason under the table.`,
            table: bins.length > 1 ? tradeTable(bins, units) : undefined,
            figures: costFigure(
              'cost-per-point',
              'money per grain point',
              'bought its points cheapest',
              pointCosts,
              units,
            ),
          })),
        ),
        ...bins.map((one) => {
          const of = section(`bin-${one.bin.id}`, one.bin.name, () => binSheet(one, loaded, review, measures, units));
          return within(bins.length > 1 && bins.length < MANY_BINS ? onNewSheet(of) : of);
        }),
        ...energySections(loaded, review, measures, units),
        ...(input.beside === undefined
          ? []
          : [onNewSheet(section('before', 'The season before', () => besideSection(input.beside!, loaded, units)))]),
        onNewSheet(section('advice', 'Recommendations', () => adviceSection(loaded, review, measures, units))),
        within(section('mend', 'Sensors and logs to mend', () => mendSection(loaded, review, units))),
        onNewSheet(behind(section('method', 'Method', () => methodSection(loaded.season)))),
        ...(models === null ? [] : [within(behind(section('models', 'How good the models are', () => models)))]),
      ],
      warnings: [...brokenBins(bins), ...contradictedBins(bins, units)],
      cautions: cautionsFor(conditioned),
      sources: [...reportSources(loaded.season), ...CAUTION_SOURCES, ...(conditioned ? WATER_SOURCES : [])],
    };
  },
);
