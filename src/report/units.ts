import type { Estimate } from '../base/estimate.ts';
import { fileDigits } from '../base/file-digits.ts';
import { fromSi } from '../base/units.ts';
import { type Zone, zoneOf } from '../base/zone.ts';
import { dateText, dateTimeText } from './date-text.ts';
import { DASH, decimalsOf, numberText } from './number-text.ts';
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

  /** The same units with money of another currency. */
  withMoneyIn(currency: string): Units {
    return currency === this.currency ? this : new Units(this.system, currency, this.zone.name);
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

  /** The value in the shown unit, with the figures that files for programs carry. */
  shown(quantity: Quantity, value: number): number {
    const from = (QUANTITIES[quantity] as QuantityDef).from;
    const carried = fileDigits(value);
    return from === undefined ? carried : fromSi(from.kind, carried, from[this.system]);
  }

  decimals(quantity: Quantity, value: number): number {
    const def: QuantityDef = QUANTITIES[quantity];
    const rounding = this.system === 'si' ? (def.siRounding ?? def.rounding) : def.rounding;
    return decimalsOf(this.shown(quantity, value), rounding);
  }

  /** `4,310`, or a dash. */
  number(quantity: Quantity, value: number | null): string {
    return value === null ? DASH : numberText(this.shown(quantity, value), this.decimals(quantity, value));
  }

  /**
   * The ends of an interval, at the digits of its middle, and at no more figures than a number of their own size has; a
   * middle of 0 has none, then at those of the wider end. Null where there is no interval.
   */
  ends(quantity: Quantity, of: Estimate): [string, string] | null {
    const { value, interval } = of;
    if (value === null || interval === null) return null;
    const middle = this.decimals(quantity, value === 0 ? Math.max(...interval.map(Math.abs)) : value);
    const said = (end: number) =>
      numberText(this.shown(quantity, end), Math.min(middle, end === 0 ? middle : this.decimals(quantity, end)));
    return [said(interval[0]), said(interval[1])];
  }

  /** `2.0 to 2.6`; empty where there is none, or where both ends round to the number itself. */
  interval(quantity: Quantity, of: Estimate): string {
    const ends = this.ends(quantity, of);
    if (ends === null) return '';
    const middle = this.number(quantity, of.value);
    return ends.every((end) => end === middle) ? '' : ends.join(' to ');
  }

  /** `2.3 (2.0 to 2.6)`, no unit. */
  amount(quantity: Quantity, amount: Amount): string {
    if (amount === null || typeof amount === 'number') return this.number(quantity, amount);
    if (amount.value === null) return DASH;
    const middle = this.number(quantity, amount.value);
    const range = this.interval(quantity, amount);
    return range === '' ? middle : `${middle} (${range})`;
  }

  /** `2.3 points (2.0 to 2.6)` for sentences; one of a thing loses its s. */
  say(quantity: Quantity, amount: Amount): string {
    const value = amount === null || typeof amount === 'number' ? amount : amount.value;
    if (value === null) return DASH;
    const middle = this.number(quantity, value);
    const unit = this.word(quantity);
    const glued = unit === '' ? '' : ' ';
    const range = typeof amount === 'object' && amount !== null ? this.interval(quantity, amount) : '';
    return `${middle}${glued}${unit}${range === '' ? '' : ` (${range})`}`;
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
