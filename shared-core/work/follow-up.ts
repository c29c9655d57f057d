import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { addDays, type LocalDate } from '../calendar/local-date.ts';
import { serviceItems } from '../care/service-item.ts';
import { cars } from '../fleet/car.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { factRemoval } from '../journal/fact-removal.ts';
import { family } from '../journal/family.ts';
import { idSchema } from '../result/id.ts';
import { longText, plainText } from '../result/plain-text.ts';
import { refusedBy } from '../result/refused-by.ts';
import { sessions } from '../sessions/session.ts';
import { typedDistanceSchema } from '../units/distance-schema.ts';
import type { FollowUpRule } from './task-sheet.ts';

/** When a follow-up was to be looked at before it was put off, and on which day that was decided. */
const putOffSchema = z.strictObject({ on: dateSchema, dueOn: dateSchema.nullable(), after: typedDistanceSchema.nullable(), countedFrom: dateSchema, note: longText(300) });

/** Something to be looked at again after a work, by a date, after a distance, or whichever comes first; shown until it is ticked. */
export const followUpSchema = z
  .strictObject({
    id: idSchema,
    car: idSchema,
    /** The service item whose work it follows; null where it follows none. */
    item: idSchema.nullable(),
    /** The session after which it was noted; null where there was none. */
    session: idSchema.nullable(),
    text: plainText(200),
    madeOn: dateSchema,
    /** The day on which it is to be looked at; null: by distance alone. */
    dueOn: dateSchema.nullable(),
    /** Counted from the car's whole distance on the day it was made, or put off; null: by date alone. */
    after: typedDistanceSchema.nullable(),
    /** The day on which it was ticked; null while it is open. */
    doneOn: dateSchema.nullable(),
    note: longText(1000),
    /** From when its distance counts since it was put off; absent: from the day it was made. */
    countedFrom: dateSchema.optional(),
    /** How often it was put off, the first time first. */
    putOff: z.array(putOffSchema).max(50).optional(),
  })
  .refine((one) => one.dueOn !== null || one.after !== null, refusedBy('follow-up-without-when'));
export type FollowUp = z.infer<typeof followUpSchema>;

export const followUps = family('follow-up', 'work', followUpSchema);
export const followUpSet = factEntry('follow-up-set', followUps, {
  car: (one) => one.car,
  refersTo: (one) => [...refers(cars, one.car), ...refers(serviceItems, one.item), ...refers(sessions, one.session)],
});
export const followUpRemoved = factRemoval('follow-up-removed', followUps);

/** Of what a follow-up is one. */
export interface FollowUpOf {
  readonly id: string;
  readonly car: string;
  readonly item: string | null;
  readonly session: string | null;
  readonly madeOn: LocalDate;
}

/**
 * An open follow-up as a rule of a task's sheet has it, from the day of the work on.
 *
 * @example composeFollowUp({ text: 'level', days: 1, distance: null }, { id: 'f1', car: 'pip', item: 'oil', session: null, madeOn: '2026-12-31' }).dueOn //=> '2027-01-01'
 */
export function composeFollowUp(rule: FollowUpRule, of: FollowUpOf): FollowUp {
  return { ...of, text: rule.text, dueOn: rule.days === null ? null : addDays(of.madeOn, rule.days), after: rule.distance, doneOn: null, note: '' };
}
