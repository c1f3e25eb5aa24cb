import { errorText } from '../../base/error-text.ts';
import type { PublishedCheck } from './published-check.ts';
import { publishedChecks } from './published-checks.ts';

/** The record, or why it could not be read; the page then stands without it. */
export interface PublishedRecord {
  checks: readonly PublishedCheck[];
  failure: string | null;
}

let known: PublishedCheck[] | null = null;

/** The kit does not change while it runs: what it gives for the published rows is worked out once. */
function checksOfTheKit(): PublishedCheck[] {
  known ??= publishedChecks();
  return known;
}

export function publishedRecord(read: () => PublishedCheck[] = checksOfTheKit): PublishedRecord {
  try {
    return { checks: read(), failure: null };
  } catch (error) {
    return { checks: [], failure: errorText(error) };
  }
}
