import type { z } from 'zod';

/**
 * A family of facts of one shape, kept in a table of the same name: cars, readings, service items ...
 * `stage` says which part of the program must look again when one of them changes.
 */
export interface Family<Value> {
  readonly name: string;
  readonly stage: string;
  readonly schema: z.ZodType<Value>;
}

/** Declares a family of facts. @example family('reading', 'fleet', readingSchema) */
export function family<Value>(name: string, stage: string, schema: z.ZodType<Value>): Family<Value> {
  return { name, stage, schema };
}
