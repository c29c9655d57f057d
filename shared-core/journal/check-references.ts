import { z } from 'zod';
import { must } from '../result/assert.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import type { NewEntry } from './entry-kind.ts';
import type { Facts } from './facts.ts';
import { family } from './family.ts';
import type { EntryKinds } from './replay.ts';

/**
 * Refuses entries that stand upon a fact that is not there; a fact that an earlier entry of the same list puts is there.
 * So nothing in a household ever points at nothing, whichever operation wrote it.
 *
 * @example checkReferences(facts, kinds, [itemOfUnknownCar]) //=> refused 'refers-to-nothing' { family: 'car', id: 'x' }
 */
export function checkReferences(facts: Facts, kinds: EntryKinds, entries: readonly NewEntry[]): Result<null> {
  const put = new Set<string>();
  for (const entry of entries) {
    const kind = must(kinds.get(entry.kind), `kind of entry '${entry.kind}'`);
    for (const change of kind.apply(entry.values)) put.add(`${change.family}/${change.id}`);
    const missing = kind.refersTo(entry.values).find((one) => !put.has(`${one.family}/${one.id}`) && facts.get(family(one.family, '', z.unknown()), one.id) === null);
    if (missing !== undefined) return refuse('refers-to-nothing', { family: missing.family.replaceAll('-', ' '), id: missing.id });
  }
  return ok(null);
}
