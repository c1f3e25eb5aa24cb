import type { SeasonReview } from '../../analysis/types.ts';
import { METHODS } from '../../base/methods/methods.ts';
import type { Entry, SectionBody } from '../../report/page.ts';
import type { Units } from '../../report/units.ts';
import type { Season } from '../../season/season.ts';
import { bearsOn, methodDetails } from '../methods/method-entries.ts';
import { agreementOf } from '../methods/published-check.ts';
import { publishedRecord } from '../methods/published-record.ts';
import { trustSaid } from '../strategy-answer.ts';
import { skillTable } from '../strategy-tables.ts';
import { playedBins } from '../strategy-words.ts';
import { counted } from '../words.ts';

/** Pages whose numbers the year-end report tells. */
const PAGES = ['overview', 'fan-energy', 'moisture', 'fronts', 'strategies'];

const usedMethods = (season: Pick<Season, 'fans'>) =>
  METHODS.filter((method) => method.usedOn.some((page) => PAGES.includes(page)) && bearsOn(method, season));

/** Definitions behind the report's numbers, with their constants and sources, and how well they hold. */
export function methodSection(season: Pick<Season, 'fans'>): SectionBody {
  const record = publishedRecord();
  const { rows, agree } = agreementOf(record.checks.filter((check) => check.provenance === 'seen'));
  const used = usedMethods(season);
  return {
    lead: `${counted(used.length, 'definition')} stand behind these numbers. ${
      record.failure === null
        ? `Of ${counted(rows, 'comparison')} with published values the kit reproduces ${agree} within their printed digits; the page on methods tells each equation, and why not of the other ${rows - agree}.`
        : `How well they agree with the published record can’t be told: ${record.failure}`
    }`,
    entries: used.map(
      (method): Entry => ({ term: method.title, text: method.statement, details: methodDetails(method) }),
    ),
  };
}

/** How near the fitted beds come to what they had not seen; null where no model was made. */
export function modelSection(review: SeasonReview, units: Units): SectionBody | null {
  const bins = playedBins(review);
  return bins.length === 0 ? null : { lead: trustSaid(units), table: skillTable(bins) };
}

/** Works that the report's definitions stand on. */
export function reportSources(season: Pick<Season, 'fans'>): string[] {
  return [...new Set([...usedMethods(season).flatMap((method) => method.sourceKeys), 'asabe-s612'])].sort();
}
