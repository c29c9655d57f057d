import { z } from 'zod';
import { idSchema, sha256Schema } from '../../result/id.ts';
import { refusedBy } from '../../result/refused-by.ts';
import { importChoicesSchema } from './import-choices.ts';
import { importViewSchema } from './import-view.ts';

/** The largest table taken, in bytes. */
export const LARGEST_TABLE_BYTES = 20_000_000;
const LARGEST_BASE64 = Math.ceil(LARGEST_TABLE_BYTES / 3) * 4;
const tooLarge = refusedBy('import-file-large');

/** A file to be taken in, as bytes or as text, and what the person says of it. */
export const previewImportRequest = z.strictObject({
  ...importChoicesSchema.shape,
  /** The file's bytes; their encoding is found out. */
  base64: z.string().max(LARGEST_BASE64, tooLarge).nullable().default(null),
  /** Or its text, where only that is at hand. */
  text: z.string().max(LARGEST_TABLE_BYTES, tooLarge).nullable().default(null),
  /** The file's name. */
  name: z.string().max(1000).nullable().default(null),
});

/** The same, to be stored. With what the preview answered, what has changed since is refused and not stored. */
export const keepImportRequest = z.strictObject({
  ...previewImportRequest.shape,
  digest: sha256Schema.nullable().default(null),
  outcome: sha256Schema.nullable().default(null),
  /** The very same file may be taken in again, though an import of it stands. */
  again: z.boolean().default(false),
});
export type KeepImportRequest = z.output<typeof keepImportRequest>;

/** What was stored, and the import's id: by it the whole is withdrawn later. */
export const keptImportSchema = z.object({ ...importViewSchema.shape, import: idSchema });
export type KeptImport = z.infer<typeof keptImportSchema>;
