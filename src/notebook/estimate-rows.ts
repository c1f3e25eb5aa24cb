import type { Estimate } from '../base/estimate.ts';
import type { Cell, Table } from '../report/page.ts';
import type { Quantity } from '../report/quantities.ts';
import type { Units } from '../report/units.ts';

/** A named number of one bin. */
export interface Named {
  label: string;
  quantity: Quantity;
  amount: Estimate | number | null;
  why?: string | null;
}

/** Numbers of several kinds under each other: the unit stands in each row. */
export function namedTable(id: string, caption: string, rows: readonly Named[], units: Units): Table {
  const value = ({ quantity, amount, why }: Named): Cell => {
    const of = amount === null || typeof amount === 'number' ? amount : amount.value;
    if (of === null) {
      const own = amount !== null && typeof amount === 'object' ? amount.why : null;
      return { value: null, why: own ?? why ?? 'Not known.' };
    }
    return units.amount(quantity, amount);
  };
  return {
    id,
    caption,
    columns: [
      { key: 'label', label: 'What', quantity: null },
      { key: 'value', label: 'Value, with 90 % interval', quantity: null },
      { key: 'unit', label: 'Unit', quantity: null },
    ],
    rows: rows.map((row) => ({ label: row.label, value: value(row), unit: units.unit(row.quantity) })),
  };
}
