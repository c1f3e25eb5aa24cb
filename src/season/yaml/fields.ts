import * as z from 'zod';
import type { SeasonCode } from './codes.ts';
import { didYouMean } from './nearest.ts';
import { show } from './show.ts';

// Building blocks of the schema. All scalars reach it as the text that was written, so that every check works on what the
// user sees; `meta` says what an editor, which does know numbers, should expect. The `error` of a field is never a whole
// sentence but what the field takes; issues.ts makes the sentence.

type Ctx = z.core.$RefinementCtx<unknown>;

/** Reports what is wrong with a value: `text` goes on after its path. */
export function fail(ctx: Ctx, code: SeasonCode, text: string): void {
  ctx.addIssue({ code: 'custom', message: text, params: { code } });
}

const LONGEST = 500;

/** Any text, told to `takes` in words. */
export function text(description: string, takes = 'a text') {
  return z
    .string({ error: takes })
    .superRefine((value, ctx) => {
      if (value.trim() === '') fail(ctx, 'SEASON_TYPE', `is empty; it takes ${takes}.`);
      else if (value.length > LONGEST) {
        fail(ctx, 'SEASON_TYPE', `has ${value.length} characters; it takes ${takes} of at most ${LONGEST}.`);
      }
    })
    .meta({ description, type: ['string', 'number'] });
}

/** An id: on one line, so that it can stand in tables and messages. */
export function id(description: string) {
  return z
    .string({ error: 'an id, e.g. B1' })
    .superRefine((value, ctx) => {
      if (!/^[^\s\p{C}{}](?:[^\p{C}{}]{0,62}[^\s\p{C}{}])?$/u.test(value)) {
        fail(ctx, 'SEASON_ID', `is ${show(value)}; an id is 1 to 64 characters on one line without { and }, e.g. B1.`);
      }
    })
    .meta({ description, type: ['string', 'number'] });
}

/** One of a few words. */
export function choice<const T extends readonly string[]>(words: T, description: string) {
  return z.enum(words, { error: `one of ${words.join(', ')}` }).meta({ description });
}

export interface NumberLimits {
  min: number;
  max: number;
  whole?: boolean;
}

const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/;

/** A number without unit. */
export function number(description: string, { min, max, whole = false }: NumberLimits) {
  const takes = `a ${whole ? 'whole ' : ''}number from ${min} to ${max}`;
  return z
    .string({ error: takes })
    .superRefine((value, ctx) => {
      if (!NUMBER.test(value) || (whole && !Number.isInteger(Number(value)))) {
        fail(ctx, 'SEASON_TYPE', `is ${show(value)}; it takes ${takes}, without unit.`);
      } else if (!(Number(value) >= min && Number(value) <= max)) {
        fail(ctx, 'SEASON_RANGE', `is ${show(value)}; it must lie between ${min} and ${max}.`);
      }
    })
    .meta({ description, type: whole ? 'integer' : 'number', minimum: min, maximum: max });
}

/** A text that a function can read, or says why not. */
export function checked(
  code: SeasonCode,
  takes: string,
  check: (value: string) => { ok: true } | { ok: false; reason: string },
  meta: { description: string; [key: string]: unknown },
) {
  return z
    .string({ error: takes })
    .superRefine((value, ctx) => {
      const result = check(value);
      if (!result.ok) fail(ctx, code, result.reason);
    })
    .meta(meta);
}

/** A map with known keys only. */
export function map<T extends z.ZodRawShape>(shape: T, description: string) {
  const keys = Object.keys(shape);
  return z.strictObject(shape, { error: (issue) => unknownKeys(issue, keys) }).meta({ description });
}

function unknownKeys(issue: z.core.$ZodRawIssue, keys: readonly string[]): string {
  // issues.ts splits the keys again to find the nearest.
  return issue.code === 'unrecognized_keys' ? keys.join(', ') : `a map with the keys ${keys.join(', ')}`;
}

/** A list with at least `least` entries. */
export function list<T extends z.ZodType>(item: T, description: string, takes: string, least = 0) {
  return z.array(item, { error: takes }).min(least, { error: takes }).meta({ description });
}

/** `is "dyr"; it takes one of dry, cool. Did you mean "dry"?` */
export function choiceText(value: unknown, words: readonly string[]): string {
  return `is ${show(value)}; it takes one of ${words.join(', ')}.${didYouMean(String(value), words)}`;
}
