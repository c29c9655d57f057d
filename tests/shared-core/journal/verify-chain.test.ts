import { describe, expect, test } from 'vitest';
import { sha256 } from '../../../electron/host/node-digests.ts';
import { composeRow } from '../../../shared-core/journal/compose-row.ts';
import { rowHash } from '../../../shared-core/journal/row.ts';
import { verifyChain, type StoredRow } from '../../../shared-core/journal/verify-chain.ts';

function chain(length: number): StoredRow[] {
  const rows: StoredRow[] = [];
  for (let seq = 0; seq < length; seq += 1) {
    const salt = seq.toString(16).padStart(32, '0');
    const row = composeRow(
      { seq, at: '2026-11-25T09:00:00.000Z', kind: 'reading-entered', version: 1, subject: 'car-pip', values: { value: seq }, salts: { value: salt }, prev: rows.at(-1)?.hash ?? null },
      sha256,
    );
    rows.push({ row, hash: rowHash(row, sha256) });
  }
  return rows;
}

/** The same rows with one changed, its stored hash as it was. */
function changed(rows: StoredRow[], at: number, change: Partial<StoredRow['row']>): StoredRow[] {
  return rows.map((stored, index) => (index === at ? { ...stored, row: { ...stored.row, ...change } } : stored));
}

/** The same rows with one changed and hashed again, as someone would who edits the file. */
function rehashed(rows: StoredRow[], at: number, change: Partial<StoredRow['row']>): StoredRow[] {
  return changed(rows, at, change).map((stored, index) => (index === at ? { ...stored, hash: rowHash(stored.row, sha256) } : stored));
}

describe('a chain of rows', () => {
  const rows = chain(5);
  const [a, b, c, d, e] = rows as [StoredRow, StoredRow, StoredRow, StoredRow, StoredRow];

  test.each([{ case: 'none', rows: [] }, { case: 'one', rows: [a] }, { case: 'five', rows }])('is whole: $case', ({ rows: given }) => {
    expect(verifyChain(given, sha256)).toBeNull();
  });

  test.each([
    { case: 'a row left out', rows: [a, b, d, e], row: 2, how: 'seq' },
    { case: 'the first left out', rows: [b, c], row: 0, how: 'seq' },
    { case: 'two rows swapped', rows: [a, c, b, d], row: 1, how: 'seq' },
    { case: 'a row twice', rows: [a, b, b, c], row: 2, how: 'seq' },
    { case: 'a date changed', rows: changed(rows, 1, { at: '2026-11-24T09:00:00.000Z' }), row: 1, how: 'hash' },
    { case: 'a digest changed', rows: changed(rows, 4, { fields: { value: '0'.repeat(64) } }), row: 4, how: 'hash' },
    { case: 'a row changed and hashed again', rows: rehashed(rows, 1, { subject: 'car-other' }), row: 2, how: 'prev' },
    { case: 'a stored hash changed', rows: [a, b, { ...c, hash: 'f'.repeat(64) }, d], row: 2, how: 'hash' },
    { case: 'a row that is none', rows: changed(rows, 3, { version: 0 }), row: 3, how: 'form' },
  ])('is broken: $case', ({ rows: given, row, how }) => {
    expect(verifyChain(given, sha256)).toMatchObject({ row, how });
  });

  test('stops reading at the first fault', () => {
    let read = 0;
    const counted = (function* () {
      for (const stored of [a, c, d, e]) {
        read += 1;
        yield stored;
      }
    })();
    expect(verifyChain(counted, sha256)).toMatchObject({ row: 1, how: 'seq', expected: '1', found: '2' });
    expect(read).toBe(2);
  });
});
