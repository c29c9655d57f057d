import { z } from 'zod';
import { newEntry } from '../journal/entry-kind.ts';
import { change } from '../journal/operation.ts';
import { ok, refuse } from '../result/result.ts';
import { findHousehold } from './find-car.ts';
import { HOUSEHOLD_ID, households, householdSchema, householdSet } from './household.ts';

const startRequest = z.strictObject({
  name: householdSchema.shape.name.default('Our household'),
  currency: householdSchema.shape.currency.default('GBP'),
  unit: householdSchema.shape.unit.default('km'),
  hemisphere: householdSchema.shape.hemisphere.default('north'),
  locale: householdSchema.shape.locale.default('en-GB'),
  sample: z.boolean().default(false),
});

/** Starts an empty household; a household is started once. */
export const startHousehold = change({
  request: startRequest,
  reply: z.object({ household: householdSchema }),
  decide: (facts, request) => {
    if (facts.get(households, HOUSEHOLD_ID) !== null) return refuse('household-started');
    const household = { id: HOUSEHOLD_ID, ...request } as const;
    return ok({ entries: [newEntry(householdSet, household)], reply: { household } });
  },
});

const changeRequest = householdSchema.omit({ id: true, sample: true, currency: true }).partial();

/** Changes the household's settings. The currency stays: amounts already written are in it. */
export const changeHousehold = change({
  request: changeRequest,
  reply: z.object({ household: householdSchema }),
  decide: (facts, request) => {
    const now = findHousehold(facts);
    if (!now.ok) return now;
    const household = householdSchema.parse({ ...now.value, ...request });
    return ok({ entries: [newEntry(householdSet, household)], reply: { household } });
  },
});
