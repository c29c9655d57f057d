import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { family } from '../journal/family.ts';
import { idSchema, sha256Schema } from '../result/id.ts';
import { plainText } from '../result/plain-text.ts';

/**
 * A table that was taken in, as one whole. Its entry is written first, and the `entries` that follow it in the journal, within
 * the same transaction, are what it brought: so all of it can be withdrawn in one step, however much later.
 */
export const importSchema = z.strictObject({
  id: idSchema,
  on: dateSchema,
  /** The file's name, without folders; null where it had none. */
  file: plainText(120).nullable(),
  /** Of the file's bytes. */
  digest: sha256Schema,
  readings: z.int().min(0),
  records: z.int().min(0),
  entries: z.int().min(1).max(100_000),
});
export type Import = z.infer<typeof importSchema>;

export const imports = family('import', 'records', importSchema);
export const importKept = factEntry('import-kept', imports, { car: () => null });
