import { imports, type Import } from '../../shared-core/records/import.ts';
import type { Facts } from '../../shared-core/journal/facts.ts';
import { must } from '../../shared-core/result/assert.ts';
import { readRow } from './journal-table.ts';
import type { Store } from './store.ts';

/** The numbers of an import's entries that still stand: its own, and those that follow it, for they were written in one transaction. */
export function entriesOfImport(store: Store, facts: Facts, one: Import): readonly number[] {
  const { firstSeq } = must(facts.stamps(imports, null).get(one.id), 'stamp of an import');
  const seqs = Array.from({ length: one.entries + 1 }, (_, at) => firstSeq + at);
  return seqs.filter((seq) => must(readRow(store, seq), 'entry of an import').withdrawnBy === null);
}
