import {
  adviceEntries,
  aloneNotes,
  beforeNotes,
  binOrRulePointer,
  CAUTION_SOURCES,
  cautionsFor,
  columnNotes,
  defineNotebook,
  doubtsSaid,
  fittedNotes,
  fittedTable,
  hangsNotes,
  hangsTable,
  heaterNotes,
  isMoved,
  MODEL_RANGES,
  methodsOf,
  modelSaid,
  moreFansNotes,
  movedSection,
  nextSeasonLead,
  OTHER_PARAMETERS,
  picksSaid,
  playedBins,
  RULE_SOURCES,
  runsTable,
  section,
  sharedRuleNotes,
  skillTable,
  strategiesAnswer,
  strategyEntries,
  strategyFigure,
  strategyKeys,
  strategySweptSection,
  strategyTable,
  strategyYearsSection,
  trustSaid,
  weightTables,
} from '../src/notebook.ts';

export default defineNotebook(
  {
    id: 'strategies',
    title: 'Other ways to run the fans',
    question: 'What would another way to run the fans have cost, and should I change it next season?',
  },
  ({ review, swept, units }) => {
    const bins = playedBins(review);
    const played = bins.filter(({ whatIf }) => whatIf.why === null);
    return {
      answer: strategiesAnswer(bins, units),
      keyNumbers: strategyKeys(bins),
      ...(played.length === 0 ? {} : { ranges: `${MODEL_RANGES} The weather is the season’s.` }),
      sections: [
        // The id names the exported table, which programs may read.
        section('next-fall', 'Next season', () => ({
          lead: nextSeasonLead(bins),
          entries: adviceEntries(bins, units),
          table: strategyTable(bins),
          notes: [
            'Costs by the model are of the bin alone on its tariff: energy, the demand of its own fans, and fuel. Charges on connected load are the same whatever is run, and left out.',
            ...heaterNotes(played),
            ...beforeNotes(bins, units),
            ...moreFansNotes(
              played.map(({ review: of }) => of),
              units,
            ),
            ...aloneNotes(bins),
            ...(played.length === 0 ? [] : [doubtsSaid()]),
            ...(played.some(({ pick }) => pick !== null) ? [picksSaid()] : []),
          ],
        })),
        ...played.map((one) =>
          section(`bin-${one.review.bin.id}`, one.review.bin.name, () => ({
            lead: modelSaid(one),
            figures: strategyFigure(one, units),
            tables: [runsTable(one), ...weightTables(one, units), hangsTable(one)],
            notes: [...columnNotes(one), ...one.whatIf.model.notes, ...hangsNotes(one, units)],
          })),
        ),
        section('swept', 'Cost in other years', () => strategySweptSection(swept, review.bins, units, review.whatIf)),
        section('fan', 'What would another fan do?', () => movedSection('airflow', swept, review.bins, units)),
        ...(['fill-date', 'start-moisture'] as const)
          .filter((varied) => isMoved(varied, swept))
          .map((varied) =>
            section(varied, `What would another ${varied.replace('-', ' ')} do?`, () =>
              movedSection(varied, swept, review.bins, units),
            ),
          ),
        section('years', 'Other years', () =>
          strategyYearsSection(
            bins.map(({ review: { bin }, whatIf }) => ({ name: bin.name, ...whatIf.heldBack })),
            units,
          ),
        ),
        section('bin-or-rule', 'Bin or rule', () => binOrRulePointer(review.crossed, review.bins, units)),
        section('models', 'How good the models are', () => ({
          lead: trustSaid(units),
          table: skillTable(bins),
          tables: [fittedTable(bins)],
          notes: fittedNotes(played),
        })),
        section('rules', 'What the strategies do', () => ({
          lead: `Each rests once the bin is at its target and goes on when it no longer is. “Best in hindsight” is the cheapest schedule found with the weather known ahead; nobody could have run it, it says how much there was to gain at most. A bin to be cooled must by it be cold no later than as it was run and than by the rule named, its grain no older in the end than in one of the two: a rule that came there later may cost less.${played.some(({ whatIf }) => whatIf.schedule !== null) ? ' Its hours are in tables/hindsight-hours.csv, which the review writes beside its pages.' : ''}`,
          entries: strategyEntries(units),
          notes: [OTHER_PARAMETERS],
        })),
      ],
      warnings: played.length === 0 ? [] : sharedRuleNotes(review.bins),
      cautions: cautionsFor(review.bins.some((one) => one.bin.goal === 'condition')),
      sources: [...methodsOf('strategies').flatMap((method) => method.sourceKeys), ...RULE_SOURCES, ...CAUTION_SOURCES],
    };
  },
);
