import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { raw } from './markup.ts';

const SCRIPT = readFileSync(new URL('./read-out.js', import.meta.url), 'utf8')
  .replace(/^\s*(\/\/.*)?\n/gm, '')
  .replace(/^\s+/gm, '');

/** The one script of a page: it reads values out near the pointer and by the arrow keys. All of a page can be read without it. */
export const READ_OUT = raw(`<script>${SCRIPT}</script>`);

/** By its fingerprint a page lets this script run and no other. */
export const READ_OUT_HASH = `sha256-${createHash('sha256').update(SCRIPT).digest('base64')}`;
