import * as z from 'zod';
import { seasonSchema } from './season-schema.ts';

/** The JSON Schema (draft 2020-12) of season.yaml, for editors. Made by `npm run schema`. */
export function seasonJsonSchema(): Record<string, unknown> {
  const schema = z.toJSONSchema(seasonSchema('USD'), {
    target: 'draft-2020-12',
    io: 'input',
    override: ({ jsonSchema }) => {
      // Keys of the user's own are ignored everywhere.
      if (jsonSchema.type !== 'object') return;
      if (jsonSchema.additionalProperties === false) jsonSchema.patternProperties = { '^x-': {} };
      else if (typeof jsonSchema.additionalProperties === 'object') jsonSchema.patternProperties = { '^x-': {} };
    },
  }) as Record<string, unknown>;
  return { ...schema, title: 'fanbook season' };
}
