import type { Bad } from './draft.ts';
import type { Report } from './report.ts';

/** What every check across keys works with. */
export interface Check {
  report: Report;
  bad: Bad;
  /** the season's currency code */
  currency: string;
}
