import { HOUSEHOLD_ID, households } from '../../../shared-core/fleet/household.ts';
import { ok } from '../../../shared-core/result/result.ts';
import type { HostContext } from '../host-context.ts';

/** Where the program stands: which folder, and whether a household is in it. */
export function stateHousehold(context: HostContext) {
  const { facts, folder } = context.household();
  return ok({ household: facts.get(households, HOUSEHOLD_ID), folder, sample: context.isSample() });
}
