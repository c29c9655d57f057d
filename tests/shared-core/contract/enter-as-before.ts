import { newEntry, type Entry, type EntryKind } from '../../../shared-core/journal/entry-kind.ts';
import type { MemoryHousehold } from './memory-household.ts';

/** Puts an entry into a household that no operation would take now, as an earlier version may have. */
export function enterAsBefore<Value>({ entries }: MemoryHousehold, kind: EntryKind<Value>, value: Value): void {
  (entries as Entry[]).push({ ...newEntry<Value>(kind, value), seq: entries.length, at: '2026-11-25T12:00:00.000Z' });
}
