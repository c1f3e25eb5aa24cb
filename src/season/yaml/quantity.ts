import * as z from 'zod';
import { exampleOf, parseQuantity, type QuantityResult, type UnitKind, unitsOf } from '../../base/units.ts';
import { fail } from './fields.ts';
import { show } from './show.ts';

/** What a quantity must lie between, in SI; `words` says the same in the units people use. */
export interface Limits {
  min?: number;
  max?: number;
  /** the least value itself is refused */
  above?: number;
  words: string;
}

export const ABOVE_ZERO: Limits = { above: 0, words: 'it must be above zero' };
export const NOT_NEGATIVE: Limits = { min: 0, words: 'it must not be negative' };
export const MOISTURE: Limits = { min: 0, max: 0.6, words: 'it must lie between 0 % and 60 %, wet basis' };

/** In SI of any kind; beyond it lies no slip of the pen but a broken file, and sums would leave what a computer can hold. */
const LARGEST_SI = 1e12;

/** Text of a quantity, checked against its kind; stays text in the schema's output. */
export function quantity(kind: UnitKind, currency: string, description: string, limits?: Limits) {
  return quantityOf([kind], (text) => readQuantity(kind, text, currency), currency, description, limits);
}

/** The same where several kinds are taken; the first is the one that messages name. */
export function quantityOf(
  kinds: readonly UnitKind[],
  read: (text: string) => { ok: true; si: number } | { ok: false; reason: string },
  currency: string,
  description: string,
  limits?: Limits,
) {
  const [kind] = kinds;
  const takes = `${article(kind)} ${kind} with its unit, e.g. "${exampleOf(kind, currency)}"`;
  return z
    .string({ error: takes })
    .superRefine((value, ctx) => {
      const result = read(value);
      if (!result.ok) fail(ctx, 'SEASON_UNIT', result.reason);
      else if (limits !== undefined && !within(result.si, limits)) {
        fail(ctx, 'SEASON_RANGE', `is ${show(value)}; ${limits.words}.`);
      }
    })
    .meta({ description, pattern: quantityPattern(kinds), examples: kinds.map((one) => exampleOf(one, currency)) });
}

/** parseQuantity, and the traps of written numbers: `1,5 m` is not 15 m, and nothing is endless. */
export function readQuantity(
  kind: UnitKind,
  text: string,
  currency: string,
  also: readonly string[] = [],
): QuantityResult {
  const e = `Write e.g. "${exampleOf(kind, currency)}".`;
  if (text.length > 60) return { ok: false, reason: `is ${show(text)}; it takes a number with a unit. ${e}` };
  const [number] = /^[^\sa-zA-Z%/]*/.exec(text.trim()) ?? [''];
  if (number.includes(',') && !/^[+-]?\d{1,3}(,\d{3})+(\.\d*)?$/.test(number)) {
    const reason = `is "${text}"; a comma only parts thousands here. Write decimals with a point.`;
    return { ok: false, reason };
  }
  const result = parseQuantity(kind, text, currency, also);
  if (result.ok && !Number.isFinite(result.si)) return { ok: false, reason: `is "${text}"; that is no number. ${e}` };
  if (result.ok && Math.abs(result.si) > LARGEST_SI)
    return { ok: false, reason: `is "${text}"; that is too large. ${e}` };
  return result;
}

/** The SI value of a text that has passed the schema. */
export function si(kind: UnitKind, text: string, currency: string): number {
  const result = readQuantity(kind, text, currency);
  if (!result.ok) throw new Error(`unchecked ${kind}: ${result.reason}`);
  return result.si;
}

/** The same for an optional key. */
export function siOrNull(kind: UnitKind, text: string | undefined, currency: string): number | null {
  return text === undefined ? null : si(kind, text, currency);
}

// Written so that NaN fails.
function within(value: number, { min, max, above }: Limits): boolean {
  return (
    (min === undefined || value >= min) && (max === undefined || value <= max) && (above === undefined || value > above)
  );
}

const article = (word: string) => (/^[aeiou]/.test(word) ? 'an' : 'a');

/** A regular expression for editors; any currency code is let through, the season's own is checked on reading. */
function quantityPattern(kinds: readonly UnitKind[]): string {
  const all = kinds.flatMap((kind) => unitsOf(kind, '¤'));
  const units = all.map((unit) =>
    unit
      .replace(/[.*+?^${}()|[\]\\]/g, '\\$&')
      .replaceAll('/', ' */ *')
      .replace(/(?<=m|ft)3/g, '(?:\\^?3|³)')
      .replace('¤', '[A-Z]{3}'),
  );
  if (units.includes('degF')) units.push('(?:°|deg ?)[CF]');
  return `^ *[+-]?(?:\\d[\\d,_]*\\.?\\d*|\\.\\d+)(?:[eE][+-]?\\d+)? *(?:${units.join('|')}) *$`;
}
