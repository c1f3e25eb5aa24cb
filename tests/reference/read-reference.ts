import { misfitOf, type PublishedCheck } from '../../src/notebook/methods/published-check.ts';

// The methods page shows the same rows by the same code: how far the kit is from each is worked out in one place.
export { median } from '../../src/base/stats/quantile.ts';
export { agrees } from '../../src/notebook/methods/published-check.ts';
export { halfDigit, type ReferenceRow, readReference, toleranceOf } from '../../src/notebook/methods/read-reference.ts';

/** Test names of rows that nobody here read at their source say so. */
export const provenanceNote = (row: { readonly provenance?: string }): string =>
  row.provenance === 'seen' ? '' : ` (${row.provenance})`;

/** How far the kit is from a published number; NaN, which no comparison passes, where it has no answer. */
export const offBy = (check: PublishedCheck): number => misfitOf(check) ?? Number.NaN;
