import { describe, expect, it } from 'vitest';
import { summaryJsonSchema } from '../../src/analysis/summary-shape.ts';

// A number of `summary.json` has its interval beside it, or its schema says how it is known; and its name or the schema its unit.
const SAYS = /\b(measured|stated|counted|a bound|by the fitted model)\b/;
const UNIT_IN_NAME = /(Pct|Points|Kg|Kwh|Kw|M3|M3S|M|C|K|Hours|Bushels|KgWater|PerBushel|bushels|hours)$/;
const UNIT_SAID = /\b(h|m|points?|money|kWh|kW|fraction|times|counted|numbered)\b/;
// Not written by a review without models: nothing stands there but null and empty lists.
const NOT_WRITTEN = /^bins\.condition\b/;

interface Schema {
  type?: string | string[];
  description?: string;
  properties?: Record<string, Schema>;
  items?: Schema | false;
  anyOf?: Schema[];
}

/** Where each number of the schema stands: its dotted path, its description, and the keys beside it. */
function numbersOf(schema: Schema, path = '', beside: readonly string[] = [], said = ''): Leaf[] {
  const description = `${said} ${schema.description ?? ''}`;
  const types = [schema.type ?? []].flat();
  return [
    ...(types.includes('number') || types.includes('integer') ? [{ path, description, beside }] : []),
    ...(schema.anyOf ?? []).flatMap((one) => numbersOf(one, path, beside, description)),
    ...(schema.items ? numbersOf(schema.items, path, [], description) : []),
    ...Object.entries(schema.properties ?? {}).flatMap(([key, one]) =>
      numbersOf(one, path === '' ? key : `${path}.${key}`, Object.keys(schema.properties ?? {})),
    ),
  ];
}

interface Leaf {
  path: string;
  description: string;
  beside: readonly string[];
}

const nameOf = ({ path }: Leaf) => path.split('.').at(-1) ?? '';

function known(leaf: Leaf): boolean {
  const own = /its interval is `interval`/.test(leaf.description) && leaf.beside.includes('interval');
  return own || leaf.beside.includes(`${nameOf(leaf)}Interval`) || SAYS.test(leaf.description);
}

function hasUnit(leaf: Leaf): boolean {
  return UNIT_IN_NAME.test(nameOf(leaf)) || UNIT_SAID.test(leaf.description);
}

const numbers = numbersOf(summaryJsonSchema() as Schema).filter(({ path }) => !NOT_WRITTEN.test(path));

describe('no number of summary.json stands alone', () => {
  it('each has its interval or the word how it is known', () => {
    expect(numbers.filter((leaf) => !known(leaf)).map(({ path }) => path)).toEqual([]);
    expect(numbers.length).toBeGreaterThan(150);
  });
  it('each has its unit in its name or its description', () => {
    expect(numbers.filter((leaf) => !hasUnit(leaf)).map(({ path }) => path)).toEqual([]);
  });
  it('fails for a number with neither', () => {
    const schema = { properties: { cost: { type: ['number', 'null'], description: 'energy alone' } } };
    const [cost] = numbersOf(schema);
    expect([known(cost), hasUnit(cost)]).toEqual([false, false]);
    const [beside] = numbersOf({ properties: { ...schema.properties, costInterval: { type: 'array' } } });
    expect(known(beside)).toBe(true);
  });
});
