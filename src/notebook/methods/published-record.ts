import { reasonOf } from '../../report/section.ts';
import type { PublishedCheck } from './published-check.ts';
import { publishedChecks } from './published-checks.ts';

/** The record, or why it could not be read; the page then stands without it. */
export interface PublishedRecord {
  checks: readonly PublishedCheck[];
  failure: string | null;
}

export function publishedRecord(read: () => PublishedCheck[] = publishedChecks): PublishedRecord {
  try {
    return { checks: read(), failure: null };
  } catch (error) {
    return { checks: [], failure: reasonOf(error) };
  }
}
