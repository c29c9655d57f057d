import { ok } from '../../../shared-core/result/result.ts';
import { examineStore } from '../examine-folder.ts';
import type { HostContext } from '../host-context.ts';

/** Checks database, papers and journal of the open household by replay. */
export function examineHousehold(context: HostContext) {
  const { store, folder } = context.household();
  return ok(examineStore(store, folder));
}
