import { errorText } from '../base/error-text.ts';
import { oneSystemIn } from './one-system.ts';
import type { MadeBy, Page, PageBody } from './page.ts';
import type { Units } from './units.ts';

/** What every notebook is told, whatever else it takes. */
export interface PageInput {
  units: Units;
  made: MadeBy;
}

export interface NotebookHead {
  /** stem of the page's file; `overview` becomes the way in, `index.html` */
  id: string;
  title: string;
  question: string;
}

export interface Notebook<Input extends PageInput> extends NotebookHead {
  /** The page as data. Never throws: a notebook that breaks keeps its title and says what failed. */
  page(input: Input): Page;
}

/** A notebook's page before its answer. `overview` becomes the way in, `index.html`. */
export function pageFrame({ id, title, question }: NotebookHead, { units, made }: PageInput) {
  return { id, file: id === 'overview' ? 'index.html' : `${id}.html`, title, question, units, madeBy: made };
}

/** One notebook: a question, and how a season's numbers answer it. */
export function notebookOf<Input extends PageInput>(
  head: NotebookHead,
  answer: (input: Input) => PageBody,
): Notebook<Input> {
  return {
    ...head,
    page(input) {
      const base = pageFrame(head, input);
      try {
        return { ...base, ...oneSystemIn(answer(input), input.units.system) };
      } catch (error) {
        return {
          ...base,
          answer: 'Can’t tell, because the making of this page broke.',
          keyNumbers: [],
          sections: [],
          warnings: [],
          cautions: [],
          sources: [],
          failure: errorText(error),
        };
      }
    },
  };
}
