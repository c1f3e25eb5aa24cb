import { groupedCount } from '../../base/grouped-count.ts';
import { listed } from '../../base/listed.ts';
import type { OwnNumber } from '../../report/page.ts';
import type { Units } from '../../report/units.ts';
import { sentence } from '../words.ts';
import { isAmount, isEstimate } from './amount.ts';

/** What may stand in a text: words, lists of words, whole numbers that count, moments, numbers with their kind, and what is missing. */
export type Live = string | number | Date | OwnNumber | { value: null; why: string } | null | readonly string[];

/** A text with its live numbers said, and why those that are dashes are missing, each reason once. */
export interface SaidText {
  text: string;
  whys: readonly string[];
}

/**
 * @param strings  the words between the live numbers; line breaks and indents count as one blank
 * @throws         TypeError for a number that does not say what it is of
 */
export function sayLive(units: Units, strings: readonly string[], parts: readonly Live[]): SaidText {
  const whys: string[] = [];
  const missing = (why: string | null) => {
    const reason = sentence(why ?? 'Not known');
    if (!whys.includes(reason)) whys.push(reason);
    return '–';
  };
  const said = parts.map((part) => sayPart(units, part, missing));
  const whole = strings.reduce((all, words, i) => all + said[i - 1] + words);
  return { text: whole.replace(/[ \t]*\s+/g, ' ').trim(), whys };
}

function sayPart(units: Units, part: Live, missing: (why: string | null) => string): string {
  if (part === null || part === undefined) return missing(null);
  if (typeof part === 'string') return part;
  if (typeof part === 'number') return sayCount(part, missing);
  if (part instanceof Date) return units.date(part.getTime());
  if (Array.isArray(part)) return listed(part);
  if (isAmount(part)) {
    const { of, amount } = part;
    return typeof amount === 'object' && amount.value === null ? missing(amount.why) : units.say(of, amount);
  }
  if (isEstimate(part) && part.value !== null) throw new TypeError(kindless('an estimate'));
  if (typeof part === 'object' && 'why' in part) return missing(part.why);
  throw new TypeError(
    `a text cannot say ${typeof part === 'object' ? JSON.stringify(part).slice(0, 80) : typeof part}`,
  );
}

function sayCount(count: number, missing: (why: string | null) => string): string {
  if (Number.isNaN(count)) return missing(null);
  if (!Number.isSafeInteger(count)) throw new TypeError(kindless(String(count)));
  return `${count < 0 ? '−' : ''}${groupedCount(Math.abs(count))}`;
}

const kindless = (what: string) =>
  `${what} stands in a text without its kind, so its unit is not known. Write amount('hours', …) around it, with a kind such as hours, points, moisture, temperature, money, energy.`;
