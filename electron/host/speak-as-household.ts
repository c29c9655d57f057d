import { HOUSEHOLD_ID, households } from '../../shared-core/fleet/household.ts';
import type { Facts } from '../../shared-core/journal/facts.ts';
import { speakAs } from '../../shared-core/result/words/speaking.ts';

/** From here on this process speaks as the household does; British where none is started. */
export function speakAsHousehold(facts: Facts): void {
  speakAs(facts.get(households, HOUSEHOLD_ID)?.locale ?? null);
}
