import { z } from 'zod';
import { weekdaysSchema } from '../calendar/weekday.ts';
import { factEntry } from '../journal/fact-entry.ts';
import type { Facts } from '../journal/facts.ts';
import { family } from '../journal/family.ts';
import { refusedBy } from '../result/refused-by.ts';
import { priceSchema } from '../units/money.ts';

/** The one fact of plan settings has this id. */
export const PLAN_SETTINGS_ID = 'plan';

const notMinutes = refusedBy('not-minutes-a-day');
const notHorizon = refusedBy('not-a-horizon');

/** How far ahead a plan may look, in days: a year. */
export const horizonSchema = z.int(notHorizon).min(1, notHorizon).max(366, notHorizon);

/** How the household wants to plan. */
export const planSettingsSchema = z.strictObject({
  id: z.literal(PLAN_SETTINGS_ID),
  /** What a day late counts, in minor units, by what waiting harms. */
  lateMinorADay: z.strictObject({ safety: priceSchema, damage: priceSchema, comfort: priceSchema }),
  horizonDays: horizonSchema,
  /** Days of the week on which one works at home. */
  workWeekdays: weekdaysSchema,
  /** The most minutes one likes to work at home in a day; null: what the home holds. */
  preferredMinutesADay: z.int(notMinutes).min(10, notMinutes).max(1440, notMinutes).nullable(),
  /** Minutes taken for work of which nobody has said how long it takes. */
  unknownMinutes: z.int(notMinutes).min(5, notMinutes).max(1440, notMinutes),
});
export type PlanSettings = z.infer<typeof planSettingsSchema>;

/** Settings until they are stated: ours, without a source. */
export const DEFAULT_PLAN_SETTINGS: PlanSettings = {
  id: PLAN_SETTINGS_ID,
  lateMinorADay: { safety: 200, damage: 60, comfort: 10 },
  horizonDays: 90,
  workWeekdays: [6, 7],
  preferredMinutesADay: null,
  unknownMinutes: 60,
};

export const planSettingsFamily = family('plan-settings', 'sessions', planSettingsSchema);
export const planSettingsSet = factEntry('plan-settings-set', planSettingsFamily, { car: () => null });

/** The settings that stand, and whether they are only our defaults. */
export function planSettings(facts: Facts): { readonly settings: PlanSettings; readonly assumed: boolean } {
  const stated = facts.get(planSettingsFamily, PLAN_SETTINGS_ID);
  return { settings: stated ?? DEFAULT_PLAN_SETTINGS, assumed: stated === null };
}
