import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { isMap, isScalar, isSeq, parseDocument, Scalar, type YAMLMap, type YAMLSeq } from 'yaml';
import { EXAMPLE, EXAMPLE_FILES } from './contract-example.ts';
import { problemsOf, removeFolders, seasonFolder } from './season-folder.ts';

afterAll(removeFolders);

type Slot = { holder: YAMLMap | YAMLSeq; at: number };

/** Every place of the example where a value stands. */
function slots(node: unknown, found: Slot[] = []): Slot[] {
  if (isMap(node) || isSeq(node)) {
    node.items.forEach((item, at) => {
      found.push({ holder: node, at });
      slots(isMap(node) ? (item as { value: unknown }).value : item, found);
    });
  }
  return found;
}

const garbage = fc.oneof(
  fc.constantFrom(
    '',
    '~',
    '-1',
    '1e999',
    'NaN',
    '0x1F',
    '../x',
    '/',
    '**',
    '{a,b',
    '[',
    '2024-13-45',
    '1 ft',
    '%',
    '¤',
  ),
  fc.string({ unit: 'grapheme', maxLength: 20 }),
  fc.string({ unit: 'binary', maxLength: 10 }),
);
const value = fc.oneof(
  garbage,
  fc.array(garbage, { maxLength: 3 }),
  fc.dictionary(garbage, garbage, { maxKeys: 3 }),
  fc.constant(null),
  fc.double(),
);

describe('garbage', () => {
  it('in place of any value is told as a problem of the input, with its place', async () => {
    const folder = seasonFolder(EXAMPLE_FILES);
    const count = slots(parseDocument(EXAMPLE).contents).length;
    let broken = 0;
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 0, max: count - 1 }), value, async (which, put) => {
        const doc = parseDocument(EXAMPLE);
        const { holder, at } = slots(doc.contents)[which];
        const node = doc.createNode(put);
        if (isScalar(node)) node.type = typeof put === 'string' ? Scalar.QUOTE_DOUBLE : Scalar.PLAIN;
        if (isMap(holder)) holder.items[at].value = node;
        else holder.items[at] = node;
        writeFileSync(join(folder, 'season.yaml'), doc.toString());
        // Anything but an InputError is thrown on and fails the property.
        const problems = await problemsOf(folder);
        if (problems.length > 0) broken += 1;
        for (const one of problems) {
          expect(one).toMatchObject({ file: 'season.yaml', line: expect.any(Number), column: expect.any(Number) });
        }
      }),
      { seed: 20241004, numRuns: 400 },
    );
    // Most garbage must be noticed; free texts may hold anything.
    expect(broken).toBeGreaterThan(250);
  });

  it('in the text itself is told too', async () => {
    const folder = seasonFolder(EXAMPLE_FILES);
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: 0, max: EXAMPLE.length }),
        fc.integer({ min: 0, max: 40 }),
        garbage,
        async (at, cut, put) => {
          writeFileSync(join(folder, 'season.yaml'), EXAMPLE.slice(0, at) + put + EXAMPLE.slice(at + cut));
          for (const one of await problemsOf(folder)) expect(one.message).not.toBe('');
        },
      ),
      { seed: 20250318, numRuns: 300 },
    );
  });
});
