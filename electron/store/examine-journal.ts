import { canonicalJson, type Json } from '../../shared-core/journal/canonical-json.ts';
import { fieldDigest } from '../../shared-core/journal/field-digest.ts';
import { hexText } from '../../shared-core/journal/hex-text.ts';
import { rowSchema, rowText, type Row } from '../../shared-core/journal/row.ts';
import { verifyChain } from '../../shared-core/journal/verify-chain.ts';
import { withdrawnKind } from '../../shared-core/journal/withdrawal.ts';
import { sha256 } from '../host/node-digests.ts';
import type { Fault } from './fault.ts';
import { readRows, readValues, type JournalRow, type JournalValue } from './journal-table.ts';
import type { Store } from './store.ts';

const MOST_FAULTS = 20;

interface RowFault extends Fault {
  readonly seq: number;
}

/** Checks every row by its hash, place, columns and values, in order; then which rows are marked withdrawn. */
export function examineJournal(store: Store): Fault[] {
  const rows = [...readRows(store)];
  const broken = [...chainFault(rows), ...rows.flatMap((row) => rowFault(store, row))].sort((a, b) => a.seq - b.seq);
  const faults = broken.length > 0 ? broken : withdrawalFaults(store, rows);
  return faults.slice(0, MOST_FAULTS).map(({ where, what }) => ({ where, what }));
}

/** The first row that cannot be read or does not follow the one before it; what comes after it hangs on it and is not judged. */
function chainFault(rows: readonly JournalRow[]): RowFault[] {
  const unreadable = rows.findIndex((row) => readable(row) === null);
  const readableRows = unreadable < 0 ? rows : rows.slice(0, unreadable);
  const chain = verifyChain(readableRows.map((row) => ({ row: readable(row) as Row, hash: hexText(row.hash) })), sha256);
  if (chain === null) return unreadable < 0 ? [] : [faultAt(rows[unreadable]?.seq ?? unreadable, 'its row cannot be read')];
  const seq = rows[chain.row]?.seq ?? chain.row;
  return chain.how === 'seq' && seq > chain.row ? [faultAt(chain.row, 'is not there')] : [faultAt(seq, `its ${chain.how} is not what it should be`)];
}

function faultAt(seq: number, what: string): RowFault {
  return { seq, where: `entry ${seq}`, what };
}

function readable(stored: JournalRow): Row | null {
  try {
    const row = rowSchema.parse(JSON.parse(stored.row));
    return rowText(row) === stored.row ? row : null;
  } catch {
    return null;
  }
}

function rowFault(store: Store, stored: JournalRow): RowFault[] {
  const row = readable(stored);
  if (row === null) return [];
  const columns = stored.seq === row.seq && stored.at === row.at && stored.kind === row.kind && stored.version === row.version && stored.subject === row.subject;
  if (!columns) return [faultAt(stored.seq, 'its columns are not what its row says')];
  const values = readValues(store, stored.seq);
  if (values.map((one) => one.name).join() !== Object.keys(row.fields).sort().join()) return [faultAt(stored.seq, 'its values are not those its row names')];
  const bad = values.find((one) => !agrees(one, row.fields[one.name]));
  return bad === undefined ? [] : [faultAt(stored.seq, `the value of ${bad.name} has been altered`)];
}

/** Whether a value is the canonical text of what the row has the digest of. */
function agrees(one: JournalValue, digest: string | undefined): boolean {
  try {
    const value = JSON.parse(one.value) as Json;
    return canonicalJson(value) === one.value && fieldDigest(value, one.salt, sha256) === digest;
  } catch {
    return false;
  }
}

function withdrawalFaults(store: Store, rows: readonly JournalRow[]): RowFault[] {
  const withdrawn = withdrawals(store, rows);
  return rows.filter((row) => (withdrawn.get(row.seq) ?? null) !== row.withdrawnBy).map((row) => faultAt(row.seq, 'its withdrawal is not what the journal says'));
}

function withdrawals(store: Store, rows: readonly JournalRow[]): ReadonlyMap<number, number> {
  const by = new Map<number, number>();
  for (const row of rows.filter((one) => one.kind === withdrawnKind.kind)) {
    const entries = readValues(store, row.seq).find((one) => one.name === 'entries');
    for (const seq of entries === undefined ? [] : (JSON.parse(entries.value) as number[])) by.set(seq, row.seq);
  }
  return by;
}
