import jstat from 'jstat';
import { assertRange } from '../errors.ts';

/**
 * Quantile of Student's t.
 *
 * @param p        share below, 0 < p < 1
 * @param degrees  degrees of freedom, above 0, not necessarily whole; Infinity for the normal distribution
 * @returns        in standard errors
 * @source         library `jstat`; checked against the usual printed table of t
 */
export function tQuantile(p: number, degrees: number): number {
  assertRange('p', p, Number.MIN_VALUE, 1 - Number.EPSILON);
  assertRange('degrees of freedom', degrees, Number.MIN_VALUE, Number.POSITIVE_INFINITY);
  // Beyond a million degrees t and the normal agree to six digits, and the library's series gets slow.
  return jstat.studentt.inv(p, Math.min(degrees, 1e6));
}
