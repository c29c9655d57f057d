import { z } from 'zod';
import { daysBetween, type LocalDate } from '../calendar/local-date.ts';
import { factEntry } from '../journal/fact-entry.ts';
import type { Facts } from '../journal/facts.ts';
import { family } from '../journal/family.ts';
import { refusedBy } from '../result/refused-by.ts';

/** The one fact of settings of parts has this id. */
export const PARTS_SETTINGS_ID = 'parts';

const notDays = refusedBy('not-days-of-a-price');

/** How the household buys. */
export const partsSettingsSchema = z.strictObject({
  id: z.literal(PARTS_SETTINGS_ID),
  /** Days after which a price seen may no longer hold. */
  staleAfterDays: z.int(notDays).min(1, notDays).max(3650, notDays),
});
export type PartsSettings = z.infer<typeof partsSettingsSchema>;

/** Settings until they are stated: ours, without a source. */
export const DEFAULT_PARTS_SETTINGS: PartsSettings = { id: PARTS_SETTINGS_ID, staleAfterDays: 180 };

export const partsSettingsFamily = family('parts-settings', 'parts', partsSettingsSchema);
export const partsSettingsSet = factEntry('parts-settings-set', partsSettingsFamily, { car: () => null });

/** The settings that stand. */
export function partsSettings(facts: Facts): PartsSettings {
  return facts.get(partsSettingsFamily, PARTS_SETTINGS_ID) ?? DEFAULT_PARTS_SETTINGS;
}

/** Whether a price seen on a day may no longer hold today. @example isStale({ seenOn: '2026-01-01' }, '2026-11-25', DEFAULT_PARTS_SETTINGS) //=> true */
export function isStale(offer: { readonly seenOn: LocalDate }, today: LocalDate, { staleAfterDays }: PartsSettings): boolean {
  return daysBetween(offer.seenOn, today) > staleAfterDays;
}
