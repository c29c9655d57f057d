import { z } from 'zod';
import { newEntry } from '../journal/entry-kind.ts';
import { change } from '../journal/operation.ts';
import { ok, refuse } from '../result/result.ts';
import { ledgerSettings, ledgerSettingsSchema, ledgerSettingsSet } from './ledger-settings.ts';

const shape = ledgerSettingsSchema.shape;

/** Changes what one's own hour counts and what is put by for wishes: only the fields given. */
export const setLedgerSettings = change({
  request: z.strictObject({
    ownHourMinor: shape.ownHourMinor.optional(), monthlyMinor: shape.monthlyMinor.optional(), savingSince: shape.savingSince.optional(), savedBefore: shape.savedBefore.optional(),
  }),
  reply: z.object({ settings: ledgerSettingsSchema }),
  decide: (facts, request, { today }) => {
    const settings = ledgerSettingsSchema.parse({ ...ledgerSettings(facts), ...request });
    if (settings.monthlyMinor > 0 && settings.savingSince === null) return refuse('saving-since-when', {}, ['savingSince']);
    if (settings.savingSince !== null && settings.savingSince > today && request.savingSince !== undefined) return refuse('date-in-future', { date: settings.savingSince }, ['savingSince']);
    return ok({ entries: [newEntry(ledgerSettingsSet, settings)], reply: { settings } });
  },
});
