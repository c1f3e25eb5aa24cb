import { errorText } from '../../base/error-text.ts';
import { pageFrame } from '../../report/define.ts';
import { draw } from '../../report/figures/draw.ts';
import { oneSystemIn } from '../../report/one-system.ts';
import type { MadeBy, Page } from '../../report/page.ts';
import { sentence } from '../words.ts';
import { callSite, siteSaid } from './call-site.ts';
import { plainId } from './plain-id.ts';
import { newSheet } from './sheet.ts';
import type { Sheet, SheetInput } from './sheet-types.ts';

export interface FormHead {
  title: string;
  question: string;
  /** stem of the page's file; left out: from the title */
  id?: string;
}

export interface FormInput extends SheetInput {
  made: MadeBy;
}

/** A notebook whose pieces are written from top to bottom. */
export interface FormNotebook {
  id: string;
  title: string;
  question: string;
  /** The page as data. Never throws: what was written before a fault stands, and the page says what failed and where. */
  page(input: FormInput): Promise<Page>;
}

/**
 * One notebook = one page, written from top to bottom: answer, headings, texts, figures, tables, notes.
 *
 * @param head   title and question
 * @param write  writes on the sheet; may be async, may throw
 */
export function notebook(head: FormHead, write: (sheet: Sheet) => void | Promise<void>): FormNotebook {
  const full = { id: head.id ?? plainId(head.title), title: head.title, question: head.question };
  return {
    ...full,
    async page(input) {
      const { sheet, body, broke } = newSheet(input, (size, options) => draw(size, options));
      // A library's verbs lie deep: the notebook's own line must still be on the stack.
      const { stackTraceLimit } = Error;
      Error.stackTraceLimit = 100;
      try {
        await write(sheet);
      } catch (error) {
        input.onFailure?.(error);
        broke(failureSaid(error));
      } finally {
        Error.stackTraceLimit = stackTraceLimit;
      }
      return { ...pageFrame(full, input), ...oneSystemIn(body(), input.units.system) };
    },
  };
}

/** `RangeError, my-page.ts:12: there is no bin "B9"`. */
function failureSaid(error: unknown): string {
  const site = error instanceof Error ? callSite(error.stack) : null;
  const kind = error instanceof Error && error.name !== 'Error' ? error.name : null;
  const where = [kind, site === null ? null : siteSaid(site)].filter((part) => part !== null).join(', ');
  return sentence(where === '' ? errorText(error) : `${where}: ${errorText(error)}`);
}
