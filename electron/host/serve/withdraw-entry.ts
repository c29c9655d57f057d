import { ok, type Result } from '../../../shared-core/result/result.ts';
import type { HostContext } from '../host-context.ts';
import { withdrawNow } from '../withdraw-now.ts';

/** Undoes entries in one transaction, or refuses and leaves all as it was. */
export function withdrawEntry(context: HostContext, request: { readonly entries: readonly number[]; readonly why: string }): Result<{ withdrawn: number }> {
  return withdrawNow(context, () => ok(request.entries), request.why);
}
