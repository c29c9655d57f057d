import { z } from 'zod';
import { assert } from '../result/assert.ts';
import { canonicalJson, type Json } from './canonical-json.ts';
import type { Sha256 } from './digest.ts';
import { hexBytes, hexText, joinBytes } from './hex-text.ts';
import { utf8Bytes } from './utf8-text.ts';

/** Bytes of chance before a value, so that a short value cannot be guessed from its digest. */
export const SALT_BYTES = 16;

/** A salt as it is written: 32 lower-case hexadecimal digits. */
export const saltTextSchema = z.string().regex(/^[0-9a-f]{32}$/);

/** A field's value and its salt, as they stand beside a row: enough to prove the value against the row's digest. */
export interface ShownField {
  readonly value: Json;
  readonly salt: string;
}

/**
 * The digest that stands in a row for a value: `sha256(salt || canonicalJSON(value))`, in hexadecimal. `salt` is
 * 32 hexadecimal digits.
 *
 * @example fieldDigest(38250, '00112233445566778899aabbccddeeff', sha256) //=> 64 digits
 */
export function fieldDigest(value: Json, salt: string, sha256: Sha256): string {
  const saltBytes = hexBytes(salt);
  assert(saltBytes.length === SALT_BYTES, 'a salt of another length than 16 bytes');
  return hexText(sha256(joinBytes(saltBytes, utf8Bytes(canonicalJson(value)))));
}

/** Whether a shown value is the one whose digest a row carries. */
export function fieldAgrees(shown: ShownField, digest: string, sha256: Sha256): boolean {
  return fieldDigest(shown.value, shown.salt, sha256) === digest;
}
