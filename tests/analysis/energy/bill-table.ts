import { toArrow } from '../../../src/tables/arrow.ts';

/** A bill as a file states it; what is left out the bill does not say. */
export interface Given {
  /** ms UTC, [from, to) */
  from: number;
  to: number;
  kwh?: number;
  kw?: number;
  amount?: number;
  tariff?: string;
}

/** Bills as the table `bills`. */
export function billTable(bills: readonly Given[]) {
  const column = (pick: (bill: Given) => number | undefined) =>
    Float64Array.from(bills, (bill) => pick(bill) ?? Number.NaN);
  const names = [...new Set(bills.map((bill) => bill.tariff ?? 'T'))];
  return toArrow('bills', {
    from: column((bill) => bill.from),
    to: column((bill) => bill.to),
    tariff: { codes: Int32Array.from(bills, (bill) => names.indexOf(bill.tariff ?? 'T')), values: names },
    energy_j: column((bill) => (bill.kwh ?? Number.NaN) * 3.6e6),
    demand_w: column((bill) => (bill.kw ?? Number.NaN) * 1000),
    amount: column((bill) => bill.amount),
    file: { codes: new Int32Array(bills.length), values: ['bills.csv'] },
  });
}
