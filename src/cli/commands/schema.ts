/** `schema`: what a file may hold, as JSON Schema (draft 2020-12). */
import { configurationJsonSchema, engineJsonSchema } from '../../config/json-schema.ts';
import { writeData } from '../output.ts';
import { evaluationJsonSchema, resultsJsonSchema } from '../schemas/json-schemas.ts';

export interface SchemaOptions {
  engine?: boolean;
  results?: boolean;
  evaluation?: boolean;
}

export function schemaCommand(options: SchemaOptions): void {
  writeData(JSON.stringify(chosen(options), null, 2));
}

function chosen(options: SchemaOptions): object {
  if (options.engine) return engineJsonSchema();
  if (options.results) return resultsJsonSchema();
  if (options.evaluation) return evaluationJsonSchema();
  return configurationJsonSchema();
}
