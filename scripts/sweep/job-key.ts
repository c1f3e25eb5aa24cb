import { createHash, type Hash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const SRC = fileURLToPath(new URL('../../src/', import.meta.url));
/** Rooms whose code a run hangs on. */
const ROOMS = ['base', 'air', 'grain', 'bin', 'money', 'simulation', 'tables', 'season', 'analysis'];

/** Hash of plain data whatever the order of its keys; numbers by their bits, functions left out. */
export function hashOf(...values: readonly unknown[]): string {
  const hash = createHash('sha256');
  for (const value of values) add(hash, value);
  return hash.digest('hex').slice(0, 32);
}

function add(hash: Hash, value: unknown): void {
  if (ArrayBuffer.isView(value)) {
    hash.update(`${value.constructor.name}:${value.byteLength};`);
    hash.update(Buffer.from(value.buffer, value.byteOffset, value.byteLength));
  } else if (value instanceof Set) {
    add(hash, [...value]);
  } else if (Array.isArray(value)) {
    hash.update(`[${value.length};`);
    for (const one of value) add(hash, one);
  } else if (value !== null && typeof value === 'object') {
    hash.update('{');
    for (const key of Object.keys(value).sort()) {
      const one = (value as Record<string, unknown>)[key];
      if (typeof one === 'function' || one === undefined) continue;
      hash.update(`${JSON.stringify(key)}:`);
      add(hash, one);
    }
    hash.update('}');
  } else hash.update(`${typeof value}:${Object.is(value, -0) ? '-0' : String(value)};`);
}

/** Hash of the code that the runs hang on: other code, other results. */
export function codeHash(): string {
  const hash = createHash('sha256');
  for (const room of ROOMS) {
    const names = readdirSync(join(SRC, room), { recursive: true, encoding: 'utf8' })
      .map((name) => name.replaceAll('\\', '/'))
      .filter((name) => name.endsWith('.ts'))
      .sort();
    for (const name of names) hash.update(`${room}/${name}\n`).update(readFileSync(join(SRC, room, name)));
  }
  return hash.digest('hex').slice(0, 32);
}
