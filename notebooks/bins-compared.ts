import {
  besideTable,
  brokenBins,
  CAUTION_SOURCES,
  capital,
  cautionsFor,
  comparedAnswer,
  comparedFigure,
  comparedKeys,
  comparisonOf,
  contradictedBins,
  counted,
  defineNotebook,
  differenceLead,
  factorTable,
  fillAirNotes,
  GOAL_TITLES,
  goalParts,
  groupLead,
  hoursApartNotes,
  manyNotes,
  methodsOf,
  rankTable,
  ratioEntries,
  ratioTable,
  refusedTable,
  runTable,
  SHARES,
  section,
  shareTable,
  shownBins,
  untoldNote,
} from '../src/notebook.ts';

export default defineNotebook(
  {
    id: 'bins-compared',
    title: 'Bins compared',
    question: 'Which bins cost too much, and what made the difference?',
  },
  ({ loaded, review, units }) => {
    const compared = comparisonOf({ loaded, review });
    const bins = shownBins(review.bins, compared.bins);
    const parts = goalParts(bins, compared.groups);
    const refused = bins.filter((one) => one.beside.rank === null);
    const title = (goal: (typeof parts)[number]['goal'], text: string) =>
      parts.length === 1 ? text : `${text}: ${GOAL_TITLES[goal].toLowerCase()}`;
    return {
      answer: comparedAnswer(bins, compared, units),
      keyNumbers: comparedKeys(bins, compared, units),
      sections: [
        ...parts.map((part) =>
          section(part.goal, `${GOAL_TITLES[part.goal]}: who was cheapest`, () => ({
            lead: groupLead(bins, part, compared.groups.length, units),
            figures: comparedFigure(part.all, units),
            tables: [rankTable(part.priced, units)],
          })),
        ),
        ...parts.map(({ goal, priced }) =>
          section(`why-${goal}`, title(goal, 'What makes the difference'), () => {
            const { entries, untold } = ratioEntries(priced, bins, units);
            return {
              lead: differenceLead(priced, bins, units),
              entries,
              notes: untoldNote(untold),
            };
          }),
        ),
        section('beside', 'What stood beside the cost', () => ({
          lead: 'A bin may be cheap for its grain, its air or its weather, and not for how it was run.',
          table: besideTable(bins, units),
          tables: [runTable(bins)],
          notes: [...fillAirNotes(bins), ...manyNotes(bins)],
        })),
        ...parts.map(({ goal, priced }) =>
          section(`parts-${goal}`, title(goal, 'The cost in its parts'), () => ({
            lead: 'Power and hours trade off: more air draws more power and needs fewer hours. Energy is the two together.',
            tables: [factorTable(priced, units), ratioTable(priced, bins, units), shareTable(priced, bins)],
            notes: [SHARES, ...hoursApartNotes(priced, units)],
          })),
        ),
        section('refused', 'Not ranked', () => ({
          lead:
            refused.length === 0
              ? 'Every bin is ranked with others of its crop and goal.'
              : `${capital(counted(refused.length, 'bin'))} of ${bins.length} ${refused.length === 1 ? 'has' : 'have'} no place.`,
          table: refusedTable(bins, units),
        })),
      ],
      warnings: [...brokenBins(review.bins), ...contradictedBins(review.bins, units)],
      cautions: cautionsFor(review.bins.some((one) => one.bin.goal === 'condition')),
      sources: [...methodsOf('bins-compared').flatMap((method) => method.sourceKeys), ...CAUTION_SOURCES],
    };
  },
);
