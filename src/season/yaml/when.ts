import * as z from 'zod';
import type { When } from '../../money/tariff.ts';
import { fail, map } from './fields.ts';
import { show } from './show.ts';

export const DAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;

type Parts<T> = { ok: true; value: T } | { ok: false; reason: string };

const MONTHS_TAKE = 'months 1 to 12 like 6-9, 11-2 or [6, 7, 9]';
const DAYS_TAKE = 'days like mon-fri or sat,sun';
const HOURS_TAKE = 'hours like 13:00-19:00, 22:00-06:00 or several of them in a list';

/** `6-9`, `11-2` across the year's end, `6,7,9`, or a list of these. */
function readMonths(raw: string | readonly string[]): Parts<Set<number>> {
  const step = (word: string) => (/^(?:0?[1-9]|1[0-2])$/.test(word) ? Number(word) : null);
  return readCircle(raw, 12, step, MONTHS_TAKE);
}

/** `mon-fri`, `sat-mon` across the week's end, `sat,sun`, or a list of these. */
function readDays(raw: string | readonly string[]): Parts<Set<number>> {
  const step = (word: string) => DAYS.indexOf(word.toLowerCase() as (typeof DAYS)[number]) + 1 || null;
  return readCircle(raw, 7, step, DAYS_TAKE);
}

/** Spans of a circle of 1 to `size` as the set of its steps. */
function readCircle(
  raw: string | readonly string[],
  size: number,
  step: (word: string) => number | null,
  takes: string,
): Parts<Set<number>> {
  const steps = new Set<number>();
  for (const part of partsOf(raw)) {
    const ends = part.split('-').map((word) => step(word.trim()));
    const [from, to = from] = ends;
    if (ends.length > 2 || from === null || to === null) {
      return { ok: false, reason: `is ${shown(raw)}, of which ${show(part)} is not understood; it takes ${takes}.` };
    }
    for (let at = from; ; at = (at % size) + 1) {
      steps.add(at);
      if (at === to) break;
    }
  }
  return { ok: true, value: steps };
}

const CLOCK = /^(\d{1,2}):([0-5]\d)$/;

function minutes(word: string): number | null {
  const match = CLOCK.exec(word.trim());
  const value = match === null ? Number.NaN : Number(match[1]) * 60 + Number(match[2]);
  return value <= 24 * 60 ? value : null;
}

/** `13:00-19:00`, `22:00-06:00` across midnight, several with commas or in a list. [from, to) in minutes. */
function readHours(raw: string | readonly string[]): Parts<[number, number][]> {
  const spans: [number, number][] = [];
  for (const part of partsOf(raw)) {
    const ends = part.split('-').map(minutes);
    const [from, to] = ends;
    if (ends.length !== 2 || from === null || to === null || from === 24 * 60) {
      return {
        ok: false,
        reason: `is ${shown(raw)}, of which ${show(part)} is not understood; it takes ${HOURS_TAKE}.`,
      };
    }
    if (from === to) {
      return { ok: false, reason: `is ${shown(raw)}; ${show(part)} has no length. For all hours leave \`hours\` out.` };
    }
    // Midnight as an end is the end of the day, not its start.
    spans.push([from, to === 0 ? 24 * 60 : to]);
  }
  return { ok: true, value: spans };
}

function partsOf(raw: string | readonly string[]): string[] {
  const parts = (typeof raw === 'string' ? [raw] : raw).flatMap((text) => text.split(',')).map((part) => part.trim());
  return parts.length === 0 ? [''] : parts;
}

const shown = (raw: string | readonly string[]) => show(typeof raw === 'string' ? raw : raw.join(', '));

function oneOrMore(
  read: (raw: string | string[]) => Parts<unknown>,
  takes: string,
  description: string,
  one: Record<string, unknown>,
) {
  const entry = z.string({ error: takes }).meta(one);
  return z
    .union([entry, z.array(entry, { error: takes })], { error: takes })
    .superRefine((raw, ctx) => {
      const result = read(raw);
      if (!result.ok) fail(ctx, 'SEASON_WHEN', result.reason);
    })
    .meta({ description });
}

export const whenSchema = () =>
  map(
    {
      months: oneOrMore(readMonths, MONTHS_TAKE, 'months, e.g. 6-9, 11-2 or [6, 7, 9]', {
        type: ['string', 'integer'],
        pattern: '^[0-9 ,-]+$',
        minimum: 1,
        maximum: 12,
      }).optional(),
      days: oneOrMore(readDays, DAYS_TAKE, 'weekdays, e.g. mon-fri or sat,sun', {
        pattern: `^(?:(?:${DAYS.join('|')})[ ,-]*)+$`,
      }).optional(),
      hours: oneOrMore(readHours, HOURS_TAKE, 'local hours, e.g. 13:00-19:00 or 22:00-06:00', {
        pattern: '^(?:[0-9]{1,2}:[0-9]{2} *- *[0-9]{1,2}:[0-9]{2}[ ,]*)+$',
      }).optional(),
    },
    'when the rule holds; a part left out holds always',
  );

export type WhenText = z.infer<ReturnType<typeof whenSchema>>;

/** The rule of a text that has passed the schema. */
export function toWhen(text: WhenText | undefined): When | null {
  if (text === undefined) return null;
  return {
    months: text.months === undefined ? null : checkedPart(readMonths(text.months)),
    days: text.days === undefined ? null : checkedPart(readDays(text.days)),
    hours: text.hours === undefined ? null : checkedPart(readHours(text.hours)),
  };
}

function checkedPart<T>(part: Parts<T>): T {
  if (!part.ok) throw new Error(`unchecked rule: ${part.reason}`);
  return part.value;
}
