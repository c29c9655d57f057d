import { z } from 'zod';
import { dateSchema } from '../../calendar/date-schema.ts';
import { importSchema } from '../../records/import.ts';

/** Why an import can no longer be withdrawn: another entry stands upon what it brought, or what it brought has gone out under a seal. */
export const importHeldSchema = z.object({
  by: z.enum(['entry', 'seal']),
  /** The entry that stands upon it, the day it was made, and the car it is of; null where a seal holds it, or the entry is of no car. */
  entry: z.int().nullable(),
  on: dateSchema.nullable(),
  car: z.string().nullable(),
});
export type ImportHeld = z.infer<typeof importHeldSchema>;

/** The imports that stand, the latest first, each with what holds it; null: it may be withdrawn. */
export const standingImportsSchema = z.object({ imports: z.array(importSchema.extend({ enteredAt: z.string(), held: importHeldSchema.nullable() })) });
export type StandingImports = z.infer<typeof standingImportsSchema>;
