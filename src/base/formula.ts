/** A work that a formula stands on, and where in it. */
export interface FormulaSource {
  /** key of the bibliography */
  key: string;
  /** `ch. 1, eq. 6` */
  place?: string;
}

/** What an exported function works out, as people read it. Each room lists its own in `formulas.ts`. */
export interface Formula {
  /** unique among all rooms */
  id: string;
  title: string;
  /** exported functions that stand on it */
  functions: readonly string[];
  /**
   * `left = right`, a line each, in the notation that tests evaluate: every line is held against the functions.
   * Empty for what is a procedure; `rule` then says it.
   */
  equations: readonly string[];
  /** symbols with their units, or the procedure in whole sentences */
  rule: string;
  /** empty: by definition, geometry or a balance, as `rule` says */
  sources: readonly FormulaSource[];
}
