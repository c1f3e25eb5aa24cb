import { median } from '../../base/stats/quantile.ts';

/** The rooms of the record, in the order in which the page tells them. */
export const DOMAINS = {
  emc: 'Equilibrium moisture',
  airflow: 'Airflow resistance and fans',
  cooling: 'Fronts of temperature',
  drying: 'Drying times',
  storage: 'Storage time',
  air: 'Air',
  grain: 'Properties of grain',
  money: 'Money',
} as const;
export type Domain = keyof typeof DOMAINS;

/** One published number beside the kit's for the same case, both in the printed unit. */
export interface PublishedCheck {
  domain: Domain;
  /** what is held together in a line of the page: one quantity, crop and equation, one unit */
  group: string;
  /** id of the crop table; null where it is of no crop */
  crop: string | null;
  /** of the formula that gives `ours` */
  formulaId: string;
  /** the case: `70 °F, 60 % humidity` */
  at: string;
  /** as printed */
  printed: string;
  /** its number; NaN where what is printed is only a bound */
  published: number;
  unit: string;
  /** null: the kit has no answer, as where the source leaves out what it comes from */
  ours: number | null;
  /** what the printed digits (and, where stated, the digits of constants) leave open */
  tolerance: number;
  /** why the kit is not expected to give it; empty where it is */
  misfit: string;
  /** seen: read at the source; memory: recalled; computed: reckoned by hand, not published */
  provenance: 'seen' | 'memory' | 'computed';
  source: string;
}

/** How far the kit is from the published number, in the printed unit; null where it has no answer. The one place where this is worked out. */
export function misfitOf(check: PublishedCheck): number | null {
  const off = check.ours === null ? Number.NaN : Math.abs(check.ours - check.published);
  return Number.isFinite(off) ? off : null;
}

/** A hair for the rounding of the machine, in parts of the published value. */
const HAIR = 1e-9;

/** Whether the kit gives what is printed. */
export function agrees(check: PublishedCheck): boolean {
  const off = misfitOf(check);
  return off !== null && off <= check.tolerance + HAIR * Math.max(1, Math.abs(check.published));
}

export interface Agreement {
  rows: number;
  /** rows for which the kit has an answer */
  answered: number;
  /** within what is printed */
  agree: number;
  /** marked as not fitting, with the reason */
  marked: number;
  /** of the answered rows, marked or not; null where there is none */
  medianMisfit: number | null;
  worstMisfit: number | null;
}

/** Sums up rows of one unit. */
export function agreementOf(checks: readonly PublishedCheck[]): Agreement {
  const offs = checks.map(misfitOf).filter((off) => off !== null);
  return {
    rows: checks.length,
    answered: offs.length,
    agree: checks.filter(agrees).length,
    marked: checks.filter((check) => check.misfit !== '').length,
    medianMisfit: offs.length === 0 ? null : median(offs),
    worstMisfit: offs.length === 0 ? null : Math.max(...offs),
  };
}

/** Rows by a key, in the order of the first of each. */
export function groupsOf<T>(items: readonly T[], keyOf: (item: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const item of items) groups.set(keyOf(item), [...(groups.get(keyOf(item)) ?? []), item]);
  return groups;
}

export const provenanceOf = (text: string): PublishedCheck['provenance'] =>
  text === 'seen' || text === 'computed' ? text : 'memory';
