import { type Estimate, withheld } from '../../base/estimate.ts';
import { linearUnit, unitsOf } from '../../base/units.ts';
import type { Known, OwnNumber } from '../../report/page.ts';
import { QUANTITIES, type Quantity, type QuantityDef } from '../../report/quantities.ts';

/** A number with its kind that may say how it is known where it has no interval. */
export interface ToldNumber extends OwnNumber {
  known?: Known;
}

/**
 * A number with its kind, ready for a sentence, a key number or a table; the page says it in its reader's units.
 *
 * @param of    a kind of number: `hours`, `points`, `temperature`, `money` …
 * @param value with or without interval; as the review tells it (temperatures degC, moistures fractions), unless `unit` says else
 * @param unit  the unit that a plain number is in: `degF`, `ft`, `%`, `inH2O` …
 * @throws      RangeError for a kind or a unit that is not known, with those that are
 */
export function amount(of: Quantity, value: number | Estimate | null, unit?: string): ToldNumber {
  const def: QuantityDef | undefined = QUANTITIES[of];
  if (def === undefined) {
    throw new RangeError(`there is no kind of number "${of}"; there are ${Object.keys(QUANTITIES).join(', ')}`);
  }
  if (value === null || (typeof value === 'number' && !Number.isFinite(value))) {
    return { of, amount: withheld('Not known.') };
  }
  return { of, amount: unit === undefined ? value : inSi(of, def, value, unit) };
}

function inSi(of: Quantity, { from }: QuantityDef, value: number | Estimate, unit: string): number | Estimate {
  if (from === undefined) throw new RangeError(`numbers of the kind "${of}" take no unit; leave "${unit}" out`);
  const line = linearUnit(from.kind, unit);
  if (line === null) throw new RangeError(`"${unit}" is no unit of ${of}; there are ${unitsOf(from.kind).join(', ')}`);
  const si = (one: number) => one * line.scale + line.offset;
  if (typeof value === 'number') return si(value);
  const { value: middle, interval, why } = value;
  return {
    value: middle === null ? null : si(middle),
    interval: interval === null ? null : [si(interval[0]), si(interval[1])],
    why,
  };
}

export function isAmount(of: unknown): of is ToldNumber {
  return typeof of === 'object' && of !== null && 'of' in of && 'amount' in of;
}

export function isEstimate(of: unknown): of is Estimate {
  return typeof of === 'object' && of !== null && 'value' in of && 'interval' in of && 'why' in of;
}

/** A temperature in the kit's own unit, for the limits of a strategy of one's own: `degF(40)` is 4.4 degC. */
export function degF(value: number): number {
  return (value - 32) / 1.8;
}
