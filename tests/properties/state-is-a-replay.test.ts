import fc from 'fast-check';
import { expect, test } from 'vitest';
import { z } from 'zod';
import { memoryFacts } from '../../shared-core/journal/memory-facts.ts';
import { entryKinds } from '../../shared-core/contract/entry-kinds.ts';
import type { Facts } from '../../shared-core/journal/facts.ts';
import { family } from '../../shared-core/journal/family.ts';
import type { Result } from '../../shared-core/result/result.ts';
import { readAllFacts } from '../../electron/store/fact-table.ts';
import { readEntries } from '../../electron/store/journal-table.ts';
import { withoutSync } from '../../electron/store/write-without-sync.ts';
import { openTestHost, type TestHost } from '../host/open-test-host.ts';
import { callOf, lives, type Action, type Call, type Kept, type Made, type Named } from './household-actions.ts';

// Source: own property, after DESIGN.md section 5: what stands is always a replay of the journal, in the tables as in memory.
const RUNS = Number(process.env['STORM_LIVES'] ?? 24);
const SEED = Number(process.env['STORM_SEED'] ?? 20_261_125);
const LONGEST_LIFE = 220;

const NAMES: Readonly<Record<string, Named>> = {
  'car.add': 'car', 'reading.record': 'reading', 'item.add': 'item', 'obligation.add': 'obligation', 'specification.set': 'specification', 'part.set': 'part',
  'supplier.set': 'supplier', 'lot.set': 'lot', 'record.add': 'record', 'observation.note': 'observation', 'paper.keep': 'paper', 'session.keep': 'session', 'session.propose': 'session',
  'offer.set': 'offer', 'order.place': 'order', 'order.return': 'return', 'tool.set': 'tool', 'waste.keep': 'waste', 'follow-up.add': 'followUp',
  'work.read': 'value', 'work.photo': 'photo', 'booking.quote': 'quote', 'wish.set': 'wish',
};
const tally = new Map<string, { accepted: number; refused: number }>();

/** The id that a reply gave to what was made. */
function idIn(operation: string, value: Record<string, unknown>): string | null {
  const named = operation.endsWith('.set') ? 'set' : NAMES[operation];
  if (named === undefined) return null;
  const [first] = (value[`${named}s`] as readonly { id: string }[] | undefined) ?? [value[named] as { id: string } | undefined];
  return first?.id ?? null;
}

function after(made: Made, call: Call, reply: Result<unknown>): Made {
  if (!reply.ok) return made;
  const value = reply.value as Record<string, unknown>;
  const [name, id] = [NAMES[call.operation], idIn(call.operation, value)];
  const ids = name === undefined || id === null ? made.ids : { ...made.ids, [name]: [...new Set([...made.ids[name], id])] };
  const undo = (value['undo'] as readonly number[] | undefined) ?? [];
  const kept = keptIn(call.operation, value);
  return {
    ids,
    undo: undo.length === 0 ? made.undo : [...made.undo, undo],
    kept: [...made.kept.filter((each) => !kept.some((now) => now.id === each.id)), ...kept],
    begun: call.operation === 'work.begin' ? [...made.begun.filter((each) => each !== call.request['session']), String(call.request['session'])] : made.begun,
    carOf: call.operation === 'item.add' ? { ...made.carOf, [(value['item'] as { id: string }).id]: (value['item'] as { car: string }).car } : made.carOf,
  };
}

/** The sessions that a reply keeps or moves. */
function keptIn(operation: string, value: Record<string, unknown>): readonly Kept[] {
  if (operation === 'session.keep') return value['sessions'] as readonly Kept[];
  return operation === 'session.move' || operation === 'booking.book' ? [value['session'] as Kept] : [];
}

async function live(host: TestHost, actions: readonly Action[]): Promise<void> {
  let made: Made = { ids: { car: [], reading: [], item: [], obligation: [], specification: [], part: [], supplier: [], lot: [], record: [], observation: [], paper: [], session: [], offer: [], order: [], return: [], tool: [], waste: [], followUp: [], value: [], photo: [], quote: [], wish: [] }, undo: [], kept: [], begun: [], carOf: {} };
  await host.must('household.start', { unit: 'km' });
  for (const action of actions) {
    const call = callOf(made, action);
    const before = stateOf(host);
    const reply = await host.composed.call(call.operation, call.request);
    const count = tally.get(call.operation) ?? { accepted: 0, refused: 0 };
    tally.set(call.operation, reply.ok ? { ...count, accepted: count.accepted + 1 } : { ...count, refused: count.refused + 1 });
    if (!reply.ok) expect([reply.refusal.code, stateOf(host)]).toEqual([expect.not.stringMatching(/^internal$|^not-understood$/), before]);
    made = after(made, call, reply);
  }
}

function stateOf(host: TestHost): unknown {
  const { store } = host.composed.context.household();
  return [readAllFacts(store), store.prepare('SELECT seq, withdrawn_by FROM journal').all()];
}

/** Everything that facts answer, of every family and car. */
function everything(facts: Facts, families: readonly string[], carIds: readonly string[]): unknown {
  return families.map((name) => {
    const one = family(name, '', z.looseObject({ id: z.string() }));
    const all = facts.all(one);
    return { name, all, each: all.map(({ id }) => facts.get(one, id)), none: facts.get(one, 'nothing'), stamps: [...facts.stamps(one, null)].sort(), ofCars: carIds.map((car) => [facts.ofCar(one, car), [...facts.stamps(one, car)].sort()]) };
  });
}

test(`what the tables hold is a replay of the journal: ${RUNS} lives from seed ${SEED}`, async () => {
  await fc.assert(
    fc.asyncProperty(lives(LONGEST_LIFE), async (actions) => {
      const host = openTestHost();
      const { store, facts } = host.composed.context.household();
      withoutSync(store);
      await live(host, actions);
      const entries = [...readEntries(store)];
      const replayed = memoryFacts(entryKinds, entries);
      const families = [...new Set([...readAllFacts(store).map((fact) => fact.family), 'car', 'reading', 'work-record', 'paper', 'instrument'])];
      const carIds = [...entries.filter((entry) => entry.kind === 'car-set').map((entry) => entry.subject.slice('car/'.length)), 'nothing'];
      expect(everything(facts, families, carIds)).toEqual(everything(replayed, families, carIds));
      expect(await host.must('household.examine', {})).toMatchObject({ entries: entries.length, faults: [] });
      for (const view of ['yard.show', 'due.show', 'parts.show', 'ledger.show'] as const) expect(await host.call(view, {})).toMatchObject({ ok: true });
      await host.composed.close();
    }),
    { numRuns: RUNS, seed: SEED },
  );
  const counts = [...tally].sort();
  console.log(counts.map(([operation, { accepted, refused }]) => `${operation} ${accepted} of ${accepted + refused}`).join(', '));
  // The lives are no lives if they are mostly refused.
  const [accepted, refused] = [counts.reduce((sum, [, count]) => sum + count.accepted, 0), counts.reduce((sum, [, count]) => sum + count.refused, 0)];
  expect(accepted).toBeGreaterThan(refused);
  for (const [operation, count] of counts) expect(count.accepted, operation).toBeGreaterThan(0);
}, 60_000 + RUNS * 5000);
