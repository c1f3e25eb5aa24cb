/** A year and what a strategy came to in it. */
export interface YearValue {
  weather: string;
  value: number;
}

/** The years that stand for the good, the middle and the bad end of many, or why they cannot be told. */
export type PercentileYears =
  | { years: number; p10: YearValue; p50: YearValue; p90: YearValue; why: null }
  | { years: number; p10: null; p50: YearValue | null; p90: null; why: string };

/** Of fewer years the first and ninth tenth are the outermost ones. Our choice. */
export const LEAST_YEARS = 10;

/**
 * The 10th, 50th and 90th percentile year: the year at that rank by value (nearest rank, so that each is a year that was).
 * Equal values by the year's name.
 */
export function percentileYears(values: readonly YearValue[]): PercentileYears {
  const sorted = [...values].sort((a, b) => a.value - b.value || (a.weather < b.weather ? -1 : 1));
  const years = sorted.length;
  const at = (p: number) => sorted[Math.max(0, Math.ceil(p * years) - 1)];
  if (years === 0) return { years, p10: null, p50: null, p90: null, why: 'No year has a value.' };
  if (years < LEAST_YEARS) {
    const why = `${years} ${years === 1 ? 'year is' : 'years are'} too few to tell a good year from a bad one; ${LEAST_YEARS} are due.`;
    return { years, p10: null, p50: years < 3 ? null : at(0.5), p90: null, why };
  }
  return { years, p10: at(0.1), p50: at(0.5), p90: at(0.9), why: null };
}
