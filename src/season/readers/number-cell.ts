import { type LinearUnit, linearUnit, type UnitKind } from '../../base/units.ts';
import type { Decimal } from './decimal.ts';

/** How the number cells of one column are read into SI. */
export interface NumberColumn {
  kind: UnitKind;
  unit: string;
  line: LinearUnit;
  /** null: not known; a cell that hangs on it is rejected */
  decimal: Decimal | null;
  currency: string;
}

const PLAIN = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/;
const NUMBER_THEN_UNIT = /^([+-]?[\d.,'\u2019 \u00a0\u202f]*\d[.,]?(?:[eE][+-]?\d+)?)[ \u00a0]*([^\d\s][^\d]*)$/;

/** A currency's sign or code before the amount, as spreadsheets write it: `$1,234.50`, `-$20`, `EUR 12`. */
const CURRENCY_SIGN = /^([+-]?)([$€£¥]|[A-Z]{3})[ \u00a0]*([+-]?\d.*|[.]\d.*)$/;
const SIGN_OF: Record<string, string> = { EUR: '€', GBP: '£', JPY: '¥', CNY: '¥' };

/** `$` is the sign of many dollars and pesos, so it stands for any currency that has no other sign here. */
function signFits(sign: string, currency: string): boolean {
  return sign === currency || sign === (SIGN_OF[currency] ?? '$');
}

/** Beyond it, in any unit, lies nothing that a farm logs; sums and squares of such numbers would leave what a computer can hold. */
const LARGEST = 1e15;

/**
 * One number cell, trimmed and not empty, in SI; or why it is none.
 *
 * Thousands may be grouped by threes with a space, an apostrophe or the sign that is not the decimal sign. A unit behind the number must be the column's own.
 */
export function numberCell(text: string, column: NumberColumn): number | string {
  let digits = text;
  if (!PLAIN.test(text) || column.decimal === ',') {
    const plain = toPlain(text, column);
    if (plain.reason !== null) return plain.reason;
    digits = plain.digits;
  }
  const value = Number(digits);
  if (!(Math.abs(value) <= LARGEST)) return 'is too large to be a reading';
  return value * column.line.scale + column.line.offset;
}

function toPlain(text: string, column: NumberColumn): { digits: string; reason: string | null } {
  const fail = (reason: string) => ({ digits: '', reason });
  let body = text.replace('\u2212', '-');
  const sign = column.kind === 'money' ? CURRENCY_SIGN.exec(body) : null;
  if (sign !== null) {
    if (!signFits(sign[2], column.currency))
      return fail(`says ${sign[2]}, but the column is declared in ${column.unit}`);
    body = sign[1] + sign[3];
  }
  const split = NUMBER_THEN_UNIT.exec(body);
  if (split !== null) {
    const said = unitLine(column, split[2].trim());
    if (said === null) return fail(`is no number in ${column.unit}`);
    if (said.scale !== column.line.scale || said.offset !== column.line.offset) {
      return fail(`says ${split[2].trim()}, but the column is declared in ${column.unit}`);
    }
    body = split[1].trim();
  }
  if (column.decimal === null && /^[+-]?\d{1,3},\d{3}$/.test(body)) {
    return fail('may mean a decimal comma or thousands; set decimal: for the file');
  }
  const decimal = column.decimal ?? '.';
  const flat = ungrouped(body, decimal);
  const digits = flat.replace(decimal, '.');
  if (PLAIN.test(digits) && (decimal === '.' || !flat.includes('.'))) return { digits, reason: null };
  if (/^[+-]?\d*[.,]\d+$/.test(body)) return fail(`has another decimal sign than the file's "${decimal}"`);
  return fail('is no number');
}

/** Without the signs between groups of three digits; a text that is grouped otherwise comes back as it is, and fails as a number. */
function ungrouped(body: string, decimal: Decimal): string {
  const group = decimal === '.' ? "[,' \u2019\u00a0\u202f]" : "[.' \u2019\u00a0\u202f]";
  const grouped = new RegExp(`^[+-]?[1-9]\\d{0,2}(${group})\\d{3}(?:\\1\\d{3})*(?:[${decimal}]\\d*)?$`);
  return grouped.test(body) ? body.replace(new RegExp(group, 'g'), '') : body;
}

function unitLine(column: NumberColumn, unit: string): LinearUnit | null {
  const spelled = column.kind === 'temperature' && /^[CF]$/i.test(unit) ? `deg${unit.toUpperCase()}` : unit;
  return linearUnit(column.kind, spelled, column.currency);
}
