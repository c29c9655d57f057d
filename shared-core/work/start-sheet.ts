import { z } from 'zod';
import { serviceItems } from '../care/service-item.ts';
import { findCar } from '../fleet/find-car.ts';
import { HOUSEHOLD_ID, households } from '../fleet/household.ts';
import { change } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { refuse } from '../result/result.ts';
import { proseFor } from '../result/words/american-prose.ts';
import { fitSteps } from './fit-steps.ts';
import { numberedStepsOf } from './numbered-steps.ts';
import { sheetReplySchema, writeSheet } from './set-sheet.ts';
import { fitsCar, startingSheet } from './starting-sheet.ts';
import { taskSheets } from './task-sheet.ts';

/** Begins the sheet of a service item from a starting sheet; it is the keeper's from then on. */
export const startSheet = change({
  request: z.strictObject({
    item: idSchema,
    from: idSchema,
    /** In place of the sheet that stands. */
    replace: z.boolean().default(false),
  }),
  reply: sheetReplySchema,
  decide: (facts, request) => {
    const item = facts.get(serviceItems, request.item);
    if (item === null) return refuse('unknown-item', { item: request.item }, ['item']);
    const car = findCar(facts, item.car);
    if (!car.ok) return car;
    const sheet = startingSheet(request.from);
    if (sheet === null) return refuse('unknown-starting-sheet', { sheet: request.from }, ['from']);
    const from = proseFor(facts.get(households, HOUSEHOLD_ID)?.locale ?? '', sheet);
    if (!fitsCar(from, car.value)) return refuse('sheet-not-for-car', { sheet: from.name, car: car.value.name }, ['from']);
    const standing = facts.get(taskSheets, item.id);
    if (standing !== null && !request.replace) return refuse('sheet-stands', { item: item.name }, ['item']);
    const { hazards, checks, reset, followUps } = from;
    const steps = fitSteps(facts, car.value, item, from.steps);
    return writeSheet(facts, item, { startedFrom: from.key, hazards, checks, reset, followUps, note: '', steps: numberedStepsOf(facts, item, steps) });
  },
});
