import { parseQuantity, type UnitKind, unitsOf } from '../../base/units.ts';
import type { Parameter } from './strategy.ts';

/** A parameter as a user gives it: a number in SI (a fraction, degC, K, h), or text with its unit, `65 %`. */
export type GivenValue = number | string;

/** How each unit is written in names, and what a name's number is of the value inside. */
const WRITTEN: Readonly<Record<Parameter['unit'], { kind: UnitKind; unit: string; times: number }>> = {
  '1': { kind: 'fraction', unit: '%', times: 100 },
  degC: { kind: 'temperature', unit: 'degC', times: 1 },
  K: { kind: 'temperature difference', unit: 'K', times: 1 },
  h: { kind: 'time', unit: 'h', times: 1 },
};
const HOUR_S = 3600;
/** Beyond them a value told in another unit and back is another number. */
const DIGITS = 10;

/** `65 %`: a value as names hold it, the same for all that differ by rounding. */
export function valueText({ unit }: Parameter, value: number): string {
  const { unit: written, times } = WRITTEN[unit];
  return `${Number((times * value).toPrecision(DIGITS))} ${written}`;
}

/** The value that a parameter's text or number stands for, or what is wrong with it: what was given, what is allowed. */
export function readValue(
  parameter: Parameter,
  given: GivenValue,
): { ok: true; value: number } | { ok: false; reason: string } {
  const { unit, range, usual } = parameter;
  const { kind, times } = WRITTEN[unit];
  const allowed = `${valueText(parameter, range[0])} to ${valueText(parameter, range[1])} is allowed, ${valueText(parameter, usual)} is usual`;
  if (typeof given !== 'number' && typeof given !== 'string') {
    return {
      ok: false,
      reason: `is ${JSON.stringify(given)}; a number or a text with its unit is due, e.g. "${valueText(parameter, usual)}"`,
    };
  }
  const read = typeof given === 'number' ? null : parseQuantity(kind, given);
  if (read !== null && !read.ok) {
    return {
      ok: false,
      reason: `is "${given}"; a number with its unit is due (${unitsOf(kind).join(', ')}), e.g. "${valueText(parameter, usual)}"`,
    };
  }
  const plain = read === null ? Number(given) : unit === 'h' ? read.si / HOUR_S : read.si;
  if (!(plain >= range[0] && plain <= range[1])) {
    return { ok: false, reason: `is ${typeof given === 'number' ? given : `"${given}"`}; ${allowed}` };
  }
  return { ok: true, value: Number((times * plain).toPrecision(DIGITS)) / times };
}
