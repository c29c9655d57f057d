import { HOUSEHOLD_ID, households } from '../../../shared-core/fleet/household.ts';
import { ok } from '../../../shared-core/result/result.ts';
import type { HostContext } from '../host-context.ts';
import { readLook } from '../kept-look.ts';

/** Where the program stands: which folder, whether a household is in it, and how it is to look. */
export function stateHousehold(context: HostContext) {
  const { facts, folder } = context.household();
  return ok({ household: facts.get(households, HOUSEHOLD_ID), folder, sample: context.isSample(), look: readLook(context.home) });
}
