import { z } from 'zod';
import { newEntry } from '../journal/entry-kind.ts';
import { change } from '../journal/operation.ts';
import { ok } from '../result/result.ts';
import { sumTooLarge } from './plan-sums.ts';
import { planSettings, planSettingsSchema, planSettingsSet } from './plan-settings.ts';

const shape = planSettingsSchema.shape;

/** Changes how the household wants to plan: only the fields given. */
export const setPlanSettings = change({
  request: z.strictObject({
    lateMinorADay: shape.lateMinorADay.partial().optional(),
    horizonDays: shape.horizonDays.optional(),
    workWeekdays: shape.workWeekdays.optional(),
    preferredMinutesADay: shape.preferredMinutesADay.optional(),
    unknownMinutes: shape.unknownMinutes.optional(),
  }),
  reply: z.object({ settings: planSettingsSchema }),
  decide: (facts, request) => {
    const now = planSettings(facts).settings;
    const settings = planSettingsSchema.parse({ ...now, ...request, lateMinorADay: { ...now.lateMinorADay, ...request.lateMinorADay } });
    const { safety, damage, comfort } = settings.lateMinorADay;
    const sums = Object.entries({ safety, damage, comfort }).map(([harm, minor]) => ({ kind: 'lateADay' as const, minor, path: ['lateMinorADay', harm] }));
    return sumTooLarge(facts, sums) ?? ok({ entries: [newEntry(planSettingsSet, settings)], reply: { settings } });
  },
});
