import { assertRange } from '../base/errors.ts';

/** Bulk density of a grain as a straight line over moisture: base + slope M, kg/m3 and per percent, wet basis. */
export interface BulkDensityLine {
  crop: string;
  name: string;
  baseKgM3: number;
  slopeKgM3Pct: number;
  /** moistures that the source covers, percent, wet basis, both inclusive */
  rangePct: readonly [low: number, high: number];
  sourceKey: string;
  provenance: 'seen' | 'memory';
}

const rice = (name: string, baseKgM3: number, slopeKgM3Pct: number, low: number, high: number): BulkDensityLine => ({
  crop: 'rice',
  name,
  baseKgM3,
  slopeKgM3Pct,
  rangePct: [low, high],
  sourceKey: 'aciar-rice-density',
  provenance: 'seen',
});

// A relation for corn is recalled too (1086.3 - 2.971 M + 0.0481 M2), but it gives 1052 kg/m3 at 15.5 %, half as much again as
// a legal bushel weighs: what is recalled of it cannot be right, and it is left out.
/** Each crop's default first. Other crops have the test weight alone: `standardBulkDensityKgM3`, or as it was weighed. */
export const BULK_DENSITY_LINES: readonly BulkDensityLine[] = [
  rice('long grain', 519.4, 5.29, 12, 18),
  rice('medium grain', 499.7, 8.33, 12, 18),
  rice('short grain', 583.6, 4.27, 11, 20),
];

/**
 * Bulk density by moisture, where it is published.
 *
 * @param crop        rice
 * @param moistureWb  fraction, wet basis, within the line's range
 * @param name        of the line; left out: the crop's first
 * @returns           kg/m3 as the grain lies
 * @source            of the line
 * @valid             throws RangeError outside, and for other crops and lines with those that there are
 */
export function bulkDensityKgM3(crop: string, moistureWb: number, name?: string): number {
  const known = BULK_DENSITY_LINES.filter((line) => line.crop === crop);
  if (known.length === 0) {
    const crops = [...new Set(BULK_DENSITY_LINES.map((line) => line.crop))].join(', ');
    throw new RangeError(`no bulk density by moisture for crop "${crop}"; there is one for ${crops}`);
  }
  const found = name === undefined ? known[0] : known.find((line) => line.name === name);
  if (found === undefined) {
    throw new RangeError(`no bulk density "${name}" for ${crop}; there are ${known.map((one) => one.name).join(', ')}`);
  }
  const percent = 100 * moistureWb;
  assertRange('moisture in percent, wet basis,', percent, ...found.rangePct);
  return found.baseKgM3 + found.slopeKgM3Pct * percent;
}
