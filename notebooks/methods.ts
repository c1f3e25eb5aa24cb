import {
  agreementOf,
  constantsSection,
  counted,
  cropSection,
  defineNotebook,
  FORMULAS,
  formulaSection,
  METHODS,
  methodEntries,
  methodSources,
  publishedRecord,
  recordSection,
  section,
  usedFormulas,
} from '../src/notebook.ts';

const TITLES: Readonly<Record<string, string>> = {
  overview: 'Overview',
  'fan-energy': 'Fans, energy and cost',
  moisture: 'Moisture',
  fronts: 'Fronts',
  'bins-compared': 'Bins compared',
  strategies: 'Other ways to run the fans',
  'bin-or-rule': 'Bin or rule',
  condition: 'Condition',
};

export default defineNotebook(
  { id: 'methods', title: 'Methods', question: 'How were the numbers made, who says so, and how well does it hold?' },
  ({ loaded, units }) => {
    const { season } = loaded;
    const record = publishedRecord();
    const used = usedFormulas(season);
    const { rows, agree, marked } = agreementOf(record.checks.filter((check) => check.provenance === 'seen'));
    const stand = `${counted(METHODS.length, 'definition')} and ${counted(FORMULAS.length, 'equation')} stand behind the pages`;
    return {
      answer:
        record.failure === null
          ? `${stand}; of ${counted(rows, 'comparison')} with published values the kit reproduces ${agree} within their printed digits, and says of the other ${rows - agree} why it does not.`
          : `${stand}. How well they agree with the published record can’t be told: ${record.failure}`,
      keyNumbers: [
        { label: 'Equations used this season', quantity: 'count', amount: used.size, note: `of ${FORMULAS.length}` },
        {
          label: 'Comparisons with published values',
          quantity: 'count',
          amount: rows,
          note: 'read at their source',
        },
        { label: 'Reproduced', quantity: 'count', amount: agree, note: `${marked} marked with the reason` },
      ],
      sections: [
        section('methods', 'Definitions', () => ({
          lead: 'Where no source is named, the definition is the kit’s own.',
          entries: methodEntries(TITLES, season),
        })),
        formulaSection(used, 'used', record, units),
        cropSection(season, 'used', units),
        recordSection(record, units),
        constantsSection(season),
        cropSection(season, 'others', units),
        formulaSection(used, 'offered', record, units),
      ],
      warnings: [],
      cautions: [],
      sources: methodSources(),
    };
  },
);
