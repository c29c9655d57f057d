import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { factEntry } from '../journal/fact-entry.ts';
import type { Facts } from '../journal/facts.ts';
import { family } from '../journal/family.ts';
import { priceSchema } from '../units/money.ts';

/** The one fact of ledger settings has this id. */
export const LEDGER_SETTINGS_ID = 'ledger';

/** How the household counts, and what it puts by for its wishes. */
export const ledgerSettingsSchema = z.strictObject({
  id: z.literal(LEDGER_SETTINGS_ID),
  /** What an hour of one's own work counts, in minor units; 0: nothing. */
  ownHourMinor: priceSchema,
  /** What is put by for wishes each month, since when, and what was there by then. */
  monthlyMinor: priceSchema,
  savingSince: dateSchema.nullable(),
  savedBefore: priceSchema,
});
export type LedgerSettings = z.infer<typeof ledgerSettingsSchema>;

/** Settings until they are stated: one's own time counts nothing, and nothing is put by. */
export const DEFAULT_LEDGER_SETTINGS: LedgerSettings = { id: LEDGER_SETTINGS_ID, ownHourMinor: 0, monthlyMinor: 0, savingSince: null, savedBefore: 0 };

export const ledgerSettingsFamily = family('ledger-settings', 'ledger', ledgerSettingsSchema);
export const ledgerSettingsSet = factEntry('ledger-settings-set', ledgerSettingsFamily, { car: () => null });

/** The settings that stand. */
export function ledgerSettings(facts: Facts): LedgerSettings {
  return facts.get(ledgerSettingsFamily, LEDGER_SETTINGS_ID) ?? DEFAULT_LEDGER_SETTINGS;
}
