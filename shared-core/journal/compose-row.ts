import { assert, must } from '../result/assert.ts';
import type { Json } from './canonical-json.ts';
import type { Sha256 } from './digest.ts';
import { fieldDigest } from './field-digest.ts';
import { NO_ROW_BEFORE, rowSchema, type Row } from './row.ts';

/** What a row is made of: an entry, its values, and one salt (32 hexadecimal digits of chance) for each of them. */
export interface RowParts {
  readonly seq: number;
  readonly at: string;
  readonly kind: string;
  readonly version: number;
  readonly subject: string;
  readonly values: Readonly<Record<string, Json>>;
  readonly salts: Readonly<Record<string, string>>;
  /** The hash of the row before, or null for the first row. */
  readonly prev: string | null;
}

/**
 * The row for an entry: its values go in as salted digests, never themselves. Parts that do not fit the row's schema,
 * a value without a salt, or a salt used for two values are our own bugs and throw.
 *
 * @example composeRow({ seq: 0, at, kind: 'reading-entered', version: 1, subject: 'car-pip', values, salts, prev: null }, sha256)
 */
export function composeRow(parts: RowParts, sha256: Sha256): Row {
  const { seq, at, kind, version, subject } = parts;
  assert((parts.prev === null) === (seq === 0), 'only the first row has none before it');
  assertOneSaltEach(parts);
  const fields: Record<string, string> = {};
  for (const [name, value] of Object.entries(parts.values)) {
    fields[name] = fieldDigest(value, must(parts.salts[name], `salt for ${name}`), sha256);
  }
  return rowSchema.parse({ seq, at, kind, version, subject, fields, prev: parts.prev ?? NO_ROW_BEFORE });
}

/** A salt used twice would show that two hidden values are equal; a salt for no value would be lost. */
function assertOneSaltEach(parts: RowParts): void {
  const salts = Object.values(parts.salts);
  assert(salts.length === Object.keys(parts.values).length, 'as many salts as values');
  assert(new Set(salts).size === salts.length, 'a salt for each value alone');
}
