import { z } from 'zod';
import { factEntry } from '../journal/fact-entry.ts';
import { family } from '../journal/family.ts';
import { plainText } from '../result/plain-text.ts';
import { distanceUnitSchema } from '../units/distance-schema.ts';
import { currencySchema } from '../units/money.ts';

/** The one household of a data folder has this id. */
export const HOUSEHOLD_ID = 'household';

/** The data set's own settings. `sample` marks the invented household: what it shows proves nothing. */
export const householdSchema = z.strictObject({
  id: z.literal(HOUSEHOLD_ID),
  name: plainText(60),
  currency: currencySchema,
  unit: distanceUnitSchema,
  /** Decides the season of use: more is driven in summer; `none` where one is unsure. */
  hemisphere: z.enum(['north', 'south', 'none']),
  /** The way dates and numbers are written, e.g. en-GB. */
  locale: z.string().regex(/^[a-z]{2}(-[A-Z]{2})?$/),
  sample: z.boolean(),
});
export type Household = z.infer<typeof householdSchema>;

export const households = family('household', 'fleet', householdSchema);
export const householdSet = factEntry('household-set', households, { car: () => null });
