import { cars } from '../../../shared-core/fleet/car.ts';
import { carSubject } from '../../../shared-core/journal/entry-kind.ts';
import type { Facts } from '../../../shared-core/journal/facts.ts';
import { imports, type Import } from '../../../shared-core/records/import.ts';
import { must } from '../../../shared-core/result/assert.ts';
import { ok, type Result } from '../../../shared-core/result/result.ts';
import { listImports } from '../../../shared-core/views/import/imports-view.ts';
import type { ImportHeld, StandingImports } from '../../../shared-core/views/import/standing-imports.ts';
import { entriesOfImport } from '../../store/entries-of-import.ts';
import type { Store } from '../../store/store.ts';
import { momentOf, type HostContext } from '../host-context.ts';
import { withdrawalHeld } from '../withdraw-now.ts';

/** The imports that stand, each with what would keep it from being withdrawn; nothing is changed. */
export function standingImports(context: HostContext): Result<StandingImports> {
  const { store, facts } = context.household();
  const listed = listImports.answer(facts, {}, momentOf(context.world));
  return listed.ok ? ok({ imports: listed.value.imports.map((one) => ({ ...one, held: heldBy(store, facts, must(facts.get(imports, one.id), 'import')) })) }) : listed;
}

function heldBy(store: Store, facts: Facts, one: Import): ImportHeld | null {
  const held = withdrawalHeld(store, entriesOfImport(store, facts, one));
  if (held === null) return null;
  if (held.by === 'seal') return { by: 'seal', entry: null, on: null, car: null };
  const car = facts.all(cars).find(({ id }) => carSubject(id) === held.subject);
  return { by: 'entry', entry: held.entry, on: held.on, car: car?.name ?? null };
}
