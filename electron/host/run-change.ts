import type { z } from 'zod';
import { HOUSEHOLD_ID, households, householdSet } from '../../shared-core/fleet/household.ts';
import { entryKinds } from '../../shared-core/contract/entry-kinds.ts';
import { checkReferences } from '../../shared-core/journal/check-references.ts';
import type { NewEntry } from '../../shared-core/journal/entry-kind.ts';
import type { Do } from '../../shared-core/journal/operation.ts';
import { ok, refuse, type Result } from '../../shared-core/result/result.ts';
import { writeEntries, type Written } from '../store/write-entries.ts';
import { momentOf, type HostContext } from './host-context.ts';
import { pushChanged } from './push-changed.ts';

/** Runs a change: it decides within the transaction that writes it, so that nothing can come between. */
export function runChange(context: HostContext, operation: Do, request: z.output<z.ZodType>): Result<unknown> {
  const { facts } = context.household();
  return writeDecision(context, () => {
    const decision = operation.decide(facts, request, momentOf(context.world));
    // Before anything is written: a reply that is not what the contract says must not be found out after the commit.
    return decision.ok ? ok({ ...decision.value, reply: operation.reply.parse(decision.value.reply) }) : decision;
  });
}

/** Writes what was decided, all or none, tells the windows, and answers the reply with its undo token. */
export function writeDecision(context: HostContext, decide: () => Result<{ readonly entries: readonly NewEntry[]; readonly reply: unknown }>): Result<unknown> {
  const { store } = context.household();
  const { world } = context;
  const done = store
    .transaction((): Result<{ readonly written: Written; readonly reply: unknown }> => {
      const decision = decide();
      if (!decision.ok) return decision;
      const started = checkStarted(context, decision.value.entries);
      if (!started.ok) return started;
      const whole = checkReferences(context.household().facts, entryKinds, decision.value.entries);
      if (!whole.ok) return whole;
      return ok({ written: writeEntries(store, decision.value.entries, world.now(), world.making), reply: decision.value.reply });
    })
    .immediate();
  if (!done.ok) return done;
  const { written, reply } = done.value;
  pushChanged(context, written.puts);
  return ok({ ...(reply as object), undo: written.entries.map((entry) => entry.seq) });
}

/** A household's first entry starts it: nothing is written into a folder that holds none. */
function checkStarted(context: HostContext, entries: readonly NewEntry[]): Result<null> {
  const started = entries.length === 0 || entries[0]?.kind === householdSet.kind || context.household().facts.get(households, HOUSEHOLD_ID) !== null;
  return started ? ok(null) : refuse('household-not-started');
}
