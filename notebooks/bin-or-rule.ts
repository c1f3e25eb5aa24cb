import {
  againstSection,
  binOrRuleAnswer,
  binOrRuleKeys,
  CAUTION_SOURCES,
  cautionsFor,
  defineNotebook,
  MODEL_RANGES,
  matrixSection,
  methodsOf,
  section,
} from '../src/notebook.ts';

export default defineNotebook(
  {
    id: 'bin-or-rule',
    title: 'Bin or rule',
    question: 'Was a bin cheap for its fan and its grain, or for how it was run?',
  },
  ({ review: { crossed, bins }, units }) => ({
    answer: binOrRuleAnswer(crossed, bins, units),
    keyNumbers: binOrRuleKeys(crossed),
    ranges: `${MODEL_RANGES} The weather is the season’s.`,
    sections: [
      section('against', 'What the bin makes, and what the way', () => againstSection(crossed, bins, units)),
      section('matrix', 'Every bin’s way on every bin', () => matrixSection(crossed, bins, units)),
    ],
    warnings: [],
    cautions: cautionsFor(bins.some(({ bin }) => bin.goal === 'condition')),
    sources: [...methodsOf('bin-or-rule').flatMap((method) => method.sourceKeys), ...CAUTION_SOURCES],
  }),
);
