import { z } from 'zod';
import { canonicalJson, type Json } from '../journal/canonical-json.ts';
import { historyPartSchema } from './history-part.ts';
import { rowsPartSchema, sealPartSchema } from './journal-part.ts';
import { HISTORY, ROWS, SCHEMA, SEAL, SIGNED_CONTENTS, textFile, type Digests, type PackFile } from './pack-files.ts';
import { signedContentsSchema } from './signed-contents.ts';

const PARTS: readonly { readonly path: string; readonly schema: z.ZodType }[] = [
  { path: HISTORY, schema: historyPartSchema }, { path: ROWS, schema: rowsPartSchema }, { path: SEAL, schema: sealPartSchema }, { path: SIGNED_CONTENTS, schema: signedContentsSchema },
];

/**
 * The form of every JSON file of a pack, as JSON Schema (draft 2020-12), so that a program can be written without this one.
 *
 * Source: the schemas are derived from those that this program reads a pack by, so they cannot say otherwise.
 */
export function schemaFiles(digests: Digests): PackFile[] {
  return PARTS.map(({ path, schema }) => {
    const name = path.split('/').at(-1) ?? path;
    return textFile(`${SCHEMA}${name.replace('.json', '.schema.json')}`, canonicalJson(z.toJSONSchema(schema) as Json), digests);
  });
}
