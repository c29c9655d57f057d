import { z } from 'zod';
import { serviceItems } from '../care/service-item.ts';
import { findCar } from '../fleet/find-car.ts';
import { HOUSEHOLD_ID, households } from '../fleet/household.ts';
import { ask } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse } from '../result/result.ts';
import { proseFor } from '../result/words/american-prose.ts';
import { hazardSchema, inOrder } from './hazard.ts';
import { newStepSchema } from './sheet-step.ts';
import { fitsCar, sheetFor, STARTING_SHEETS } from './starting-sheet.ts';
import { followUpRuleSchema } from './task-sheet.ts';

const offeredSheetSchema = z.object({
  key: z.string(),
  name: z.string(),
  items: z.array(z.string()),
  by: z.enum(['anyone', 'skilled', 'licensed']),
  /** Whether the car asked about can have such a thing; true where none was. */
  fits: z.boolean(),
  /** Its hazards and those of its steps, the gravest first. */
  hazards: z.array(hazardSchema),
  steps: z.array(newStepSchema),
  checks: z.array(z.string()),
  reset: z.string().nullable(),
  followUps: z.array(followUpRuleSchema),
});

/** The starting sheets, and the one that the name of an item calls for. */
export const showStartingSheets = ask({
  request: z.strictObject({ item: idSchema.nullable().default(null) }),
  reply: z.object({ suggested: z.string().nullable(), sheets: z.array(offeredSheetSchema) }),
  answer: (facts, request) => {
    const item = request.item === null ? null : facts.get(serviceItems, request.item);
    if (request.item !== null && item === null) return refuse('unknown-item', { item: request.item }, ['item']);
    const car = item === null ? null : findCar(facts, item.car);
    if (car?.ok === false) return car;
    const power = car === null ? 'other' : car.value.power;
    return ok({
      suggested: item === null ? null : (sheetFor(item.name, { power })?.key ?? null),
      sheets: proseFor(facts.get(households, HOUSEHOLD_ID)?.locale ?? '', STARTING_SHEETS).map(({ power: _power, ...sheet }) => ({
        ...sheet, steps: [...sheet.steps], fits: fitsCar({ ...sheet, power: _power }, { power }),
        hazards: [...inOrder([...sheet.hazards, ...sheet.steps.flatMap((step) => step.hazards)])],
      })),
    });
  },
});
