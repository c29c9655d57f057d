import { z } from 'zod';
import { serviceItems } from '../care/service-item.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { factRemoval } from '../journal/fact-removal.ts';
import { family } from '../journal/family.ts';
import { idSchema } from '../result/id.ts';
import { longText, plainText } from '../result/plain-text.ts';
import { refusedBy } from '../result/refused-by.ts';
import { typedDistanceSchema } from '../units/distance-schema.ts';
import { hazardSchema } from './hazard.ts';
import { sheetStepSchema } from './sheet-step.ts';

/** Something to look at again after the work: so many days or so much distance later, whichever comes first. */
export const followUpRuleSchema = z
  .strictObject({ text: plainText(200), days: z.int().min(0).max(3660).nullable().default(null), distance: typedDistanceSchema.nullable().default(null) })
  .refine((one) => one.days !== null || one.distance !== null, refusedBy('follow-up-without-when'));
export type FollowUpRule = z.infer<typeof followUpRuleSchema>;

/** How one service item is done, step by step, in its keeper's words. It has the service item's own id. */
export const taskSheetSchema = z.strictObject({
  id: idSchema,
  car: idSchema,
  /** The starting sheet that it was begun from; null where it was written from nothing. */
  startedFrom: idSchema.nullable(),
  steps: z.array(sheetStepSchema).min(1).max(80),
  /** Hazards of the whole task, beside those of its steps. */
  hazards: z.array(hazardSchema).max(20),
  /** What is looked at when all is done. */
  checks: z.array(plainText(200)).max(20),
  /** How the car's own reminder is set back; null where there is none. */
  reset: plainText(300).nullable(),
  followUps: z.array(followUpRuleSchema).max(10),
  note: longText(1000),
});
export type TaskSheet = z.infer<typeof taskSheetSchema>;

export const taskSheets = family('task-sheet', 'work', taskSheetSchema);
export const taskSheetSet = factEntry('task-sheet-set', taskSheets, { car: (sheet) => sheet.car, refersTo: (sheet) => refers(serviceItems, sheet.id) });
export const taskSheetRemoved = factRemoval('task-sheet-removed', taskSheets);
