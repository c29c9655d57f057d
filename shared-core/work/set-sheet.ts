import { z } from 'zod';
import { serviceItems, type ServiceItem } from '../care/service-item.ts';
import { cardFigures } from '../fleet/card-figure.ts';
import { findCar } from '../fleet/find-car.ts';
import { figureQuestionSchema } from '../fleet/set-card-figure.ts';
import { torqueQuestion } from '../fleet/torque-question.ts';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change, type Decision } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { checkFollowUpRules, checkSteps } from './check-sheet.ts';
import { numberedStepsOf } from './numbered-steps.ts';
import { newStepSchema, type SheetStep } from './sheet-step.ts';
import { taskSheetRemoved, taskSheets, taskSheetSchema, taskSheetSet, type TaskSheet } from './task-sheet.ts';

const shape = taskSheetSchema.shape;

/** What is asked about the keeper's own torque of a step. */
export const stepQuestionSchema = z.object({ step: z.string(), torque: z.string(), question: figureQuestionSchema.unwrap() });

/** What a change of a sheet answers. */
export const sheetReplySchema = z.object({ sheet: taskSheetSchema, questions: z.array(stepQuestionSchema) });
type SheetReply = z.infer<typeof sheetReplySchema>;

/** Writes the sheet of a service item, or writes it anew; an unlikely torque of the keeper's own is kept and asked about. */
export const setSheet = change({
  request: z.strictObject({
    item: idSchema,
    steps: z.array(newStepSchema).min(1).max(80),
    hazards: shape.hazards.default([]),
    checks: shape.checks.default([]),
    reset: shape.reset.default(null),
    followUps: shape.followUps.default([]),
    note: shape.note.default(''),
  }),
  reply: sheetReplySchema,
  decide: (facts, { item: id, steps, ...rest }) => {
    const item = facts.get(serviceItems, id);
    if (item === null) return refuse('unknown-item', { item: id }, ['item']);
    const standing = facts.get(taskSheets, id);
    return writeSheet(facts, item, { ...rest, startedFrom: standing?.startedFrom ?? null, steps: numberedStepsOf(facts, item, steps) });
  },
});

/** Takes the sheet of a service item away; the item stays. */
export const removeSheet = change({
  request: z.strictObject({ item: idSchema }),
  reply: z.object({ sheet: taskSheetSchema }),
  decide: (facts, { item }) => {
    const sheet = facts.get(taskSheets, item);
    if (sheet === null) return refuse('no-sheet', { item: facts.get(serviceItems, item)?.name ?? item }, ['item']);
    return ok({ entries: [newEntry(taskSheetRemoved, { id: sheet.id, car: sheet.car })], reply: { sheet } });
  },
});

/** The entry of a whole sheet for an item, refused where it could not be worked by. */
export function writeSheet(facts: Facts, item: ServiceItem, rest: Omit<TaskSheet, 'id' | 'car'>): Result<Decision<SheetReply>> {
  const car = findCar(facts, item.car);
  if (!car.ok) return car;
  const sheet: TaskSheet = { ...rest, id: item.id, car: item.car };
  const sound = checkSteps(car.value, facts.ofCar(cardFigures, item.car), sheet.steps);
  if (!sound.ok) return sound;
  const rules = checkFollowUpRules(sheet.followUps);
  if (!rules.ok) return rules;
  return ok({ entries: [newEntry(taskSheetSet, sheet)], reply: { sheet, questions: sheet.steps.flatMap(questionsOf) } });
}

/** What is asked about the keeper's own torques of a step. */
export function questionsOf(step: SheetStep): z.infer<typeof stepQuestionSchema>[] {
  return step.torques.flatMap((torque) => {
    const question = torque.by === 'own' && !torque.sure ? torqueQuestion(torque.typed, torque.on) : null;
    return question === null || torque.by !== 'own' ? [] : [{ step: step.id, torque: torque.name, question: { key: question.key, values: { ...question.values } } }];
  });
}
