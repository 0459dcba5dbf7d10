/** JSON Schema of the two kinds of file, for editors, and the keys that a place in a file may hold. */
import { z } from 'zod';
import { engineFileSchema } from './engine-schema.ts';
import type { Path } from './source-text.ts';
import { studySchema } from './study-schema.ts';

export type JsonSchema = z.core.JSONSchema.BaseSchema;

const cache = new WeakMap<z.ZodType, JsonSchema>();

/** JSON Schema (draft 2020-12) of what a user writes. */
export function schemaOf(schema: z.ZodType): JsonSchema {
  let made = cache.get(schema);
  if (made === undefined) {
    made = z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' });
    cache.set(schema, made);
  }
  return made;
}

/** JSON Schema of a study file. */
export function configurationJsonSchema(): JsonSchema {
  return { ...schemaOf(studySchema), title: 'Pulsejet study' };
}

/** JSON Schema of an engine file. */
export function engineJsonSchema(): JsonSchema {
  return { ...schemaOf(engineFileSchema), title: 'Pulsejet engine' };
}

/** Keys that the section at that path may hold. */
export function keysAt(schema: JsonSchema, path: Path): string[] {
  let places: JsonSchema[] = alternatives(schema);
  for (const key of path) {
    places = places.flatMap((place) => {
      const next = typeof key === 'number' ? place.items : place.properties?.[key];
      return next && typeof next === 'object' && !Array.isArray(next) ? alternatives(next as JsonSchema) : [];
    });
  }
  return [...new Set(places.flatMap((place) => Object.keys(place.properties ?? {})))];
}

function alternatives(schema: JsonSchema): JsonSchema[] {
  const inner = [...(schema.anyOf ?? []), ...(schema.oneOf ?? []), ...(schema.allOf ?? [])] as JsonSchema[];
  return [schema, ...inner.flatMap(alternatives)];
}
