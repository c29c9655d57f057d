import { dateOfInstant } from '../../../shared-core/calendar/local-date.ts';
import { cars } from '../../../shared-core/fleet/car.ts';
import { carSubject } from '../../../shared-core/journal/entry-kind.ts';
import type { Facts } from '../../../shared-core/journal/facts.ts';
import { imports, type Import } from '../../../shared-core/records/import.ts';
import { must } from '../../../shared-core/result/assert.ts';
import { ok, type Result } from '../../../shared-core/result/result.ts';
import { listImports } from '../../../shared-core/views/import/imports-view.ts';
import type { ImportHeld, StandingImports } from '../../../shared-core/views/import/standing-imports.ts';
import { entriesOfImport } from '../../store/entries-of-import.ts';
import { readRow } from '../../store/journal-table.ts';
import type { Store } from '../../store/store.ts';
import { mayWithdraw } from '../../store/withdraw-entries.ts';
import { momentOf, type HostContext } from '../host-context.ts';

/** The imports that stand, each with what would keep it from being withdrawn; nothing is changed. */
export function standingImports(context: HostContext): Result<StandingImports> {
  const { store, facts } = context.household();
  const listed = listImports.answer(facts, {}, momentOf(context.world));
  return listed.ok ? ok({ imports: listed.value.imports.map((one) => ({ ...one, held: heldBy(store, facts, must(facts.get(imports, one.id), 'import')) })) }) : listed;
}

function heldBy(store: Store, facts: Facts, one: Import): ImportHeld | null {
  const allowed = mayWithdraw(store, entriesOfImport(store, facts, one));
  if (allowed.ok) return null;
  const { by } = allowed.refusal.values;
  if (typeof by !== 'number') return { by: 'seal', entry: null, on: null, car: null };
  const { at, subject } = must(readRow(store, by), 'entry that stands upon an import');
  const car = facts.all(cars).find(({ id }) => carSubject(id) === subject);
  return { by: 'entry', entry: by, on: dateOfInstant(at), car: car?.name ?? null };
}
