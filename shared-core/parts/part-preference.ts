import { z } from 'zod';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { factRemoval } from '../journal/fact-removal.ts';
import { family } from '../journal/family.ts';
import { idSchema } from '../result/id.ts';
import { priceSchema } from '../units/money.ts';
import { parts } from './part.ts';
import { specifications } from './specification.ts';

/**
 * Which of the parts that meet a specification one would rather have, the best first (the activated-carbon cabin filter before the plain
 * one). It has the specification's own id: there is one for each.
 */
export const preferenceSchema = z.strictObject({
  id: idSchema,
  parts: z.array(idSchema).min(1).max(20),
  /** The most that a whole order may cost more for it; null: whatever it costs. */
  mostMoreMinor: priceSchema.nullable(),
});
export type Preference = z.infer<typeof preferenceSchema>;

export const preferences = family('part-preference', 'parts', preferenceSchema);
export const preferenceSet = factEntry('part-preference-set', preferences, {
  car: () => null,
  refersTo: (preference) => [...refers(specifications, preference.id), ...refers(parts, ...preference.parts)],
});
export const preferenceRemoved = factRemoval('part-preference-removed', preferences);
