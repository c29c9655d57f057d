import { entryKinds } from '../../shared-core/contract/entry-kinds.ts';
import { households } from '../../shared-core/fleet/household.ts';
import { newEntry, type Put } from '../../shared-core/journal/entry-kind.ts';
import { putsOf } from '../../shared-core/journal/replay.ts';
import { withdrawnKind } from '../../shared-core/journal/withdrawal.ts';
import { previousPacks, previousPackSchema } from '../../shared-core/records/previous-pack.ts';
import { assert, must } from '../../shared-core/result/assert.ts';
import { ok, refuse, type Result } from '../../shared-core/result/result.ts';
import { writeFact } from './fact-table.ts';
import { appendEntry, readEntry, readRow, type RowMaking } from './journal-table.ts';
import type { Store } from './store.ts';

/**
 * Withdraws entries: they stay in the journal and no longer stand, and under every key they touched stands again what the
 * last standing entry says. Refused where another entry stands upon them, or a seal has gone out over them.
 */
export function withdrawEntries(store: Store, seqs: readonly number[], why: string, at: string, making: RowMaking): Result<readonly Put[]> {
  const wanted = [...new Set(seqs)].sort((a, b) => a - b);
  const allowed = mayWithdraw(store, wanted);
  if (!allowed.ok) return allowed;
  const subject = must(readRow(store, wanted[0] ?? -1), 'first entry').subject;
  const entry = appendEntry(store, newEntry(withdrawnKind, { entries: wanted, why, subject }), at, making);
  const mark = store.prepare('UPDATE journal SET withdrawn_by = ? WHERE seq = ?');
  for (const seq of wanted) assert(mark.run(entry.seq, seq).changes === 1, 'one entry marked withdrawn');
  return ok(putBy(store, wanted).map((gone) => restore(store, standsAgain(store, gone, new Set(wanted)))));
}

/** What would stand again under every key that entries touched, were they withdrawn together. */
export function putsOnceWithdrawn(store: Store, seqs: readonly number[]): readonly Put[] {
  return putBy(store, seqs).map((gone) => standsAgain(store, gone, new Set(seqs)).change);
}

/** Whether entries could be withdrawn together as all stands now; else the refusal that withdrawing them would meet. */
export function mayWithdraw(store: Store, seqs: readonly number[]): Result<null> {
  const sealed = store.prepare<[], { size: number | null }>('SELECT max(tree_size) AS size FROM seal_given').get()?.size ?? 0;
  for (const seq of seqs) {
    const row = readRow(store, seq);
    if (row === null || row.kind === withdrawnKind.kind) return refuse('nothing-to-withdraw', { entry: seq });
    if (row.withdrawnBy !== null) return refuse('withdrawn-already', { entry: seq });
    if (seq < sealed) return refuse('entry-sealed', { entry: seq });
  }
  const part = partOfPack(store, seqs);
  if (part !== null) return refuse('pack-goes-whole', part);
  const by = standingUpon(store, seqs) ?? leftWithoutHousehold(store, seqs);
  return by === null ? ok(null) : refuse('entry-in-use', { by });
}

/** The first standing entry, not itself withdrawn here, that touches a key after one of these put it. */
function standingUpon(store: Store, seqs: readonly number[]): number | null {
  const going = new Set(seqs);
  const users = store.prepare<[number], { seq: number }>(
    `SELECT later.seq FROM touch AS mine
     JOIN touch AS later ON later.family = mine.family AND later.id = mine.id AND later.seq > mine.seq
     JOIN journal ON journal.seq = later.seq
     WHERE mine.seq = ? AND mine.role = 'puts' AND withdrawn_by IS NULL ORDER BY later.seq`,
  );
  for (const seq of seqs) {
    const user = users.all(seq).find((one) => !going.has(one.seq));
    if (user !== undefined) return user.seq;
  }
  return null;
}

/**
 * A pack that was taken in goes whole or not at all: without the note of it, what it brought would pass for the keeper's own. Its
 * entries were written in one transaction, the note last.
 */
function partOfPack(store: Store, seqs: readonly number[]): { readonly name: string; readonly by: number } | null {
  const going = new Set(seqs);
  const notes = store.prepare<[string], number>(`SELECT touch.seq FROM touch JOIN journal ON journal.seq = touch.seq WHERE family = ? AND role = 'puts' AND withdrawn_by IS NULL`).pluck().all(previousPacks.name);
  for (const by of notes) {
    const { name, records, others, entries } = previousPackSchema.parse(must(readEntry(store, by), 'note of a pack').values);
    const brought = Array.from({ length: (entries ?? 1 + records.length + others.length) + 1 }, (_, back) => by - back);
    if (brought.some((seq) => going.has(seq)) && !brought.every((seq) => going.has(seq))) return { name, by };
  }
  return null;
}

/** Everything in a household stands upon its start, though no entry says so: the first entry that would be left without one. */
function leftWithoutHousehold(store: Store, seqs: readonly number[]): number | null {
  const going = new Set(seqs);
  const starts = store
    .prepare<[string], number>(`SELECT touch.seq FROM touch JOIN journal ON journal.seq = touch.seq WHERE family = ? AND role = 'puts' AND withdrawn_by IS NULL`)
    .pluck()
    .all(households.name);
  if (!starts.every((seq) => going.has(seq))) return null;
  const standing = store.prepare<[string], number>('SELECT seq FROM journal WHERE withdrawn_by IS NULL AND kind <> ? ORDER BY seq').pluck().all(withdrawnKind.kind);
  return standing.find((seq) => !going.has(seq)) ?? null;
}

/** The last thing these entries put under each key. */
function putBy(store: Store, seqs: readonly number[]): readonly Put[] {
  const puts = seqs.flatMap((seq) => putsOf(entryKinds, must(readEntry(store, seq), 'entry')));
  return [...new Map(puts.map((change) => [`${change.family}/${change.id}`, change])).values()];
}

interface StandsAgain {
  readonly change: Put;
  readonly seq: number;
  readonly firstSeq: number;
}

/** What the last standing entry says of a key without those that go, or nothing where none is left. */
function standsAgain(store: Store, gone: Put, going: ReadonlySet<number>): StandsAgain {
  const standing = store
    .prepare<[string, string], { seq: number }>(
      `SELECT touch.seq FROM touch JOIN journal ON journal.seq = touch.seq
       WHERE family = ? AND id = ? AND role = 'puts' AND withdrawn_by IS NULL ORDER BY touch.seq`,
    )
    .all(gone.family, gone.id)
    .filter(({ seq }) => !going.has(seq));
  const putIn = (seq: number) => samePut(putsOf(entryKinds, must(readEntry(store, seq), 'entry')), gone);
  const last = standing.at(-1);
  // What was taken away and stated again begins with its second statement.
  const removed = standing.findLastIndex(({ seq }) => putIn(seq).value === null);
  return { change: last === undefined ? { ...gone, value: null } : putIn(last.seq), seq: last?.seq ?? 0, firstSeq: standing[removed + 1]?.seq ?? 0 };
}

/** Puts that back, or takes the fact away. */
function restore(store: Store, { change, seq, firstSeq }: StandsAgain): Put {
  writeFact(store, change, seq, firstSeq);
  return change;
}

function samePut(puts: readonly Put[], wanted: Put): Put {
  return must(puts.find((one) => one.family === wanted.family && one.id === wanted.id), 'what an entry puts');
}
