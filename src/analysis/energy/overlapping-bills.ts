/** Meters are read on one day of the month: bills that share so many days at their ends follow each other. */
const READING_DAYS = 2;
const DAY_MS = 86_400_000;

interface Span {
  tariffId: string;
  /** ms UTC, [from, to) */
  fromMs: number;
  toMs: number;
}

/** How a bill stands to the earlier ones of its tariff. */
export interface Overlap {
  /** its first moment that no earlier bill covers, ms UTC: what the fans used before is the earlier bill's */
  ownFromMs: number;
  /** the earlier bill that it lies over, where it has to stay out of sums; else null */
  over: Span | null;
}

/**
 * Bills of one tariff that lie over each other: the same days are to be counted once. A day or two shared with the bill
 * before is the day on which the meter was read; a bill that lies over more of an earlier one stays out of sums, as which
 * part of it was billed twice cannot be told.
 *
 * @returns in the order of `bills`
 */
export function overlappingBills(bills: readonly Span[]): Overlap[] {
  const out: Overlap[] = bills.map((bill) => ({ ownFromMs: bill.fromMs, over: null }));
  const order = [...bills.keys()].sort((a, b) => bills[a].fromMs - bills[b].fromMs || a - b);
  const kept: Span[] = [];
  for (const i of order) {
    const bill = bills[i];
    const before = kept.filter((one) => one.tariffId === bill.tariffId && one.toMs > bill.fromMs);
    const last = before.reduce<Span | null>((most, one) => (most === null || one.toMs > most.toMs ? one : most), null);
    if (last === null) kept.push(bill);
    else if (last.toMs - bill.fromMs <= READING_DAYS * DAY_MS && last.toMs < bill.toMs) {
      out[i] = { ownFromMs: last.toMs, over: null };
      kept.push(bill);
    } else out[i] = { ownFromMs: bill.fromMs, over: last };
  }
  return out;
}
