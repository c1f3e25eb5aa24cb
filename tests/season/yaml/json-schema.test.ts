import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { seasonJsonSchema } from '../../../src/season/yaml/json-schema.ts';
import { starterSeason } from '../../../src/season/yaml/starter.ts';
import { EXAMPLE } from './contract-example.ts';

const text = readFileSync(new URL('../../../src/season/season.schema.json', import.meta.url), 'utf8');
// Descriptions and examples of an editor's schema are no part of validation: strict mode would call unions of types odd.
const validate = new Ajv2020({ allErrors: true, allowUnionTypes: true, strictTypes: false }).compile(JSON.parse(text));

/** Paths of what the schema finds wrong. An editor sees values as YAML reads them: numbers are numbers. */
const wrong = (yaml: string): string[] => {
  validate(parse(yaml));
  return [...new Set((validate.errors ?? []).map((error) => error.instancePath))];
};

describe('the JSON Schema', () => {
  it('is up to date (npm run schema)', () => {
    expect(JSON.parse(text)).toEqual(JSON.parse(JSON.stringify(seasonJsonSchema())));
  });

  it('takes the example of the contract, the starter, and keys of the user’s own', () => {
    expect(wrong(EXAMPLE)).toEqual([]);
    expect(wrong(starterSeason(null))).toEqual([]);
    expect(wrong(`${EXAMPLE}x-note: { any: thing }\n`)).toEqual([]);
  });

  it.each([
    ['diameter: 36 ft', 'diameter: 36', '/bins/0/diameter'],
    ['diameter: 36 ft', 'diameter: 36 hp', '/bins/0/diameter'],
    ['diameter: 36 ft', 'diametre: 36 ft', '/bins/0'],
    ['goal: dry', 'goal: dyr', '/bins/0/goal'],
    ['crop: corn', 'crop: maize', '/bins/0/grain/crop'],
    ['latitude: 42.1', 'latitude: 142.1', '/site/latitude'],
    ['phases: 3', 'phases: 2', '/fans/0/supply/phases'],
    ['format: 1', 'format: 2', '/format'],
    ['filled: 2024-10-04', 'filled: 10/04/2024', '/bins/0/grain/filled'],
    ['isotherm: modified Henderson D245.5\n', 'isotherm: Henderson\n', '/bins/0/grain/isotherm'],
    ['  corn:    {', '  korn:    {', '/prices'],
    ['current: { column', 'curent: { column', '/files/2/columns'],
    ['holds: fan', 'holds: fans', '/files/2/holds'],
    ['price: 0.112 USD/kWh', 'price: 0.112', '/tariffs/0/energy/2/price'],
  ])('refuses %j → %j', (from, to, path) => {
    expect(EXAMPLE).toContain(from);
    expect(wrong(EXAMPLE.replace(from, to))).toContain(path);
  });

  it('describes every key', () => {
    const bare: string[] = [];
    const look = (node: unknown, path: string): void => {
      if (node === null || typeof node !== 'object') return;
      const { properties, ...rest } = node as { properties?: Record<string, { description?: string }> };
      for (const [key, held] of Object.entries(properties ?? {})) {
        if (!held.description) bare.push(`${path}.${key}`);
        look(held, `${path}.${key}`);
      }
      for (const held of Object.values(rest)) look(held, path);
    };
    look(JSON.parse(text), '');
    expect(bare).toEqual([]);
  });
});
