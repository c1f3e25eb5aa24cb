/** A work that a page or a formula stands on. */
export interface Source {
  /** short and lasting; formulas and pages cite by it */
  key: string;
  authors: string;
  year: number | null;
  title: string;
  where: string;
  url?: string;
  /** seen: what is used was read at the source; memory: recalled from the named work, not checked against it */
  provenance: 'seen' | 'memory';
}
