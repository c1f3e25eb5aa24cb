import { counted, defineNotebook, METHODS, section } from '../src/notebook.ts';

const TITLES: Readonly<Record<string, string>> = {
  overview: 'Overview',
  'fan-energy': 'Fans, energy and cost',
  moisture: 'Moisture',
  fronts: 'Fronts',
};

export default defineNotebook(
  { id: 'methods', title: 'Methods', question: 'How were the numbers made, and who says so?' },
  () => ({
    answer: `${counted(METHODS.length, 'method')} stand behind the pages; each is told here with its constants and its source.`,
    keyNumbers: [],
    sections: [
      section('methods', 'Definitions and equations', () => ({
        lead: 'Where no source is named, the definition is the kit’s own.',
        entries: METHODS.map((method) => ({
          id: `method-${method.id}`,
          term: method.title,
          text: method.statement,
          details: [
            ...method.constants,
            ...(method.sourceKeys.length === 0 ? [] : [`Source: ${method.sourceKeys.join(', ')}, below.`]),
            `Used on: ${method.usedOn.map((page) => TITLES[page] ?? page).join('; ')}.`,
          ],
        })),
      })),
    ],
    warnings: [],
    cautions: [],
    sources: METHODS.flatMap((method) => method.sourceKeys),
  }),
);
