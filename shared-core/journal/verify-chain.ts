import type { Sha256 } from './digest.ts';
import { NO_ROW_BEFORE, rowHash, rowSchema, type Row } from './row.ts';

/** A row as it is stored, with the hash that was stored beside it. */
export interface StoredRow {
  readonly row: Row;
  readonly hash: string;
}

/**
 * The first row that is not what it should be. `row` counts from 0 in the order given; `how`: its form is not a row's, its
 * number is not the next one, its text does not have the stored hash, or it does not follow the row before it.
 */
export interface ChainFault {
  readonly row: number;
  readonly how: 'form' | 'seq' | 'hash' | 'prev';
  readonly expected: string;
  readonly found: string;
}

/**
 * Checks that rows follow one another without a gap, from the first: the first that differs, or null. Takes rows one at a time,
 * so a journal of any length can be streamed through it.
 *
 * @example verifyChain([{ row: first, hash }], sha256) //=> null
 */
export function verifyChain(rows: Iterable<StoredRow>, sha256: Sha256): ChainFault | null {
  let [at, before] = [0, NO_ROW_BEFORE];
  for (const stored of rows) {
    const fault = rowFault(stored, at, before, sha256);
    if (fault !== null) return fault;
    [at, before] = [at + 1, stored.hash];
  }
  return null;
}

function rowFault({ row, hash }: StoredRow, at: number, before: string, sha256: Sha256): ChainFault | null {
  const fault = (how: ChainFault['how'], expected: string, found: string): ChainFault => ({ row: at, how, expected, found });
  const form = rowSchema.safeParse(row);
  if (!form.success) return fault('form', 'a row', form.error.issues.map((issue) => issue.path.join('.')).join(', '));
  if (row.seq !== at) return fault('seq', String(at), String(row.seq));
  if (row.prev !== before) return fault('prev', before, row.prev);
  const own = rowHash(row, sha256);
  return own === hash ? null : fault('hash', own, hash);
}
