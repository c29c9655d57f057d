import { z } from 'zod';
import { canonicalJson } from './canonical-json.ts';
import { sha256TextSchema, type Sha256 } from './digest.ts';
import { hexText, joinBytes } from './hex-text.ts';
import { utf8Bytes } from './utf8-text.ts';

/** A moment in UTC to the millisecond, `2026-11-25T09:00:00.000Z`: an existing one, in the one form that `at` takes. */
export const instantSchema = z
  .string()
  .regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}\.\d{3}Z$/)
  .refine((text) => isInstant(text));

function isInstant(text: string): boolean {
  const at = new Date(text);
  return !Number.isNaN(at.getTime()) && at.toISOString() === text;
}

/** The name of a kind of entry or of a field: `reading-entered`, `costMinor`. */
const nameSchema = z.string().regex(/^[a-z][A-Za-z0-9.-]{0,79}$/);

/**
 * One row of the journal. `seq` counts from 0; `at` is when it was entered; `kind` and `version` say how its fields
 * are read; `subject` is what it is about; `fields` maps a name to the salted digest of its value; `prev` is the hash
 * of the row before, 64 zeros for the first. Nothing else is allowed in it.
 */
export const rowSchema = z.strictObject({
  seq: z.int().nonnegative(),
  at: instantSchema,
  kind: nameSchema,
  version: z.int().positive(),
  subject: z.string().min(1).max(200),
  fields: z.record(nameSchema, sha256TextSchema),
  prev: sha256TextSchema,
});
export type Row = z.infer<typeof rowSchema>;

/** What the first row has for the hash of the row before it. */
export const NO_ROW_BEFORE = '0'.repeat(64);

/** Says that a leaf of the tree is hashed, so that a leaf is never taken for an inner node. */
const LEAF = new Uint8Array([0]);

/** The canonical text of a row: what is hashed, stored and handed over. */
export function rowText(row: Row): string {
  return canonicalJson(row);
}

/**
 * The hash of a row in hexadecimal: `sha256(0x00 || row text)`, which is also its leaf in the Merkle tree.
 *
 * Source: RFC 9162 section 2.1.1, leaf hash (vectors seen and recomputed).
 */
export function rowHash(row: Row, sha256: Sha256): string {
  return rowTextHash(rowText(row), sha256);
}

/** The hash of a row whose canonical text is at hand. */
export function rowTextHash(text: string, sha256: Sha256): string {
  return hexText(sha256(joinBytes(LEAF, utf8Bytes(text))));
}
