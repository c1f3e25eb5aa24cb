import type { Table } from 'apache-arrow';
import { type RawColumn, toArrow } from '../../tables/arrow.ts';
import { type ColumnDef, TABLES, type TableName } from '../../tables/columns.ts';

type Numeric = Float64Array | Int16Array | Uint8Array | Int32Array;

/** A typed array that grows by doubling. */
class Growing<T extends Numeric> {
  private data: T;
  private readonly make: (length: number) => T;

  constructor(make: (length: number) => T) {
    this.make = make;
    this.data = make(1024);
  }

  set(row: number, value: number): void {
    if (row >= this.data.length) {
      const larger = this.make(Math.max(row + 1, this.data.length * 2));
      larger.set(this.data as never);
      this.data = larger;
    }
    this.data[row] = value;
  }

  get(row: number): number {
    return this.data[row];
  }

  /** [rows], shared with the builder until it grows again */
  view(rows: number): T {
    return this.data.subarray(0, rows) as T;
  }
}

/** A table in the making: rows are opened, then filled by column; nothing is allocated for a row. */
export class TableBuilder {
  readonly name: TableName;
  rows = 0;
  private readonly numbers = new Map<string, Growing<Numeric>>();
  private readonly texts = new Map<string, { codes: Growing<Numeric>; codeOf: Map<string, number> }>();
  /** cells kept in each row: how many a flag of the row takes with it, [rows] */
  private readonly cells = new Growing<Numeric>((n) => new Uint8Array(n));

  constructor(name: TableName) {
    this.name = name;
    for (const def of TABLES[name] as readonly ColumnDef[]) {
      if (def.type === 'text') {
        this.texts.set(def.name, { codes: new Growing((n) => new Int32Array(n)), codeOf: new Map() });
      } else if (def.type === 'integer') this.numbers.set(def.name, new Growing((n) => new Int16Array(n)));
      else if (def.type === 'flags') this.numbers.set(def.name, new Growing((n) => new Uint8Array(n)));
      else this.numbers.set(def.name, new Growing((n) => new Float64Array(n)));
    }
  }

  /** Open a row: numbers missing, flags clear, texts empty until set. */
  addRow(): number {
    const row = this.rows;
    this.rows += 1;
    for (const def of TABLES[this.name] as readonly ColumnDef[]) {
      if (def.type !== 'text') this.numbers.get(def.name)!.set(row, def.type === 'number' ? Number.NaN : 0);
      else this.setText(def.name, row, '');
    }
    this.cells.set(row, 0);
    return row;
  }

  setNumber(column: string, row: number, value: number): void {
    this.numbers.get(column)!.set(row, value);
  }

  setText(column: string, row: number, value: string): void {
    const { codes, codeOf } = this.texts.get(column)!;
    let code = codeOf.get(value);
    if (code === undefined) {
      code = codeOf.size;
      codeOf.set(value, code);
    }
    codes.set(row, code);
  }

  addFlag(column: string, row: number, bit: number): void {
    const flags = this.numbers.get(column)!;
    flags.set(row, flags.get(row) | bit);
  }

  keepCell(row: number): void {
    this.cells.set(row, this.cells.get(row) + 1);
  }

  cellsOf(row: number): number {
    return this.cells.get(row);
  }

  number(column: string): Numeric {
    return this.numbers.get(column)!.view(this.rows);
  }

  codes(column: string): Int32Array {
    return this.texts.get(column)!.codes.view(this.rows) as Int32Array;
  }

  values(column: string): string[] {
    return [...this.texts.get(column)!.codeOf.keys()];
  }

  /** The table as it stands now; later changes of the builder do not reach it. */
  table(): Table {
    const raw: Record<string, RawColumn> = {};
    for (const def of TABLES[this.name] as readonly ColumnDef[]) {
      if (def.type === 'text') raw[def.name] = usedOnly(this.codes(def.name), this.values(def.name));
      else raw[def.name] = this.number(def.name).slice() as RawColumn;
    }
    return toArrow(this.name, raw);
  }
}

/** The empty text that an opened row carries until it is set is left out where no row kept it. */
function usedOnly(codes: Int32Array, values: string[]): { codes: Int32Array; values: string[] } {
  if (values[0] !== '' || codes.includes(0)) return { codes: codes.slice(), values };
  return { codes: codes.map((code) => code - 1), values: values.slice(1) };
}
