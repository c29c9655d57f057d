import type { SessionsView } from '../../../shared-core/views/sessions-view-schema.ts';
import { useAsk, type Answer } from '../use-ask.ts';
import { useLastPlan } from './last-plan.ts';

/** The sessions that stand, with what still holds of the plan proposed last. */
export function useSessions(): Answer<SessionsView> {
  return useAsk('sessions.show', { proposed: useLastPlan() }, { hold: true });
}
