import { fieldDigest } from '../../shared-core/journal/field-digest.ts';
import { hexText } from '../../shared-core/journal/hex-text.ts';
import { rowSchema, rowText, type Row } from '../../shared-core/journal/row.ts';
import { verifyChain } from '../../shared-core/journal/verify-chain.ts';
import { withdrawnKind } from '../../shared-core/journal/withdrawal.ts';
import { sha256 } from '../host/node-digests.ts';
import type { Json } from '../../shared-core/journal/canonical-json.ts';
import { readRows, readValues, type JournalRow } from './journal-table.ts';
import type { Store } from './open-store.ts';

/** Something that is not as it should be, and where. */
export interface Fault {
  readonly where: string;
  readonly what: string;
}

/** Checks every row by its hash, place, columns and values; the first fault of a row is named. */
export function examineJournal(store: Store): Fault[] {
  const rows = [...readRows(store)];
  const unreadable = rows.find((row) => readable(row) === null);
  if (unreadable !== undefined) return [{ where: `entry ${unreadable.seq}`, what: 'its row cannot be read' }];
  const chain = verifyChain(rows.map((row) => ({ row: readable(row) as Row, hash: hexText(row.hash) })), sha256);
  if (chain !== null) return [{ where: `entry ${rows[chain.row]?.seq ?? chain.row}`, what: `its ${chain.how} is not what it should be` }];
  const withdrawn = withdrawals(store, rows);
  return rows.flatMap((row) => rowFault(store, row, readable(row) as Row, withdrawn) ?? []).slice(0, 20);
}

function readable(stored: JournalRow): Row | null {
  try {
    const row = rowSchema.parse(JSON.parse(stored.row));
    return rowText(row) === stored.row ? row : null;
  } catch {
    return null;
  }
}

function rowFault(store: Store, stored: JournalRow, row: Row, withdrawn: ReadonlyMap<number, number>): Fault | null {
  const where = `entry ${stored.seq}`;
  const columns = stored.seq === row.seq && stored.at === row.at && stored.kind === row.kind && stored.version === row.version && stored.subject === row.subject;
  if (!columns) return { where, what: 'its columns are not what its row says' };
  if ((withdrawn.get(stored.seq) ?? null) !== stored.withdrawnBy) return { where, what: 'its withdrawal is not what the journal says' };
  const values = readValues(store, stored.seq);
  if (values.map((one) => one.name).join() !== Object.keys(row.fields).sort().join()) return { where, what: 'its values are not those its row names' };
  const bad = values.find((one) => fieldDigest(JSON.parse(one.value) as Json, one.salt, sha256) !== row.fields[one.name]);
  return bad === undefined ? null : { where, what: `the value of ${bad.name} has been altered` };
}

function withdrawals(store: Store, rows: readonly JournalRow[]): ReadonlyMap<number, number> {
  const by = new Map<number, number>();
  for (const row of rows.filter((one) => one.kind === withdrawnKind.kind)) {
    const entries = readValues(store, row.seq).find((one) => one.name === 'entries');
    for (const seq of entries === undefined ? [] : (JSON.parse(entries.value) as number[])) by.set(seq, row.seq);
  }
  return by;
}
