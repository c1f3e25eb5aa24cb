import { z } from 'zod';

/** What the blocks of `summary.json` are made of. */
export const number = z.number().nullable();
export const interval = z.tuple([z.number(), z.number()]).nullable().describe('90 %, [low, high]');
export const why = z.string().nullable().describe('why a number of this block is null; null where none needs it');
export const time = z.iso.datetime().nullable().describe('ISO 8601, UTC');
