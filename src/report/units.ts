import type { Estimate } from '../base/estimate.ts';
import { fromSi } from '../base/units.ts';
import { type Zone, zoneOf } from '../base/zone.ts';
import { dateText, dateTimeText } from './date-text.ts';
import { DASH, decimalsOf, numberText, roundTo } from './number-text.ts';
import { QUANTITIES, type Quantity, type QuantityDef } from './quantities.ts';

/** A number with or without interval, or null; what tables, key numbers and sentences take. */
export type Amount = number | Estimate | null;

/**
 * The door from the kit's SI and UTC to the units, digits and dates of people.
 * Values of a quantity with a `from` are SI; all others are in the shown unit.
 */
export class Units {
  readonly system: 'us' | 'si';
  readonly currency: string;
  readonly zone: Zone;

  /** @throws RangeError for an unknown zone */
  constructor(system: 'us' | 'si', currency: string, timeZone: string) {
    this.system = system;
    this.currency = currency;
    this.zone = zoneOf(timeZone);
  }

  /** The unit in tables and axes: `°F`, `USD/bu-point`, empty for plain counts. */
  unit(quantity: Quantity): string {
    return this.#named(QUANTITIES[quantity][this.system]);
  }

  /** The unit in sentences: `USD a bushel-point`. */
  word(quantity: Quantity): string {
    const def: QuantityDef = QUANTITIES[quantity];
    return this.#named((this.system === 'us' ? def.usWord : def.siWord) ?? def[this.system]);
  }

  /** The value in the shown unit, not rounded. */
  shown(quantity: Quantity, value: number): number {
    const from = (QUANTITIES[quantity] as QuantityDef).from;
    return from === undefined ? value : fromSi(from.kind, value, from[this.system]);
  }

  /** The value in the shown unit at the digits it is shown with, for files. */
  rounded(quantity: Quantity, value: number, at: number = value): number {
    return roundTo(this.shown(quantity, value), this.decimals(quantity, at));
  }

  decimals(quantity: Quantity, value: number): number {
    const def: QuantityDef = QUANTITIES[quantity];
    const rounding = this.system === 'si' ? (def.siRounding ?? def.rounding) : def.rounding;
    return decimalsOf(this.shown(quantity, value), rounding);
  }

  /** `4,310`, or a dash. */
  number(quantity: Quantity, value: number | null, at: number | null = value): string {
    if (value === null || at === null) return DASH;
    return numberText(this.shown(quantity, value), this.decimals(quantity, at));
  }

  /** `2.0 to 2.6`, at the digits of the middle; a middle of 0 has none, then at those of the wider end. */
  interval(quantity: Quantity, of: Estimate): string {
    if (of.value === null || of.interval === null) return '';
    const digits = of.value === 0 ? Math.max(...of.interval.map(Math.abs)) : of.value;
    return of.interval.map((end) => this.number(quantity, end, digits)).join(' to ');
  }

  /** `2.3 (2.0 to 2.6)`, no unit; an interval without width is not said. */
  amount(quantity: Quantity, amount: Amount): string {
    if (amount === null || typeof amount === 'number') return this.number(quantity, amount);
    if (amount.value === null) return DASH;
    const middle = this.number(quantity, amount.value);
    return isWide(amount) ? `${middle} (${this.interval(quantity, amount)})` : middle;
  }

  /** `2.3 points (2.0 to 2.6)` for sentences; one of a thing loses its s. */
  say(quantity: Quantity, amount: Amount): string {
    const value = amount === null || typeof amount === 'number' ? amount : amount.value;
    if (value === null) return DASH;
    const middle = this.number(quantity, value);
    const unit = this.word(quantity);
    const glued = unit === '' ? '' : ' ';
    const interval = typeof amount === 'object' && amount !== null && isWide(amount) ? amount : null;
    return `${middle}${glued}${unit}${interval === null ? '' : ` (${this.interval(quantity, interval)})`}`;
  }

  date(utcMs: number): string {
    return dateText(this.zone, utcMs);
  }

  dateTime(utcMs: number): string {
    return dateTimeText(this.zone, utcMs);
  }

  #named(unit: string): string {
    return unit.replace('¤', this.currency);
  }
}

function isWide(of: Estimate): boolean {
  return of.interval !== null && of.interval[0] !== of.interval[1];
}
