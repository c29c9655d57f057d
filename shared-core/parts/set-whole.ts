import { z } from 'zod';
import { newEntry, type EntryKind } from '../journal/entry-kind.ts';
import type { FactRemoval } from '../journal/fact-removal.ts';
import type { Facts } from '../journal/facts.ts';
import type { Family } from '../journal/family.ts';
import { change, type Moment } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse, type Result } from '../result/result.ts';

/** An id that may be left out: then the host gives a new one. */
export const newId = idSchema.optional();

/** An operation that states a whole fact of the household: a new one, or the one with that id anew. */
export function setWhole<Value extends { readonly id: string }, Request extends z.ZodType<{ readonly id?: string | undefined }>>(
  kind: EntryKind<Value>,
  request: Request,
  whole: z.ZodType<Value>,
  check: (facts: Facts, value: Value, moment: Moment) => Result<unknown>,
) {
  return change({
    request,
    reply: z.object({ set: whole }),
    decide: (facts, asked, moment) => {
      const value = whole.parse({ ...(asked as object), id: asked.id ?? moment.newId() });
      const sound = check(facts, value, moment);
      return sound.ok ? ok({ entries: [newEntry<Value>(kind, value)], reply: { set: value } }) : sound;
    },
  });
}

/** An operation that takes a fact of the household away by its id. */
export function removeWhole<Value>(kind: EntryKind<FactRemoval>, family: Family<Value>, unknownCode: string) {
  return change({
    request: z.strictObject({ id: idSchema }),
    reply: z.object({ removed: z.string() }),
    decide: (facts, { id }) => (facts.get(family, id) === null ? refuse(unknownCode, { id }, ['id']) : ok({ entries: [newEntry(kind, { id, car: null })], reply: { removed: id } })),
  });
}

/** Refuses an id that names nothing. */
export function known(facts: Facts, family: Family<unknown>, id: string, field: string): Result<unknown> {
  return facts.get(family, id) === null ? refuse(`unknown-${family.name}`, { id }, [field]) : ok(id);
}

/** The first refusal among checks, each made only where the ones before passed. */
export function allOf(...checks: readonly (() => Result<unknown>)[]): Result<unknown> {
  for (const check of checks) {
    const sound = check();
    if (!sound.ok) return sound;
  }
  return ok(null);
}
