import type { Estimate } from '../base/estimate.ts';
import type { Cell, Known, Table } from '../report/page.ts';
import type { Quantity } from '../report/quantities.ts';
import type { Units } from '../report/units.ts';

/** A named number of one bin. */
export interface Named {
  label: string;
  quantity: Quantity;
  amount: Estimate | number | null;
  why?: string | null;
  /** how it is known where it carries no interval and is no count */
  known?: Known;
}

/** Numbers of several kinds under each other: the unit stands in each row. */
export function namedTable(id: string, caption: string, rows: readonly Named[], units: Units): Table {
  const value = ({ quantity, amount, why }: Named): Cell => {
    const estimate = typeof amount === 'object' ? amount : null;
    if (amount === null || estimate?.value === null) {
      return { value: null, why: estimate?.why ?? why ?? 'Not known.' };
    }
    return { of: quantity, amount };
  };
  return {
    id,
    caption,
    columns: [
      { key: 'label', label: 'What', quantity: null },
      { key: 'value', label: 'Value', quantity: 'own' },
      { key: 'unit', label: 'Unit', quantity: null },
    ],
    rows: rows.map((row) => ({
      label: row.label,
      value: value(row),
      unit: [units.unit(row.quantity), row.known].filter(Boolean).join(', '),
    })),
  };
}
