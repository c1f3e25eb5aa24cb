/** Year and month of a row, as the file has them. */
export interface YearMonth {
  year: number;
  month: number;
  day: number;
}

const isLeap = (year: number) => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;

/**
 * Whether the months of a file come from different years, as those of a typical year do: the year changes elsewhere than from
 * December to January, or falls.
 */
export function isTypicalYear(rows: readonly YearMonth[]): boolean {
  return rows.some((row, i) => {
    const before = rows[i - 1];
    if (before === undefined || row.year === before.year) return false;
    return !(row.year > before.year && row.month === 1 && before.month === 12);
  });
}

/**
 * One run of years for the rows of a typical year: the first row's own year, or the next in which 29 February is there as it is in the file,
 * so that hour follows hour; after December the next.
 *
 * @returns [rows]
 */
export function standInYears(rows: readonly YearMonth[]): number[] {
  const leap = rows.some(({ month, day }) => month === 2 && day === 29);
  const february = rows.some(({ month }) => month === 2);
  let year = rows[0]?.year ?? 0;
  while (february && isLeap(year) !== leap) year += 1;
  return rows.map(({ month }, i) => {
    if (i > 0 && month === 1 && rows[i - 1].month === 12) year += 1;
    return year;
  });
}
