import { imports } from '../../../shared-core/records/import.ts';
import { ok, refuse, type Result } from '../../../shared-core/result/result.ts';
import { entriesOfImport } from '../../store/entries-of-import.ts';
import type { HostContext } from '../host-context.ts';
import { withdrawNow } from '../withdraw-now.ts';

/** Withdraws a whole import in one transaction: all it brought that still stands, or nothing where something stands upon it. */
export function withdrawImport(context: HostContext, request: { readonly id: string; readonly why: string }): Result<{ withdrawn: number }> {
  const { store, facts } = context.household();
  return withdrawNow(context, () => {
    const one = facts.get(imports, request.id);
    return one === null ? refuse('unknown-import', { id: request.id }, ['id']) : ok(entriesOfImport(store, facts, one));
  }, request.why);
}
